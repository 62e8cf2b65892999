"""A composed garment: its leaflet, its pieces, what it measures, and what had to give way.

A garment that can't be composed is findings alone: `leaflet` is then empty.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.finding import Certainty, Finding
from lastlook.knit.worked import WorkedPiece
from lastlook.piece import Edge, EdgeName, Mate, Seam, walk
from lastlook.quantity import Missing


@dataclass(frozen=True)
class FinishedMeasure:
    """One length of the finished garment."""

    name: str
    target_mm: float
    gets_mm: float
    plus_minus_mm: float

    @property
    def miss_mm(self) -> float:
        """Return how much larger it comes out than was wanted."""
        return self.gets_mm - self.target_mm


@dataclass(frozen=True)
class Composed:
    """What came of composing."""

    title: str
    size: str
    leaflet: str
    pieces: tuple[WorkedPiece, ...]
    mates: tuple[Mate, ...]
    measures: tuple[FinishedMeasure, ...]
    rungs: tuple[str, ...]
    """What the shaping had to resort to, in words, the gentlest first."""
    findings: tuple[Finding, ...]
    notes: tuple[str, ...] = ()
    """What hands need beside the page: pick-ups, tails, order of sewing."""

    @property
    def seams(self) -> tuple[Seam, ...]:
        """Return every seam walked."""
        return walk_all(self.pieces, self.mates)


def walk_all(pieces: Sequence[WorkedPiece], mates: Sequence[Mate]) -> tuple[Seam, ...]:
    """Return the seams between pieces whose edges are both there."""
    edges: dict[EdgeName, Edge] = {edge.name: edge for piece in pieces for edge in piece.edges}
    found = (walk(mate, edges[mate.a], edges[mate.b]) for mate in mates if mate.a in edges and mate.b in edges)
    return tuple(seam for seam in found if seam is not None)


def not_composed(title: str, size: str, findings: Sequence[Finding]) -> Composed:
    """Return a garment of which there is nothing but what stands in its way."""
    return Composed(title, size, "", (), (), (), (), tuple(findings))


def cant_hold(what: str, why: str, gives: str) -> Finding:
    """Return that the constraints of the craft can't all hold, which, and what would give."""
    return Finding("constraints-clash", Certainty.PROVEN, what, why, gives)


def rows_unknown(missing: Missing) -> Finding:
    """Return that no length can be counted without a row gauge."""
    return Finding(
        "gauge-missing",
        Certainty.UNKNOWN,
        "How many rows each piece needs is not known yet: no row gauge was given.",
        "Lengths and shapings are counted in rows, and a row gauge is never inferred from the stitch gauge.",
        missing.find_out,
    )


def edging_too_wide(need: int, where: str, there: float) -> Finding:
    """Return that an edging's repeat is wider than the narrowest piece it goes on."""
    return cant_hold(
        f"One repeat of the edging is {need} stitches with its edges, and {where} has only {there:.0f}.",
        "An edging has to hold at least one whole repeat on the narrowest piece.",
        "Ask for a narrower rib, or garter.",
    )


def off_target(measures: Sequence[FinishedMeasure], allowed_mm: float) -> tuple[Finding, ...]:
    """Return a note for every girth or length that the nearest whole stitches miss by more than is allowed."""
    return tuple(
        Finding(
            "measure-off",
            Certainty.NOTE,
            f"The {one.name} comes to {one.gets_mm / 10:.1f} cm; {one.target_mm / 10:.1f} cm was wanted"
            f" ({abs(one.miss_mm) / 10:.1f} cm {'more' if one.miss_mm > 0 else 'less'}).",
            "It is the nearest that the other counts allow.",
        )
        for one in measures
        if abs(one.miss_mm) > allowed_mm and "flat" not in one.name
    )
