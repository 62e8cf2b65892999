"""A dart made wider or narrower, longer or shorter, or moved along its edge.

Its width is its intake: both legs together.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Self

from lastlook.finding import Finding
from lastlook.geometry import Point, direction
from lastlook.paper.alter.alteration import mm, no_dart, refusal
from lastlook.paper.alter.dart.find import Found, found
from lastlook.paper.alter.reshape import Moves, reshape
from lastlook.paper.paper_piece import PaperPiece

LEAST_INTAKE_MM = 1.0
LEAST_LENGTH_MM = 10.0
LEAST_PART_MM = 2.0


@dataclass(frozen=True)
class DartShape:
    """A change of one dart by an amount, taken back by the same amount the other way."""

    piece: str
    by_mm: float
    dart: int = 1
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with the dart changed."""
        spot = found(piece, self.dart)
        if spot is None:
            return no_dart(piece, self.dart)
        moves = self._moves(piece, spot)
        return moves if isinstance(moves, Finding) else reshape(piece, moves)

    def inverse(self, before: PaperPiece) -> Self:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def _moves(self, piece: PaperPiece, spot: Found) -> Moves | Finding:
        """Return where the ends and the point of the dart go, or why they can't."""
        raise NotImplementedError


@dataclass(frozen=True)
class DartWidth(DartShape):
    """Make a dart wider by so much in all, half at each leg; less than nothing makes it narrower."""

    def _moves(self, piece: PaperPiece, spot: Found) -> Moves | Finding:
        dart, half = spot.dart, self.by_mm / 2
        if dart.intake_mm + self.by_mm < LEAST_INTAKE_MM:
            return _too_small(self, piece, spot, "made narrower", f"takes in {mm(dart.intake_mm)}, both legs together")
        if half > min(spot.before.length_mm(), spot.after.length_mm()) - LEAST_PART_MM:
            return _no_room(piece, self.dart)
        along = direction(dart.first, dart.second)
        return {dart.first: _off(dart.first, along, -half), dart.second: _off(dart.second, along, half)}

    def say(self) -> str:
        """Return it in a maker's words."""
        by, verb = abs(self.by_mm), "wider" if self.by_mm >= 0 else "narrower"
        return f"Make dart {self.dart} of {self.piece} {mm(by)} {verb}, {mm(by / 2)} a leg."


@dataclass(frozen=True)
class DartLength(DartShape):
    """Make a dart longer by so much; less than nothing makes it shorter."""

    def _moves(self, piece: PaperPiece, spot: Found) -> Moves | Finding:
        dart = spot.dart
        if dart.length_mm + self.by_mm < LEAST_LENGTH_MM:
            return _too_small(self, piece, spot, "shortened", f"is {mm(dart.length_mm)} long")
        return {dart.point: _off(dart.point, direction(dart.middle, dart.point), self.by_mm)}

    def say(self) -> str:
        """Return it in a maker's words."""
        verb = "longer" if self.by_mm >= 0 else "shorter"
        return f"Make dart {self.dart} of {self.piece} {mm(abs(self.by_mm))} {verb}."


@dataclass(frozen=True)
class DartMove(DartShape):
    """Move a dart away from the centre as it is; less than nothing moves it towards the centre."""

    def _moves(self, piece: PaperPiece, spot: Found) -> Moves | Finding:
        dart = spot.dart
        room = spot.before if self.by_mm > 0 else spot.after
        if abs(self.by_mm) > room.length_mm() - LEAST_PART_MM:
            return _no_room(piece, self.dart)
        along = direction(dart.second, dart.first)
        return {end: _off(end, along, self.by_mm) for end in (dart.first, dart.second, dart.point)}

    def say(self) -> str:
        """Return it in a maker's words."""
        where = "outwards" if self.by_mm >= 0 else "towards the centre"
        return f"Move dart {self.dart} of {self.piece} {mm(abs(self.by_mm))} {where}."


def _off(spot: Point, along: Point, by_mm: float) -> Point:
    return (spot[0] + along[0] * by_mm, spot[1] + along[1] * by_mm)


def _too_small(ask: DartShape, piece: PaperPiece, spot: Found, how: str, has: str) -> Finding:
    return refusal(
        piece,
        f"Dart {ask.dart} of {piece.name} can't be {how} by {mm(-ask.by_mm)}.",
        f"It {has}.",
        "Change it less, or remove it.",
        spot.dart.edge,
    )


def _no_room(piece: PaperPiece, number: int) -> Finding:
    return refusal(
        piece,
        f"Dart {number} of {piece.name} has no room for that.",
        "It would run into the next dart or the end of the edge.",
        "Change it less.",
    )
