"""Widen or narrow: the side edges move outwards at the waist, the hip, the hem, or all the way.

The amount is that of one edge. A change of a whole girth is shared over all seam edges: two side seams have
four, so each takes a quarter (common practice; by number of seams: Central Washington University ch. 17, read).
Up to about 5 cm in all, 12.5 mm an edge, is safe (from memory of a textbook limit).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.geometry import Path, Point, crossings, cut
from lastlook.paper.alter.alteration import mm, no_edge, no_level, refusal
from lastlook.paper.alter.reshape import anchors, reshape
from lastlook.paper.follow import longer
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import SeamEdge

PLACES = ("waist", "high hip", "hip", "hem", "hip and hem", "all")
WEIGHTS = {"all": (1.0, 1.0, 1.0), "hip and hem": (0.0, 1.0, 1.0), "hem": (0.0, 0.0, 1.0), "waist": (1.0, 0.0, 0.0)}
LEAST_WIDTH_MM = 20.0


@dataclass(frozen=True)
class Widen:
    """Move side edges outwards; less than nothing narrows."""

    piece: str
    by_mm: float
    """How far each edge moves."""
    at: str = "all"
    edge: str | None = None
    """The one edge to move; None for every side edge of the piece."""
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece wider by that much at each edge."""
        if piece.centre is not None:
            return _round(piece)
        sides = [side for side in piece.sides if side.name == (self.edge or side.name) and is_side(side.name)]
        if not sides:
            return no_edge(piece, self.edge or "side")
        level = {"high hip": "high hip"}.get(self.at, "hip")
        if self.at != "all" and piece.level(level) is None:
            return no_level(piece, level)
        for side in sides:
            altered = _moved(piece, side.name, self)
            if isinstance(altered, Finding):
                return altered
            piece = altered
        return piece

    def inverse(self, before: PaperPiece) -> Widen:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        verb = "Let out" if self.by_mm >= 0 else "Take in"
        where = {"all": "from waist to hem", "hip and hem": "from hip to hem"}.get(self.at, f"at the {self.at}")
        return f"{verb} {mm(abs(self.by_mm))} on each {self.edge or 'side'} edge of {self.piece}, {where}."


def is_side(name: str) -> bool:
    """Whether an edge is a side: 'side', 'left side', 'right side'."""
    return name == "side" or name.endswith(" side")


def with_anchor(piece: PaperPiece, edge: str, y_mm: float) -> PaperPiece:
    """Return the same shape with an anchor where an edge crosses a height."""
    side = piece.side(edge)
    if side is None or any(abs(spot[1] - y_mm) < 1e-6 for spot in anchors(side)):
        return piece
    parts = tuple(_anchored(part, y_mm) for part in side.parts)
    fresh = replace(side, parts=parts)
    return replace(piece, sides=tuple(fresh if one.name == edge else one for one in piece.sides))


def _anchored(part: Path, y_mm: float) -> Path:
    spots = crossings(part, (0.0, y_mm), (1.0, 0.0))
    if not spots:
        return part
    first, second = cut(part, spots[0])
    return first + second


def _moved(piece: PaperPiece, edge: str, ask: Widen) -> PaperPiece | Finding:
    level = piece.level("high hip" if ask.at == "high hip" else "hip")
    if level is not None:
        piece = with_anchor(piece, edge, level)
    side = piece.side(edge)
    if side is None:
        return no_edge(piece, edge)
    out = outward(piece, side)
    high, low = max(side.start[1], side.end[1]), min(side.start[1], side.end[1])
    spots = [*anchors(side), *(notch.point for notch in (*piece.notches, *piece.marks) if notch.edge == edge)]
    moves = {
        spot: (spot[0] + out * ask.by_mm * _weight(ask.at, spot[1], (high, level, low)), spot[1]) for spot in spots
    }
    if ask.by_mm < 0 and _narrowest(piece, out, moves) < LEAST_WIDTH_MM:
        return refusal(
            piece,
            f"{piece.name} can't be taken in by {mm(-ask.by_mm)} at its {edge}.",
            f"It would be less than {mm(LEAST_WIDTH_MM)} wide.",
            "Take in less.",
            edge,
        )
    return reshape(piece, moves)


def _narrowest(piece: PaperPiece, out: float, moves: Mapping[Point, Point]) -> float:
    """Return how far the moved edge stays from the far side of the piece."""
    xs = [out * spot[0] for side in piece.sides for spot in anchors(side)]
    return min(out * to[0] for to in moves.values()) - min(xs)


def outward(piece: PaperPiece, side: SeamEdge) -> float:
    """Return 1 if the edge is on the right of its piece, -1 on the left."""
    xs = [spot[0] for one in piece.sides for spot in anchors(one)]
    middle = (min(xs) + max(xs)) / 2
    return 1.0 if (side.start[0] + side.end[0]) / 2 >= middle else -1.0


def _weight(at: str, y: float, heights: tuple[float, float | None, float]) -> float:
    """Return the share of the change at a height: full at the place, nothing at the next ones, even between."""
    high, level, low = heights
    if at == "all" or level is None:
        return 1.0
    top, middle, foot = WEIGHTS.get(at, (0.0, 1.0, 0.0))
    if y >= level:
        return middle + (top - middle) * (y - level) / (high - level) if high > level else middle
    return middle + (foot - middle) * (level - y) / (level - low) if level > low else middle


def _round(piece: PaperPiece) -> Finding:
    return refusal(
        piece,
        f"{piece.name} is part of a circle: its width comes from the radius at the waist.",
        "A straight edge moved sideways would no longer point to the middle.",
        "Raise the waist edge to make it narrower, drop it to make it wider.",
    )


@dataclass(frozen=True)
class BandLength:
    """Make a band longer at the end away from the lap; less than nothing shortens it."""

    piece: str
    by_mm: float
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the band longer by that much."""
        waist = piece.side("waist")
        if waist is None:
            return no_edge(piece, "waist")
        length = waist.sewn_mm
        if length + self.by_mm < LEAST_WIDTH_MM:
            return refusal(
                piece, f"{piece.name} is only {mm(length)} long.", "It can't lose more than it has.", "Take off less."
            )
        return longer(piece, self.by_mm)

    def inverse(self, before: PaperPiece) -> BandLength:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Cut {self.piece} {mm(abs(self.by_mm))} {'longer' if self.by_mm >= 0 else 'shorter'}."
