"""A skirt drafted, altered and trued, a step a line.

`draft a-line waist=71cm hip=97cm length=62cm` drafts; `alter widen piece=Front by=1cm at=waist` adds an alteration,
as the outfit's document writes it. Asked for `pieces`, what comes out is what the command says of them; asked for `findings`,
all that there is to say; asked for a kind of finding, that one; asked for `cured`, the seams after the first cure.
"""

from __future__ import annotations

import json
import shlex
from typing import Any

from lastlook import finding, paper
from lastlook.finding import Finding


def answer(given: str, asked: str) -> str:
    drafted, alterations, said = paper.Drafted("none", ()), [], []
    for line in given.splitlines():
        verb, *words = shlex.split(line, comments=True) or [""]
        if verb == "draft":
            drafted, more = _draft(words)
            said += more
        elif verb == "alter":
            read = paper.read_alteration(_table(words))
            if isinstance(read, Finding):
                said.append(read)
            else:
                alterations.append(read)
    drafted = paper.alter(drafted, alterations)
    found = [*said, *drafted.findings, *paper.true(drafted)]
    if asked == "pieces":
        return "\n".join(paper.in_words(drafted))
    if asked == "alterations":
        return "\n".join(alteration.say() for alteration in alterations)
    if asked == "cured":
        return _cured(drafted, found)
    chosen = [one for one in found if asked in ("findings", one.kind)]
    return "\n\n".join(finding.say(one) for one in chosen) or "nothing to say"


def _draft(words: list[str]) -> tuple[paper.Drafted, list[Finding]]:
    said = dict(word.split("=", 1) for word in words[1:])
    fibre = said.pop("cloth", "")
    given = paper.read_given(said, fibre=fibre)
    return paper.draft(words[0], given.measures, given.options, given.easing), list(given.findings)


def _table(words: list[str]) -> dict[str, Any]:
    table: dict[str, Any] = {"kind": words[0]}
    for word in words[1:]:
        key, value = word.split("=", 1)
        table[key] = json.loads(value) if value[:1] == "[" or key in ("dart", "on") else value
    return table


def _cured(drafted: paper.Drafted, found: list[Finding]) -> str:
    cures = [cure for one in found for cure in one.cures][:1]
    made = [
        paper.read_alteration(dict(edit.value))
        for cure in cures
        for edit in cure.edits
        if isinstance(edit.value, tuple)
    ]
    after = paper.alter(drafted, [one for one in made if not isinstance(one, Finding)])
    lines = [cure.say for cure in cures]
    for seam in after.seams:
        lines.append(f"{seam.mate.a} and {seam.mate.b}: {seam.meets.value}, {seam.difference:.1f} mm apart")
    return "\n".join(lines)
