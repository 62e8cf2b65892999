"""The seams of a set of paper pieces: which edges meet, and the walk along them.

A *join* names the edges on both sides of a seam: front and back together meet the band.
The one seam check is `piece.walk`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

from lastlook.paper.easing import Easing, allowed_mm
from lastlook.paper.paper_piece import PaperPiece
from lastlook.piece import Edge, EdgeName, Mate, Seam, Unit, walk

EXACT_MM = 0.1
"""Seams that meet, meet within this on paper; a printed line is 0.3 mm wide."""


class Counted(Enum):
    """Which length of an edge goes into a seam."""

    DRAWN = "drawn"
    """As drawn: one side seam against another."""
    WHOLE = "whole"
    """All pieces of that kind, both halves of a fold: what goes round the body."""


class Fullness(Enum):
    """What a longer edge means."""

    NONE = "none"
    EASED = "eased"
    """Side `a` may be a little longer and is eased onto `b`."""
    GATHERED = "gathered"
    """Side `a` is longer on purpose: gathers, pleats."""


@dataclass(frozen=True)
class Join:
    """The edges of side `a` together are sewn to the edges of side `b`."""

    a: tuple[EdgeName, ...]
    b: tuple[EdgeName, ...]
    counted: Counted = Counted.DRAWN
    fullness: Fullness = Fullness.NONE


def mate_of(join: Join, pieces: Sequence[PaperPiece], easing: Easing) -> Mate:
    """Return the join as both crafts know it, with the easing that this cloth allows in mm."""
    a, b = _joined(join.a), _joined(join.b)
    allowed = 0.0
    if join.fullness is Fullness.EASED and length_mm(join.a, join, pieces) > length_mm(join.b, join, pieces):
        allowed = allowed_mm(easing, [length_mm((name,), join, pieces) for name in join.b], _stretches(join, pieces))
    return Mate(a, b, Unit.MM, allowed, EXACT_MM, on_purpose=join.fullness is Fullness.GATHERED)


def walk_all(joins: Sequence[Join], pieces: Sequence[PaperPiece], easing: Easing) -> tuple[Seam, ...]:
    """Walk every seam whose edges are all there."""
    seams = []
    for join in joins:
        if not all(_edge(name, pieces) for name in (*join.a, *join.b)):
            continue
        mate = mate_of(join, pieces, easing)
        a = Edge(mate.a, mm=length_mm(join.a, join, pieces))
        seam = walk(mate, a, Edge(mate.b, mm=length_mm(join.b, join, pieces)))
        seams += [seam] if seam else []
    return tuple(seams)


def length_mm(names: Sequence[EdgeName], join: Join, pieces: Sequence[PaperPiece]) -> float:
    """Return the length of edges laid end to end, as the join counts them."""
    total = 0.0
    for name in names:
        found = _edge(name, pieces)
        if found:
            piece, sewn = found
            total += sewn * (piece.times if join.counted is Counted.WHOLE else 1)
    return total


def _edge(name: EdgeName, pieces: Sequence[PaperPiece]) -> tuple[PaperPiece, float] | None:
    for piece in pieces:
        side = piece.side(name.edge) if piece.name == name.piece else None
        if side:
            return piece, side.sewn_mm
    return None


def _stretches(join: Join, pieces: Sequence[PaperPiece]) -> int:
    """Return between how many seams the upper edge is eased: one stretch for each piece as it is cut."""
    found = [_edge(name, pieces) for name in join.a]
    return sum(one[0].quantity for one in found if one)


def _joined(names: Sequence[EdgeName]) -> EdgeName:
    edges = dict.fromkeys(name.edge for name in names)
    return EdgeName(" + ".join(name.piece for name in names), " + ".join(edges))
