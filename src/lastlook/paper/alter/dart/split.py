"""One dart split into two of half the intake each, side by side; and two joined into one."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.geometry import Cubic, Path, Point, between, direction, distance_mm, turn_deg, turned
from lastlook.paper.alter.alteration import mm, no_dart, refusal
from lastlook.paper.alter.dart.find import Found, found, with_side
from lastlook.paper.alter.dart.shape import LEAST_PART_MM
from lastlook.paper.alter.reshape import reshape
from lastlook.paper.paper_piece import PaperPiece


@dataclass(frozen=True)
class DartSplit:
    """Make two darts of one; a dart of more than 3 cm is better as two (from memory of textbooks)."""

    piece: str
    dart: int = 1
    apart_mm: float = 40.0
    """From the middle of one mouth to the middle of the other."""
    places: tuple[Point, ...] = ()
    """Exactly where: first end, point and second end of each dart, then the two handles of the edge between them."""
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with two darts in place of one."""
        spot = found(piece, self.dart)
        if spot is None:
            return no_dart(piece, self.dart)
        if self.places:
            return _two(piece, spot, self.places)
        dart, half = spot.dart, self.apart_mm / 2
        room = min(spot.before.length_mm(), spot.after.length_mm()) - LEAST_PART_MM
        if half - dart.intake_mm / 4 > room or self.apart_mm < dart.intake_mm / 2 + LEAST_PART_MM:
            return refusal(
                piece,
                f"Dart {self.dart} of {piece.name} can't be split {mm(self.apart_mm)} apart.",
                f"It takes in {mm(dart.intake_mm)}; the edge beside it is {mm(room + LEAST_PART_MM)} long.",
                "Set the two closer together, or further apart than half the intake.",
                dart.edge,
            )
        return _two(piece, spot, _places(spot, self.apart_mm))

    def inverse(self, before: PaperPiece) -> DartJoin:
        """Return the change that takes this one back."""
        return DartJoin(self.piece, self.dart)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Split dart {self.dart} of {self.piece} into two, {mm(self.apart_mm)} apart."


@dataclass(frozen=True)
class DartJoin:
    """Make one dart of two neighbours, with the intake of both, halfway between them."""

    piece: str
    dart: int = 1
    """The dart nearer to the centre."""
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with one dart in place of two."""
        inner, outer = found(piece, self.dart), found(piece, self.dart + 1)
        if inner is None or outer is None:
            return no_dart(piece, self.dart if inner is None else self.dart + 1)
        if inner.side.name != outer.side.name:
            return no_dart(piece, self.dart + 1)
        first, second = (outer, inner) if outer.index < inner.index else (inner, outer)
        if len(first.after.segments) != 1 or not isinstance(first.after.segments[0], Cubic):
            return refusal(
                piece,
                f"Darts {self.dart} and {self.dart + 1} of {piece.name} can't be joined.",
                "The edge between them has corners of its own, which would be lost.",
                "Remove one and widen the other.",
                first.dart.edge,
            )
        return _one(piece, first, second)

    def inverse(self, before: PaperPiece) -> DartSplit:
        """Return the change that takes this one back."""
        inner, outer = found(before, self.dart), found(before, self.dart + 1)
        if inner is None or outer is None:
            return DartSplit(self.piece, self.dart)
        first, second = (outer, inner) if outer.index < inner.index else (inner, outer)
        bridge = first.after.segments[0]
        handles = (bridge.out, bridge.into) if isinstance(bridge, Cubic) else ()
        places = tuple(spot for one in (first.dart, second.dart) for spot in (one.first, one.point, one.second))
        return DartSplit(self.piece, self.dart, places=(*places, *handles))

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Join darts {self.dart} and {self.dart + 1} of {self.piece} into one."


def _places(spot: Found, apart_mm: float) -> tuple[Point, ...]:
    """Return where the two darts of a split lie: half the intake each, on the old mouth, as long as before."""
    dart = spot.dart
    along = direction(dart.first, dart.second)
    quarter, half = dart.intake_mm / 4, apart_mm / 2
    places: list[Point] = []
    for sign in (-1, 1):
        middle, point = _off(dart.middle, along, sign * half), _off(dart.point, along, sign * half)
        places += [_off(middle, along, -quarter), point, _off(middle, along, quarter)]
    leaves = turned(direction(places[2], places[1]), -90)
    arrives = turned(direction(places[3], places[4]), -90)
    reach = distance_mm(places[2], places[3]) / 3
    return (*places, _off(places[2], leaves, reach), _off(places[3], arrives, -reach))


def _two(piece: PaperPiece, spot: Found, places: tuple[Point, ...]) -> PaperPiece:
    """Send the outer legs to their places and set the edge between the two darts."""
    dart, side, at = spot.dart, spot.side, spot.index
    first, second = places[0], places[5]
    moves = {dart.first: first, dart.second: second}
    turns = {
        dart.first: _turn(dart.first, dart.point, first, places[1]),
        dart.second: _turn(dart.second, dart.point, second, places[4]),
    }
    moved = reshape(piece, moves, turns)
    fresh = moved.side(side.name) or side
    bridge = Path((Cubic(places[2], places[6], places[7], places[3]),))
    parts = (*fresh.parts[: at + 1], bridge, *fresh.parts[at + 1 :])
    points = (*side.points[:at], places[1], places[4], *side.points[at + 1 :])
    return with_side(moved, replace(fresh, parts=parts, points=points))


def _one(piece: PaperPiece, first: Found, second: Found) -> PaperPiece:
    """Drop the part between two darts and bring their outer legs together."""
    middle, point = (
        between(first.dart.middle, second.dart.middle, 0.5),
        between(first.dart.point, second.dart.point, 0.5),
    )
    along = direction(first.dart.middle, second.dart.middle)
    half = (first.dart.intake_mm + second.dart.intake_mm) / 2
    ends = (_off(middle, along, -half), _off(middle, along, half))
    moves = {first.dart.first: ends[0], second.dart.second: ends[1]}
    turns = {
        first.dart.first: _turn(first.dart.first, first.dart.point, ends[0], point),
        second.dart.second: _turn(second.dart.second, second.dart.point, ends[1], point),
    }
    moved = reshape(piece, moves, turns)
    fresh = moved.side(first.side.name) or first.side
    at = first.index
    parts = (*fresh.parts[: at + 1], *fresh.parts[at + 2 :])
    points = (*first.side.points[:at], point, *first.side.points[at + 2 :])
    return with_side(moved, replace(fresh, parts=parts, points=points))


def _turn(a: Point, b: Point, to_a: Point, to_b: Point) -> float:
    return turn_deg(direction(a, b), direction(to_a, to_b))


def _off(spot: Point, along: Point, by_mm: float) -> Point:
    return (spot[0] + along[0] * by_mm, spot[1] + along[1] * by_mm)
