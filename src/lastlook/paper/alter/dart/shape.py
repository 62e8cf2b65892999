"""A dart made wider or narrower, longer or shorter, or moved along its edge.

Its width is its intake: both legs together.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.geometry import Point, direction
from lastlook.paper.alter.alteration import mm, no_dart, refusal
from lastlook.paper.alter.dart.find import Found, found
from lastlook.paper.alter.reshape import reshape
from lastlook.paper.paper_piece import PaperPiece

LEAST_INTAKE_MM = 1.0
LEAST_LENGTH_MM = 10.0
LEAST_PART_MM = 2.0


@dataclass(frozen=True)
class DartWidth:
    """Make a dart wider by so much in all, half at each leg; less than nothing makes it narrower."""

    piece: str
    by_mm: float
    dart: int = 1
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with the mouth of the dart wider."""
        spot = found(piece, self.dart)
        if spot is None:
            return no_dart(piece, self.dart)
        intake = spot.dart.intake_mm + self.by_mm
        if intake < LEAST_INTAKE_MM:
            return _too_narrow(piece, self.dart, spot, self.by_mm)
        if self.by_mm / 2 > min(spot.before.length_mm(), spot.after.length_mm()) - LEAST_PART_MM:
            return _no_room(piece, self.dart)
        along = direction(spot.dart.first, spot.dart.second)
        half = self.by_mm / 2
        moves = {
            spot.dart.first: _off(spot.dart.first, along, -half),
            spot.dart.second: _off(spot.dart.second, along, half),
        }
        return reshape(piece, moves)

    def inverse(self, before: PaperPiece) -> DartWidth:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        verb = "wider" if self.by_mm >= 0 else "narrower"
        by = abs(self.by_mm)
        return f"Make dart {self.dart} of {self.piece} {mm(by)} {verb}, {mm(by / 2)} a leg."


@dataclass(frozen=True)
class DartLength:
    """Make a dart longer by so much; less than nothing makes it shorter."""

    piece: str
    by_mm: float
    dart: int = 1
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with the dart's point further from its mouth."""
        spot = found(piece, self.dart)
        if spot is None:
            return no_dart(piece, self.dart)
        if spot.dart.length_mm + self.by_mm < LEAST_LENGTH_MM:
            return refusal(
                piece,
                f"Dart {self.dart} of {piece.name} can't be shortened by {mm(-self.by_mm)}.",
                f"It is {mm(spot.dart.length_mm)} long.",
                "Shorten it less, or remove it.",
                spot.dart.edge,
            )
        along = direction(spot.dart.middle, spot.dart.point)
        return reshape(piece, {spot.dart.point: _off(spot.dart.point, along, self.by_mm)})

    def inverse(self, before: PaperPiece) -> DartLength:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        verb = "longer" if self.by_mm >= 0 else "shorter"
        return f"Make dart {self.dart} of {self.piece} {mm(abs(self.by_mm))} {verb}."


@dataclass(frozen=True)
class DartMove:
    """Move a dart away from the centre as it is; less than nothing moves it towards the centre."""

    piece: str
    by_mm: float
    dart: int = 1
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with the dart further along its edge."""
        spot = found(piece, self.dart)
        if spot is None:
            return no_dart(piece, self.dart)
        room = spot.before if self.by_mm > 0 else spot.after
        if abs(self.by_mm) > room.length_mm() - LEAST_PART_MM:
            return _no_room(piece, self.dart)
        along = direction(spot.dart.second, spot.dart.first)
        ends = (spot.dart.first, spot.dart.second, spot.dart.point)
        return reshape(piece, {end: _off(end, along, self.by_mm) for end in ends})

    def inverse(self, before: PaperPiece) -> DartMove:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        where = "outwards" if self.by_mm >= 0 else "towards the centre"
        return f"Move dart {self.dart} of {self.piece} {mm(abs(self.by_mm))} {where}."


def _off(spot: Point, along: Point, by_mm: float) -> Point:
    return (spot[0] + along[0] * by_mm, spot[1] + along[1] * by_mm)


def _too_narrow(piece: PaperPiece, number: int, spot: Found, by_mm: float) -> Finding:
    return refusal(
        piece,
        f"Dart {number} of {piece.name} can't be made {mm(-by_mm)} narrower.",
        f"It takes in {mm(spot.dart.intake_mm)}, both legs together.",
        "Narrow it less, or remove it.",
        spot.dart.edge,
    )


def _no_room(piece: PaperPiece, number: int) -> Finding:
    return refusal(
        piece,
        f"Dart {number} of {piece.name} has no room for that.",
        "It would run into the next dart or the end of the edge.",
        "Change it less.",
    )
