"""The two kinds of segment an outline is made of: straight lines and cubic Béziers.

True curves stay curves; they become chords only when somebody asks for points.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from lastlook.geometry.point import Point, between, distance_mm

_NODES = (
    (0.0950125098376374, 0.1894506104550685), (0.2816035507792589, 0.1826034150449236),
    (0.4580167776572274, 0.1691565193950025), (0.6178762444026438, 0.1495959888165767),
    (0.7554044083550030, 0.1246289712555339), (0.8656312023878318, 0.0951585116824928),
    (0.9445750230732326, 0.0622535239386479), (0.9894009349916499, 0.0271524594117541),
)  # fmt: skip
"""Gauss-Legendre, 16 points (Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4)."""
_PARTS = 4
_SPREAD = tuple(
    ((part + 0.5) / _PARTS + sign * node * 0.5 / _PARTS, weight * 0.5 / _PARTS)
    for part in range(_PARTS)
    for node, weight in _NODES
    for sign in (-1, 1)
)
"""The same nodes over four equal parts of a segment: parameter and weight."""


@dataclass(frozen=True)
class Line:
    """A straight segment."""

    start: Point
    end: Point

    def at(self, share: float) -> Point:
        """Return the point at a parameter from 0 to 1."""
        return between(self.start, self.end, share)

    def length_mm(self) -> float:
        """Return the length in mm."""
        return distance_mm(self.start, self.end)

    def points(self, sagitta_mm: float) -> list[Point]:
        """Return the points after the start, chords staying within `sagitta_mm`."""
        return [self.end]

    def reversed(self) -> Line:
        """Return the same segment walked the other way."""
        return Line(self.end, self.start)


@dataclass(frozen=True)
class Cubic:
    """A cubic Bézier segment."""

    start: Point
    out: Point
    into: Point
    end: Point

    def at(self, share: float) -> Point:
        """Return the point at a parameter from 0 to 1."""
        rest = 1 - share
        u, v, w, z = rest**3, 3 * rest**2 * share, 3 * rest * share**2, share**3
        a, b, c, d = self.start, self.out, self.into, self.end
        return (u * a[0] + v * b[0] + w * c[0] + z * d[0], u * a[1] + v * b[1] + w * c[1] + z * d[1])

    def velocity(self, share: float) -> Point:
        """Return the derivative by the parameter."""
        rest = 1 - share
        a, b, c, d = self.start, self.out, self.into, self.end
        k = (3 * rest * rest, 6 * rest * share, 3 * share * share)
        return (
            k[0] * (b[0] - a[0]) + k[1] * (c[0] - b[0]) + k[2] * (d[0] - c[0]),
            k[0] * (b[1] - a[1]) + k[1] * (c[1] - b[1]) + k[2] * (d[1] - c[1]),
        )

    def length_mm(self) -> float:
        """Return the length in mm by 16-point Gauss-Legendre over four equal parts."""
        (ax, ay), (bx, by), (cx, cy), (dx, dy) = self.start, self.out, self.into, self.end
        x0, x1, x2 = 3 * (bx - ax), 6 * (ax - 2 * bx + cx), 3 * (dx - ax + 3 * (bx - cx))
        y0, y1, y2 = 3 * (by - ay), 6 * (ay - 2 * by + cy), 3 * (dy - ay + 3 * (by - cy))
        hypot = math.hypot
        return sum(w * hypot(x0 + t * (x1 + t * x2), y0 + t * (y1 + t * y2)) for t, w in _SPREAD)

    def points(self, sagitta_mm: float) -> list[Point]:
        """Return the points after the start, chords staying within `sagitta_mm` of the curve.

        Steps by the bound on the second derivative: sagitta <= max|B''| / (8 n^2).
        """
        a, b, c, d = self.start, self.out, self.into, self.end
        bend = max(
            math.hypot(a[0] - 2 * b[0] + c[0], a[1] - 2 * b[1] + c[1]),
            math.hypot(b[0] - 2 * c[0] + d[0], b[1] - 2 * c[1] + d[1]),
        )
        steps = max(1, math.ceil(math.sqrt(6 * bend / (8 * sagitta_mm))))
        return [self.at(step / steps) for step in range(1, steps)] + [d]

    def reversed(self) -> Cubic:
        """Return the same segment walked the other way."""
        return Cubic(self.end, self.into, self.out, self.start)


Segment = Line | Cubic
