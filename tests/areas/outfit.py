"""An outfit asked the three questions.

The input changes the demo outfit, a fact a line (`knitting.pullover.size = 36`; nothing after `=` takes the fact
away), or is a whole `outfit.toml` of its own if it has a line in square brackets. Asked for `answers`, what comes
out is each answer with its parts; asked for `fits`, only that of the fit; asked for a kind of finding, the first
finding of that kind as a maker sees it.
"""

from __future__ import annotations

import tomllib

from lastlook import outfit
from lastlook.finding import Edit, Finding, say


def answer(given: str, asked: str) -> str:
    derived = outfit.derive(outfit.read(_folder(given)))
    judged = outfit.verdict(derived)
    questions = (judged.adds_up, judged.fits, judged.enough)
    if asked == "fits":
        return _answered(judged.fits)
    if asked == "answers":
        return "\n".join(_answered(one) for one in questions)
    said = [finding for one in questions for finding in one.findings]
    said += [finding for look in judged.last_looks for finding in look.open]
    said += [*derived.outfit.findings]
    found = next((finding for finding in said if finding.kind == asked), None)
    kinds = ", ".join(sorted({finding.kind for finding in said}))
    return f"no {asked}; said: {kinds}" if found is None else say(found, _source(found, derived))


def _folder(given: str) -> outfit.Document:
    folder = outfit.demo().with_file("lays/skirt.json", b'{"placements": []}')
    if any(line.startswith("[") for line in given.splitlines()):
        return folder.with_file(outfit.MAIN, given.encode())
    edits = [_edit(line) for line in given.splitlines() if "=" in line]
    return outfit.change(folder, edits)


def _edit(line: str) -> Edit:
    fact, _, value = (part.strip() for part in line.partition(" ="))
    if value.startswith("{"):
        return Edit(fact, tuple(tomllib.loads(f"entry = {value}")["entry"].items()))
    return Edit(fact, int(value) if value.isdigit() and ".size" not in fact else value)


def _answered(one: outfit.Answered) -> str:
    chance = "" if one.chance is None else f" ({one.chance:.0%})"
    parts = "".join(f"\n  {part.answer.value}: {part.because}" for part in one.parts)
    return f"{one.question} {one.answer.value}{chance}{parts}"


def _source(finding: Finding, derived: outfit.Derived):  # type: ignore[no-untyped-def]
    return next((one.reading.source for one in derived.knitted if finding in one.findings), None)
