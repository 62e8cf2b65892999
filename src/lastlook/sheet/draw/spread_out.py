"""Laying shapes whose y runs upwards on paper whose y runs downwards."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from lastlook.geometry import Line, Path, Point, Segment
from lastlook.sheet.mark import Matrix, path_at, point_at, scale, shift, then, turn

COARSE_MM = 0.2


@dataclass(frozen=True)
class Extent:
    """The upright rectangle round some shapes, in their own millimetres."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """Return the width."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Return the height."""
        return self.top - self.bottom


def extent(paths: Iterable[Path]) -> Extent:
    """Return the rectangle round the paths."""
    return extent_of(point for path in paths for point in path.points(COARSE_MM))


def extent_of(points: Iterable[Point]) -> Extent:
    """Return the rectangle round the points."""
    spots = list(points)
    xs, ys = [x for x, _ in spots], [y for _, y in spots]
    return Extent(min(xs), min(ys), max(xs), max(ys))


def straightened(path: Path) -> Path:
    """Return the same path with straight lines that run on joined into one; a row-by-row edge has many."""
    kept: list[Segment] = []
    for segment in path.segments:
        last = kept[-1] if kept else None
        if isinstance(segment, Line) and isinstance(last, Line) and _runs_on(last, segment):
            kept[-1] = Line(last.start, segment.end)
        else:
            kept.append(segment)
    return Path(tuple(kept))


def _runs_on(a: Line, b: Line) -> bool:
    u = (a.end[0] - a.start[0], a.end[1] - a.start[1])
    v = (b.end[0] - b.start[0], b.end[1] - b.start[1])
    long = math.hypot(*u) * math.hypot(*v)
    return abs(u[0] * v[1] - u[1] * v[0]) <= 1e-9 * max(long, 1e-9) and u[0] * v[0] + u[1] * v[1] >= 0


@dataclass(frozen=True)
class Onto:
    """From a shape's own millimetres onto a drawing: enlarged, turned the right way up, moved."""

    matrix: Matrix

    def point(self, point: Point) -> Point:
        """Return where a point is drawn."""
        return point_at(self.matrix, point)

    def path(self, path: Path) -> Path:
        """Return where a path is drawn."""
        return path_at(self.matrix, path)


def onto(room: Extent, times: float, left: float = 0.0, top: float = 0.0, turn_deg: float = 0.0) -> Onto:
    """Return the way that brings a rectangle, turned clockwise and scaled, with its top left to (left, top).

    >>> onto(Extent(0, 0, 10, 20), 0.5).point((0, 20))
    (0.0, 0.0)
    """
    upright = then(shift(-room.left, -room.top), scale(times, -times), turn(turn_deg))
    corners = [point_at(upright, (x, y)) for x in (room.left, room.right) for y in (room.bottom, room.top)]
    x, y = min(x for x, _ in corners), min(y for _, y in corners)
    return Onto(then(upright, shift(left - x, top - y)))
