"""Slash and spread, or slash and close: the part beyond a line swings about one end of it.

The cut is not kept as a gap: the edge that opens is drawn anew across it, so that it stays smooth. The grain stays with
the part that stays.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.geometry import Point, direction, distance_mm, turned
from lastlook.paper.alter.alteration import mm, refusal
from lastlook.paper.alter.reshape import every_point, reshape, softened, with_corner
from lastlook.paper.paper_piece import PaperPiece

ON_EDGE_MM = 1.0
MOST_DEG = 30.0


@dataclass(frozen=True)
class Spread:
    """Cut from `opens` to `hinge` and swing what lies away from the fold; less than nothing closes."""

    piece: str
    by_mm: float
    """How far the cut opens at `opens`."""
    hinge: Point
    opens: Point
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece spread or closed."""
        reach = distance_mm(self.hinge, self.opens)
        if reach < 1 or abs(math.degrees(self.by_mm / reach)) > MOST_DEG:
            return refusal(
                piece,
                f"{piece.name} can't be spread by {mm(self.by_mm)} over a cut of {mm(reach)}.",
                f"One cut swings by {MOST_DEG:.0f} degrees at most.",
                "Spread at several lines, each a part of it.",
            )
        piece = with_corner(piece, self.hinge)
        slash = _slash(piece, self.hinge, self.opens)
        still = slash.beside(_middle_of_fold(piece))
        turn = math.degrees(self.by_mm / reach) * math.copysign(1.0, still)
        kept = {*piece.grain, self.hinge}
        moving = {spot for spot in every_point(piece) if spot not in kept and slash.beside(spot) * still < 0}
        moving = {spot for spot in moving if distance_mm(spot, self.hinge) > 1e-6}
        piece = softened(piece, lambda line: (line.start in moving) != (line.end in moving))
        moves = {spot: _swung(spot, self.hinge, turn) for spot in moving}
        altered = reshape(piece, moves, dict.fromkeys(moving, turn))
        after = _slash(altered, self.hinge, self.opens)
        caught = [spot for spot, to in moves.items() if after.beside(to) * still >= 0]
        if caught:
            return refusal(
                piece,
                f"{piece.name} can't be spread by {mm(self.by_mm)} there: a corner would pass the cut.",
                f"It lies at {caught[0][0]:.0f}, {caught[0][1]:.0f} mm.",
                "Spread or close less, or along another line.",
            )
        return altered

    def inverse(self, before: PaperPiece) -> Spread:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        verb = "spread" if self.by_mm >= 0 else "close"
        return f"Slash {self.piece} and {verb} it by {mm(abs(self.by_mm))} at the open end."


@dataclass(frozen=True)
class _Slash:
    """The line of the cut: ahead to where it opens; behind the hinge up the middle of a dart, or straight on."""

    hinge: Point
    ahead: Point
    behind: Point

    def beside(self, spot: Point) -> float:
        """Return a positive number for what lies to the right of the cut, seen from the hinge."""
        x, y = spot[0] - self.hinge[0], spot[1] - self.hinge[1]
        along = self.ahead if x * self.ahead[0] + y * self.ahead[1] >= 0 else self.behind
        return x * along[1] - y * along[0]


def _slash(piece: PaperPiece, hinge: Point, opens: Point) -> _Slash:
    ahead = direction(hinge, opens)
    dart = next((one for one in piece.darts if distance_mm(one.point, hinge) < ON_EDGE_MM), None)
    return _Slash(hinge, ahead, direction(dart.middle, hinge) if dart else ahead)


def _middle_of_fold(piece: PaperPiece) -> Point:
    """Return a place on the edge that stays: the fold, the centre, or the first edge."""
    kept = piece.side(piece.fold_edge or "centre") or piece.sides[0]
    return ((kept.start[0] + kept.end[0]) / 2, (kept.start[1] + kept.end[1]) / 2)


def _swung(spot: Point, hinge: Point, turn: float) -> Point:
    x, y = turned((spot[0] - hinge[0], spot[1] - hinge[1]), turn)
    return (hinge[0] + x, hinge[1] + y)
