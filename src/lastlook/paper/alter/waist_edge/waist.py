"""The waist edge raised or lowered: everywhere, at the centre for what front and back ask for, or at one side.

Every difference between front, back and side lengths is put in at the waist, never at the hem (Baldt, 1916; The New
Dressmaker, 1921, read). A local change runs out to nothing along a smooth wave, so that the edge stays
square at both ends.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.geometry import Point
from lastlook.paper.alter.alteration import mm, no_edge, refusal
from lastlook.paper.alter.parallel import alongside
from lastlook.paper.alter.reshape import anchors, bent, reshape
from lastlook.paper.paper_piece import PaperPiece

MOST_MM = 60.0
"""A waist edge moved further than this is another pattern; common practice, no source."""


@dataclass(frozen=True)
class RaiseWaist:
    """Move the whole waist edge up; less than nothing drops it.

    A centimetre lower gives 1 to 1.5 cm on a shaped hip (worked out from the slope).
    """

    piece: str
    by_mm: float
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with its waist edge moved alongside itself, darts along their legs."""
        waist = piece.side("waist")
        if waist is None:
            return no_edge(piece, "waist")
        depth = min((dart.length_mm for dart in waist.darts), default=math.inf)
        if abs(self.by_mm) > MOST_MM or -self.by_mm >= depth:
            return _too_far(piece, self.by_mm, min(MOST_MM, depth))
        return reshape(piece, alongside(piece, waist, self.by_mm))

    def inverse(self, before: PaperPiece) -> RaiseWaist:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"{'Raise' if self.by_mm >= 0 else 'Lower'} the waist edge of {self.piece} by {mm(abs(self.by_mm))}."


@dataclass(frozen=True)
class TiltWaist:
    """Move the waist edge up at one end and by less and less towards the other; less than nothing lowers it."""

    piece: str
    by_mm: float
    at: str = "centre"
    """'centre', 'side', 'left side' or 'right side': the end that moves the whole amount."""
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with its waist edge tilted."""
        return tilted(piece, self.by_mm, self.at)

    def inverse(self, before: PaperPiece) -> TiltWaist:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        verb = "Raise" if self.by_mm >= 0 else "Lower"
        return f"{verb} the waist edge of {self.piece} by {mm(abs(self.by_mm))} at the {self.at}, to nothing beyond."


def tilted(piece: PaperPiece, by_mm: float, at: str) -> PaperPiece | Finding:
    """Return the piece with its waist edge moved at one end and running out to nothing."""
    waist = piece.side("waist")
    ends = _ends(piece, at)
    if waist is None or ends is None:
        return no_edge(piece, "waist" if waist is None else at)
    if abs(by_mm) > MOST_MM:
        return _too_far(piece, by_mm, MOST_MM)

    def send(spot: Point) -> Point:
        return (spot[0], spot[1] + by_mm * _wave(spot[0], *ends))

    moves = {spot: send(spot) for spot in anchors(waist)}
    for dart in waist.darts:
        rise = by_mm * _wave(dart.middle[0], *ends)
        moves |= {spot: (spot[0], spot[1] + rise) for spot in (dart.first, dart.second, dart.point)}
    marks = [notch.point for notch in (*piece.notches, *piece.marks) if notch.edge == "waist"]
    moves |= {spot: send(spot) for spot in marks if spot not in moves}
    return bent(piece, "waist", send, moves)


def _ends(piece: PaperPiece, at: str) -> tuple[float, float] | None:
    """Return the x where the whole amount is moved, and the x where nothing is."""
    waist = piece.side("waist")
    if waist is None:
        return None
    left, right = min(waist.start[0], waist.end[0]), max(waist.start[0], waist.end[0])
    names = [side.name for side in piece.sides]
    if at == "centre":
        middle = piece.side("centre")
        near_left = middle is None or abs(middle.start[0] - left) < abs(middle.start[0] - right)
        if middle is None:
            return None
        return (left, right) if near_left else (right, left)
    if at not in names:
        return None
    on_right = any(
        abs(side.start[0] - right) < 1 or abs(side.end[0] - right) < 1 for side in piece.sides if side.name == at
    )
    whole = (left + right) / 2 if at != "side" else (left if on_right else right)
    return (right, whole) if on_right else (left, whole)


def _wave(x: float, full: float, nothing: float) -> float:
    """Return the share moved at x: 1 at one end, 0 from the other on, level at both."""
    share = (x - full) / (nothing - full)
    return 0.5 * (1 + math.cos(math.pi * min(max(share, 0.0), 1.0)))


def _too_far(piece: PaperPiece, by_mm: float, most: float) -> Finding:
    return refusal(
        piece,
        f"The waist edge of {piece.name} can't be moved by {mm(abs(by_mm))}.",
        f"Beyond {mm(most)} it would no longer be a waist, or it would cut off a dart.",
        "Move it less.",
        "waist",
    )
