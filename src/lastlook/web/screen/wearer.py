"""The wearer: her measures as they were typed, estimates shown as estimates, and what each garment gets there."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from lastlook import outfit, sheet, wearer
from lastlook.finding import Finding
from lastlook.quantity import Missing, write_length
from lastlook.wearer import NAMES, Measure
from lastlook.web import drawings
from lastlook.web.page import framed, number_of, room_of
from lastlook.web.room import Desk

FACT = "wearer.measures."


@dataclass(frozen=True)
class Line:
    """One measure as the screen asks for it."""

    key: str
    """The word under which it stands in the document."""
    words: str
    typed: str
    take: str
    standing: str
    """Where it came from, or that it is not known, in words."""
    guess: str
    """The estimate with its range; empty where it was taken or can't be estimated."""
    findings: tuple[Finding, ...]


def show(request: Request) -> Response:
    """Show the measures and the fit."""
    desk = room_of(request).desk(number_of(request))
    lines = [_line(desk, name) for name in NAMES]
    asked = {level.measure for level in outfit.fit_table(desk.derived)} | _pointed_at(desk)
    wanted = [line for name, line in zip(NAMES, lines, strict=True) if line.typed or name in asked]
    return framed(
        request,
        "wearer/page.html",
        desk,
        wanted=wanted,
        others=[line for line in lines if line not in wanted],
        strange=[one for one in desk.outfit.findings if _is_strange(one, wanted)],
        levels=outfit.fit_table(desk.derived),
        hoops=drawings.hoops(desk.derived, sheet.manner_of(desk.outfit)),
        comparison=outfit.comparison,
        is_missing=lambda value: isinstance(value, Missing),
    )


def _line(desk: Desk, name: str) -> Line:
    entry, typed = NAMES[name], _typed(desk.document)
    key = next((word for word in typed if wearer.full_name(word) == name), name)
    taken = desk.outfit.wearer.taken(name)
    found = None if taken else wearer.measure(desk.outfit.wearer, name)
    findings = tuple(one for one in desk.outfit.findings if one.where.fact == FACT + key)
    guess = ""
    if isinstance(found, Measure):
        ends = [write_length(mm, desk.outfit.manner.units) for mm in (found.mm.low, found.mm.high)]
        guess = f"about {write_length(found.mm.best, desk.outfit.manner.units)}, between {ends[0]} and {ends[1]}"
    standing = "not known" if found is None or isinstance(found, Missing) else found.how
    return Line(key, entry.words, typed.get(key, ""), entry.take, taken.how if taken else standing, guess, findings)


def _typed(document: outfit.Document) -> dict[str, str]:
    """Return the measures as they stand in the document, unread."""
    try:
        told = tomllib.loads(document.text(outfit.MAIN) or "").get("wearer", {}).get("measures", {})
        return {str(word): str(text) for word, text in told.items()}
    except (tomllib.TOMLDecodeError, AttributeError):
        return {}


def _pointed_at(desk: Desk) -> set[str]:
    """Return the measures that an answer is waiting for."""
    facts = [
        one.where.fact or "" for answered in (desk.verdict.fits, desk.verdict.adds_up) for one in answered.findings
    ]
    return {fact.removeprefix(FACT) for fact in facts if fact.startswith(FACT)}


def _is_strange(finding: Finding, shown: list[Line]) -> bool:
    """Whether a finding speaks of a measure that no line shows."""
    fact = finding.where.fact or ""
    return fact.startswith("wearer.") and all(finding not in line.findings for line in shown)
