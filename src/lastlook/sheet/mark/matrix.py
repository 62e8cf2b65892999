"""Moving, turning and mirroring, as matrices and done to paths."""

from __future__ import annotations

import math

from lastlook.geometry import Cubic, Line, Path, Point
from lastlook.geometry.curve import Segment
from lastlook.sheet.mark.item import Matrix


def shift(x: float, y: float) -> Matrix:
    """Return the move by x and y."""
    return (1.0, 0.0, 0.0, 1.0, x, y)


def scale(x: float, y: float | None = None) -> Matrix:
    """Return the enlargement about the origin; -1 mirrors."""
    return (x, 0.0, 0.0, x if y is None else y, 0.0, 0.0)


def turn(degrees: float) -> Matrix:
    """Return the turn about the origin from the x axis towards the y axis."""
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return (c, s, -s, c, 0.0, 0.0)


def then(*steps: Matrix) -> Matrix:
    """Return the matrix that does the steps in this order.

    >>> then(scale(2), shift(1, 0))
    (2.0, 0.0, 0.0, 2.0, 1.0, 0.0)
    """
    a, b, c, d, e, f = 1.0, 0.0, 0.0, 1.0, 0.0, 0.0
    for p, q, r, s, t, u in steps:
        a, b, c, d = p * a + r * b, q * a + s * b, p * c + r * d, q * c + s * d
        e, f = p * e + r * f + t, q * e + s * f + u
    return (a, b, c, d, e, f)


def point_at(matrix: Matrix, point: Point) -> Point:
    """Return where a point goes."""
    a, b, c, d, e, f = matrix
    x, y = point
    return (a * x + c * y + e, b * x + d * y + f)


def path_at(matrix: Matrix, path: Path) -> Path:
    """Return where a path goes; curves stay curves."""
    moved: list[Segment] = []
    for segment in path.segments:
        start, end = point_at(matrix, segment.start), point_at(matrix, segment.end)
        if isinstance(segment, Cubic):
            moved.append(Cubic(start, point_at(matrix, segment.out), point_at(matrix, segment.into), end))
        else:
            moved.append(Line(start, end))
    return Path(tuple(moved))
