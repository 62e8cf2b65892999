"""Flare added or taken: the side swings about the hip, as long as before, and the hem stays square to it."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.geometry import Cubic, Line, Path, Point, between, distance_mm, turned
from lastlook.paper.alter.alteration import mm, no_edge, no_level, refusal
from lastlook.paper.alter.reshape import anchors, reshape
from lastlook.paper.alter.width import is_side, outward, with_anchor
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import SeamEdge

MOST_DEG = 45.0


@dataclass(frozen=True)
class Flare:
    """Swing each side edge outwards below the hip; less than nothing takes flare out."""

    piece: str
    by_mm: float
    """How far the hem end of each edge travels."""
    edge: str | None = None
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with its sides swung."""
        hip = piece.level("hip")
        if hip is None:
            return no_level(piece, "hip")
        names = [side.name for side in piece.sides if is_side(side.name) and side.name == (self.edge or side.name)]
        if not names:
            return no_edge(piece, self.edge or "side")
        for name in names:
            altered = _swung(piece, name, hip, self.by_mm)
            if isinstance(altered, Finding):
                return altered
            piece = altered
        return piece

    def inverse(self, before: PaperPiece) -> Flare:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        if self.by_mm >= 0:
            return f"Add {mm(self.by_mm)} of flare at the hem to each {self.edge or 'side'} edge of {self.piece}."
        return f"Take {mm(-self.by_mm)} of flare from the hem of each {self.edge or 'side'} edge of {self.piece}."


def _swung(piece: PaperPiece, edge: str, hip: float, by_mm: float) -> PaperPiece | Finding:
    piece = with_anchor(piece, edge, hip)
    side, hem = piece.side(edge), piece.side("hem")
    pivot = next((spot for spot in anchors(side) if abs(spot[1] - hip) < 1e-6), None) if side else None
    corner = None if side is None else min((side.start, side.end), key=lambda spot: spot[1])
    if side is None or hem is None or pivot is None or corner is None or corner not in (hem.start, hem.end):
        return no_edge(piece, "hem")
    degrees = math.degrees(by_mm / distance_mm(pivot, corner)) * outward(piece, side)
    if abs(degrees) > MOST_DEG:
        return refusal(
            piece,
            f"The side of {piece.name} can't be swung by {mm(by_mm)}.",
            f"That is {abs(degrees):.0f} degrees; a side swings by {MOST_DEG:.0f} at most.",
            "Slash the piece and spread it at several lines, or draft a part of a circle.",
            edge,
        )
    piece = _softened(piece, hem, corner, pivot[0])
    below = [spot for spot in anchors(side) if spot[1] < hip - 1e-6]
    below += [notch.point for notch in piece.notches if notch.edge == edge and notch.point[1] < hip - 1e-6]
    moves = {spot: _about(pivot, spot, degrees) for spot in below}
    return reshape(piece, moves, dict.fromkeys(below, degrees))


def _about(pivot: Point, spot: Point, degrees: float) -> Point:
    x, y = turned((spot[0] - pivot[0], spot[1] - pivot[1]), degrees)
    return (pivot[0] + x, pivot[1] + y)


def _softened(piece: PaperPiece, hem: SeamEdge, corner: Point, hip_x: float) -> PaperPiece:
    """Make the hem's end at a corner able to bend: a straight end becomes a curve of the same shape."""
    backwards = hem.start == corner
    part = hem.parts[0] if backwards else hem.parts[-1]
    path = part.reversed() if backwards else part
    last = path.segments[-1]
    if not isinstance(last, Line):
        return piece
    share = min(0.75, max(0.25, (hip_x - last.start[0]) / (last.end[0] - last.start[0] or 1.0)))
    turn = between(last.start, last.end, share)
    curve = Cubic(turn, between(turn, last.end, 1 / 3), between(turn, last.end, 2 / 3), last.end)
    path = Path((*path.segments[:-1], Line(last.start, turn), curve))
    path = path.reversed() if backwards else path
    parts = (path, *hem.parts[1:]) if backwards else (*hem.parts[:-1], path)
    fresh = replace(hem, parts=parts)
    return replace(piece, sides=tuple(fresh if side.name == hem.name else side for side in piece.sides))
