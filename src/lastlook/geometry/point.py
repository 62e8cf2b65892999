"""Points of the plane, as pairs of millimetres."""

from __future__ import annotations

import math

Point = tuple[float, float]


def distance_mm(a: Point, b: Point) -> float:
    """Return how far two points are apart, in mm."""
    return math.hypot(b[0] - a[0], b[1] - a[1])


def between(a: Point, b: Point, share: float) -> Point:
    """Return the point at `share` (0 to 1) of the way from a to b."""
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)
