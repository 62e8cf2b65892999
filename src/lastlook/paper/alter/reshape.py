"""Moving corners of a piece so that its curves follow, and can be moved back.

An *anchor* is an end of a segment; a *handle* goes with its anchor. After a move handles are scaled with their
chord and turned with whatever is straight beside them: the line they run on from, the leg of a dart, the line round a
corner. Two curves that met smoothly meet smoothly again. Every step undoes itself when the anchors are sent back.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from lastlook.geometry import Cubic, Line, Path, Point, between, cut, direction, distance_mm, nearest, turn_deg, turned
from lastlook.paper.paper_piece import Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge

Moves = Mapping[Point, Point]
ON_EDGE_MM = 1.0
"""A spot this near to an edge lies on it."""
STILL_DEG = 1e-9
SMOOTH_DEG = 1.0
"""Segments that meet within this run on smoothly; a corner is meant where they don't."""


def reshape(piece: PaperPiece, moves: Moves, turns: Mapping[Point, float] | None = None) -> PaperPiece:
    """Return the piece with its anchors, dart points and marks sent where `moves` says, the rest in place."""
    bends = {**_straight_turns(piece, moves), **(turns or {})}
    sides = tuple(_side(side, moves, bends) for side in piece.sides)
    sides = tuple(_faired(old, new) for old, new in zip(piece.sides, sides, strict=True))
    return replace(
        piece,
        sides=sides,
        notches=_marks(piece.notches, moves),
        marks=_marks(piece.marks, moves),
        grain=(moves.get(piece.grain[0], piece.grain[0]), moves.get(piece.grain[1], piece.grain[1])),
    )


def bent(piece: PaperPiece, edge: str, send: Callable[[Point], Point], moves: Moves) -> PaperPiece:
    """Return the piece with one edge's every point, handles too, sent by `send`; other anchors by `moves`.

    `moves` has to send the ends of the edge, the dart points and the marks as well.
    """
    moved = reshape(piece, moves)
    old = piece.side(edge)
    if old is None:
        return moved
    parts = tuple(Path(tuple(_sent(segment, send, moves) for segment in part.segments)) for part in old.parts)
    points = tuple(moves.get(point, point) for point in old.points)
    fresh = replace(old, parts=parts, points=points)
    return replace(moved, sides=tuple(fresh if side.name == edge else side for side in moved.sides))


def anchors(side: SeamEdge) -> Iterator[Point]:
    """Yield every anchor of an edge in the order of the walk, ends of dart mouths with them."""
    for part in side.parts:
        yield part.start
        for segment in part.segments:
            yield segment.end


def every_point(piece: PaperPiece) -> Iterator[Point]:
    """Yield every anchor, dart point and mark of a piece, and both ends of its grain."""
    for side in piece.sides:
        yield from anchors(side)
        yield from side.points
    for notch in (*piece.notches, *piece.marks):
        yield notch.point
    yield from piece.grain


def with_corner(piece: PaperPiece, spot: Point) -> PaperPiece:
    """Return the same shape with an anchor at a spot, if the spot lies on an edge."""
    return replace(piece, sides=tuple(_with_corner(side, spot) for side in piece.sides))


def _with_corner(side: SeamEdge, spot: Point) -> SeamEdge:
    parts = []
    for part in side.parts:
        place = nearest(part, spot)
        inside = 1e-6 < place.along_mm < part.length_mm() - 1e-6
        if place.away_mm < ON_EDGE_MM and inside and abs(place.spot - round(place.spot)) > 1e-9:
            first, second = cut(part, place.spot)
            part = first + second
        parts.append(part)
    return replace(side, parts=tuple(parts))


def softened(piece: PaperPiece, wanted: Callable[[Line], bool]) -> PaperPiece:
    """Return the same shape with some of its straight segments able to bend: curves that are straight still."""
    sides = []
    for side in piece.sides:
        parts = tuple(
            Path(tuple(_soft(one) if isinstance(one, Line) and wanted(one) else one for one in part.segments))
            for part in side.parts
        )
        sides.append(replace(side, parts=parts))
    return replace(piece, sides=tuple(sides))


def _soft(line: Line) -> Cubic:
    return Cubic(line.start, between(line.start, line.end, 1 / 3), between(line.start, line.end, 2 / 3), line.end)


def _sent(segment: Line | Cubic, send: Callable[[Point], Point], moves: Moves) -> Line | Cubic:
    start, end = moves.get(segment.start, segment.start), moves.get(segment.end, segment.end)
    if isinstance(segment, Line):
        return Line(start, end)
    return Cubic(
        start, _ridden(segment.start, segment.out, send, start), _ridden(segment.end, segment.into, send, end), end
    )


def _ridden(anchor: Point, handle: Point, send: Callable[[Point], Point], to: Point) -> Point:
    """Send a handle as its place is sent, corrected by what its anchor is sent otherwise."""
    there, here = send(handle), send(anchor)
    return (there[0] + to[0] - here[0], there[1] + to[1] - here[1])


def _marks(notches: tuple[Notch, ...], moves: Moves) -> tuple[Notch, ...]:
    return tuple(replace(notch, point=moves.get(notch.point, notch.point)) for notch in notches)


def _side(side: SeamEdge, moves: Moves, turns: Mapping[Point, float]) -> SeamEdge:
    parts = tuple(Path(tuple(_segment(one, moves, turns) for one in part.segments)) for part in side.parts)
    return replace(side, parts=parts, points=tuple(moves.get(point, point) for point in side.points))


def _segment(segment: Line | Cubic, moves: Moves, turns: Mapping[Point, float]) -> Line | Cubic:
    start, end = moves.get(segment.start, segment.start), moves.get(segment.end, segment.end)
    if isinstance(segment, Line):
        return Line(start, end)
    before = distance_mm(segment.start, segment.end)
    scale = distance_mm(start, end) / before if before > 1e-9 else 1.0
    out = _handle(segment.start, segment.out, start, scale, turns.get(segment.start, 0.0))
    into = _handle(segment.end, segment.into, end, scale, turns.get(segment.end, 0.0))
    return Cubic(start, out, into, end)


def _handle(anchor: Point, handle: Point, to: Point, scale: float, degrees: float) -> Point:
    x, y = turned((handle[0] - anchor[0], handle[1] - anchor[1]), degrees)
    return (to[0] + x * scale, to[1] + y * scale)


def _straight_turns(piece: PaperPiece, moves: Moves) -> dict[Point, float]:
    """Return for each anchor by how much the straight thing beside it turns: a line, or the leg of a dart."""
    turns: dict[Point, float] = {}
    for side in piece.sides:
        for part in side.parts:
            for segment in part.segments:
                if isinstance(segment, Line):
                    degrees = _turn(segment.start, segment.end, moves)
                    turns.setdefault(segment.start, degrees)
                    turns.setdefault(segment.end, degrees)
    for dart in piece.darts:
        turns[dart.first] = _turn(dart.first, dart.point, moves)
        turns[dart.second] = _turn(dart.second, dart.point, moves)
    return turns


def _turn(a: Point, b: Point, moves: Moves) -> float:
    to_a, to_b = moves.get(a, a), moves.get(b, b)
    if distance_mm(a, b) < 1e-9 or distance_mm(to_a, to_b) < 1e-9:
        return 0.0
    return turn_deg(direction(a, b), direction(to_a, to_b))


def _faired(old: SeamEdge, new: SeamEdge) -> SeamEdge:
    """Let curves that met smoothly meet smoothly again, along the middle of their two directions."""
    return replace(new, parts=tuple(_fair(a, b) for a, b in zip(old.parts, new.parts, strict=True)))


def _fair(old: Path, new: Path) -> Path:
    segments = list(new.segments)
    for number in range(1, len(segments)):
        here, following = segments[number - 1], segments[number]
        was, then = old.segments[number - 1], old.segments[number]
        if not all(isinstance(one, Cubic) for one in (here, following, was, then)):
            continue
        assert isinstance(here, Cubic) and isinstance(following, Cubic)
        assert isinstance(was, Cubic) and isinstance(then, Cubic)
        before = turn_deg(_vector(was.into, was.end), _vector(then.start, then.out))
        kink = turn_deg(_vector(here.into, here.end), _vector(following.start, following.out)) - before
        if abs(kink) < STILL_DEG or abs(before) > SMOOTH_DEG:
            continue
        into = _handle(here.end, here.into, here.end, 1.0, kink / 2)
        out = _handle(following.start, following.out, following.start, 1.0, -kink / 2)
        segments[number - 1], segments[number] = replace(here, into=into), replace(following, out=out)
    return Path(tuple(segments))


def _vector(a: Point, b: Point) -> Point:
    x, y = b[0] - a[0], b[1] - a[1]
    return (x, y) if math.hypot(x, y) > 1e-12 else (1.0, 0.0)
