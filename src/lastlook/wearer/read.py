"""Measures as a maker types them, and what can't be a body.

A waist larger than the hip is a body: it is asked about once, and `waist_over_hip = "so"` settles it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from lastlook.finding import Certainty, Cure, Edit, Finding, Where
from lastlook.quantity import Units, Unread, read_length, write_length
from lastlook.wearer.measure import NAMES, Measure, by_tape, full_name
from lastlook.wearer.wearer import Wearer

SETTLED = "waist_over_hip"
"""The key that says the maker was asked and meant it."""
FACT = "wearer.measures."
_NOTE = re.compile(r"\s*\(([^()]*)\)\s*$")


def read_measures(mapping: Mapping[str, str], bare: Units | None) -> tuple[Wearer, tuple[Finding, ...]]:
    """Return the wearer that a table of names and lengths describes, and what in it can't be taken.

    A note in brackets after a length is kept as how it was taken: `96 cm (over a blouse)`.
    """
    measures: dict[str, Measure] = {}
    findings: list[Finding] = []
    for word, text in mapping.items():
        if word in ("name", SETTLED):
            continue
        one = _read_one(word, str(text), bare)
        if isinstance(one, Finding):
            findings.append(one)
        elif one.name in measures:
            findings.append(_twice(word, measures[one.name], one))
        else:
            measures[one.name] = one
    body = Wearer(str(mapping.get("name", "the wearer")), tuple(measures.values()))
    swapped = _waist_over_hip(body, mapping, bare or Units.CM)
    return body, (*findings, *([swapped] if swapped else []))


def _read_one(word: str, text: str, bare: Units | None) -> Measure | Finding:
    name = full_name(word)
    if name is None:
        return _no_such(word)
    note = _NOTE.search(text)
    mm = read_length(text[: note.start()] if note else text, bare)
    if isinstance(mm, Unread):
        return Finding(
            "measure-unread",
            Certainty.PROVEN,
            f"The {NAMES[name].words} is not known: {_lower(mm.why)}",
            NAMES[name].define,
            mm.attempt,
            where=Where(fact=FACT + word),
        )
    if not NAMES[name].least_mm <= mm <= NAMES[name].most_mm:
        return _no_body(name, word, mm, text)
    return by_tape(name, mm, note.group(1) if note else "by tape")


def _lower(sentence: str) -> str:
    return sentence[:1].lower() + sentence[1:]


def _no_such(word: str) -> Finding:
    plain = word.lower().replace("_", " ").replace("-", " ")
    shared = [name for name in NAMES if set(plain.split()) & set(name.split("_"))]
    near = ", ".join(shared[:4]) or "bust_girth, waist_girth, hip_girth, upper_arm_girth"
    return Finding(
        "measure-unknown",
        Certainty.PROVEN,
        f"“{word}” is no measure that is known here.",
        "A measure that no step asks for would change nothing, and a misspelt one would be missed.",
        f"Use one of the names: {near}.",
        where=Where(fact=FACT + word),
    )


def _no_body(name: str, word: str, mm: float, text: str) -> Finding:
    entry = NAMES[name]
    low, high = write_length(entry.least_mm, Units.CM), write_length(entry.most_mm, Units.CM)
    return Finding(
        "measure-unlikely",
        Certainty.PROVEN,
        f"No body has a {entry.words} of {text.strip()} ({write_length(mm, Units.CM)}).".replace(" a u", " an u"),
        f"Bodies have between {low} and {high} there.",
        f"Look at the unit, or measure again: {entry.take}",
        where=Where(fact=FACT + word),
    )


def _twice(word: str, first: Measure, second: Measure) -> Finding:
    return Finding(
        "measure-twice",
        Certainty.PROVEN,
        f"The {NAMES[first.name].words} is given twice: {write_length(first.mm.best, Units.CM)} and"
        f" {write_length(second.mm.best, Units.CM)}.",
        "Two names mean the same length; the first one given is used.",
        "Keep one of the two.",
        where=Where(fact=FACT + word),
    )


def _waist_over_hip(body: Wearer, mapping: Mapping[str, str], units: Units) -> Finding | None:
    waist, hip = body.taken("waist_girth"), body.taken("hip_girth")
    if waist is None or hip is None or waist.mm.best <= hip.mm.best or SETTLED in mapping:
        return None
    words = {full_name(word): word for word in mapping if word not in ("name", SETTLED)}
    swap = (
        Edit(FACT + words["waist_girth"], str(mapping[words["hip_girth"]])),
        Edit(FACT + words["hip_girth"], str(mapping[words["waist_girth"]])),
    )
    w, h = write_length(waist.mm.best, units), write_length(hip.mm.best, units)
    return Finding(
        "waist-over-hip",
        Certainty.NOTE,
        f"The waist, {w}, is larger than the hip, {h}.",
        "Many bodies are so, and everything is drafted for it; the two numbers may also have changed places.",
        "Say which it is; it is asked this once.",
        asks=True,
        where=Where(fact=FACT + words["waist_girth"]),
        readings=(f"waist {w} and hip {h}, as given", f"waist {h} and hip {w}, changed places"),
        cures=(
            Cure("Keep them as given.", (Edit(FACT + SETTLED, "so"),)),
            Cure("Change them round.", swap),
        ),
    )
