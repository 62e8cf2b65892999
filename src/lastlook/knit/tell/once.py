"""What follows from one trouble isn't told again: where one correction puts all right, one finding speaks of it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Protocol

from lastlook.finding import Finding, Span


class Correction(Protocol):
    """A change of one phrase that was tried."""

    @property
    def spots(self) -> tuple[tuple[Span, str], ...]:
        """The places that change."""

    @property
    def step(self) -> Span:
        """The phrase."""

    @property
    def sizes(self) -> tuple[str, ...]:
        """The sizes it concerns."""


class Tried(Protocol):
    """A correction with what it leaves open."""

    @property
    def change(self) -> Correction:
        """The change."""

    @property
    def score(self) -> float:
        """What still does not add up."""


@dataclass(frozen=True)
class _Rank:
    kind: str


FIRST = ("row-short", "row-long", "repeat-does-not-fit", "wrong-edge", "count-short", "count-over", "goal-unreachable")


def _causes(findings: list[Finding]) -> list[Finding]:
    """Leave out edges that differ where a piece they belong to has a trouble of its own: they follow from it."""
    pieces = {(one.where.piece or "").lower() for one in findings if one.kind != "edges-differ" and one.where.piece}
    return [
        one for one in findings if one.kind != "edges-differ" or not any(name in one.say.lower() for name in pieces)
    ]


def once(findings: list[Finding], mended: Tried | None) -> list[Finding]:
    """Keep one finding of those that the correction puts right, and mark the words that it changes."""
    if mended is None or mended.score >= 1:
        return _causes(findings)
    cured = [one for one in findings if one.checked]
    rest = [one for one in findings if not one.checked]
    if not cured:
        return _causes(findings)
    best = min(cured, key=lambda one: FIRST.index(one.kind) if one.kind in FIRST else len(FIRST))
    size = mended.change.sizes[0] if len(mended.change.sizes) == 1 and best.size else best.size
    spots = mended.change.spots
    span = Span(spots[0][0].start, spots[-1][0].end) if len(spots) == 1 else mended.change.step
    return [replace(best, where=replace(best.where, span=span), size=size), *rest]
