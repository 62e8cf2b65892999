"""Slash and spread, or slash and close: the part beyond a line swings about one end of it.

The cut is not kept as a gap: the edge that opens is drawn anew across it, so that it stays smooth.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.geometry import Point, cut, direction, distance_mm, nearest, turned
from lastlook.paper.alter.alteration import mm, refusal
from lastlook.paper.alter.reshape import every_point, reshape
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
        piece = _hinged(piece, self.hinge)
        moving = [spot for spot in set(every_point(piece)) if self._moves(piece, spot)]
        turn = math.degrees(self.by_mm / reach) * self._way(piece)
        caught = [spot for spot in moving if not self._stays_beyond(spot, turn)]
        if caught:
            return refusal(
                piece,
                f"{piece.name} can't be closed by {mm(-self.by_mm)} there: a corner lies in the wedge.",
                f"It lies at {caught[0][0]:.0f}, {caught[0][1]:.0f} mm.",
                "Close less, or along another line.",
            )
        moves = {spot: self._swung(spot, turn) for spot in moving}
        turns = dict.fromkeys(moving, turn)
        return reshape(piece, moves, turns)

    def inverse(self, before: PaperPiece) -> Spread:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        verb = "spread" if self.by_mm >= 0 else "close"
        return f"Slash {self.piece} and {verb} it by {mm(abs(self.by_mm))} at the open end."

    def _way(self, piece: PaperPiece) -> float:
        """Return 1 if the moving part swings to the left to open the cut, -1 to the right."""
        return 1.0 if self._fold_side(piece) > 0 else -1.0

    def _fold_side(self, piece: PaperPiece) -> float:
        still = piece.fold or (piece.side("centre") or piece.sides[0]).path.segments[0]
        spot = still[0] if isinstance(still, tuple) else still.start
        end = still[1] if isinstance(still, tuple) else still.end
        return self._beside(((spot[0] + end[0]) / 2, (spot[1] + end[1]) / 2))

    def _beside(self, spot: Point) -> float:
        """Return a positive number for what lies to the right of the cut, seen from the hinge."""
        along = direction(self.hinge, self.opens)
        return (spot[0] - self.hinge[0]) * along[1] - (spot[1] - self.hinge[1]) * along[0]

    def _moves(self, piece: PaperPiece, spot: Point) -> bool:
        return self._beside(spot) * self._fold_side(piece) < 0 and distance_mm(spot, self.hinge) > 1e-6

    def _stays_beyond(self, spot: Point, turn: float) -> bool:
        """Whether a spot is still on its own side of the cut, or behind the hinge, once swung."""
        to = self._swung(spot, turn)
        ahead = direction(self.hinge, self.opens)
        dot = (to[0] - self.hinge[0]) * ahead[0] + (to[1] - self.hinge[1]) * ahead[1]
        return self._beside(to) * self._beside(spot) > 0 or dot < 0

    def _swung(self, spot: Point, turn: float) -> Point:
        x, y = turned((spot[0] - self.hinge[0], spot[1] - self.hinge[1]), turn)
        return (self.hinge[0] + x, self.hinge[1] + y)


def _hinged(piece: PaperPiece, hinge: Point) -> PaperPiece:
    """Return the same shape with an anchor at the hinge, if the hinge lies on an edge."""
    sides = []
    for side in piece.sides:
        parts = []
        for part in side.parts:
            place = nearest(part, hinge)
            inside = 1e-6 < place.along_mm < part.length_mm() - 1e-6
            if place.away_mm < ON_EDGE_MM and inside and not place.spot.is_integer():
                first, second = cut(part, place.spot)
                part = first + second
            parts.append(part)
        sides.append(replace(side, parts=tuple(parts)))
    return replace(piece, sides=tuple(sides))
