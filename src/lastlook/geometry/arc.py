"""Arcs of circles as cubic Béziers, fine enough that nobody can measure the difference."""

from __future__ import annotations

import math

from lastlook.geometry.curve import Cubic
from lastlook.geometry.path import Path
from lastlook.geometry.point import Point

MOST_DEG = 15.0
"""A cubic of 15 degrees leaves a true circle by less than a millionth of a percent of its radius."""


def arc(centre: Point, radius_mm: float, from_deg: float, to_deg: float) -> Path:
    """Return an arc from one angle to another, counter-clockwise if the angles grow.

    >>> round(arc((0, 0), 100, 0, 360).length_mm(), 4)
    628.3185
    """
    count = max(1, math.ceil(abs(to_deg - from_deg) / MOST_DEG))
    step = math.radians(to_deg - from_deg) / count
    reach = 4 / 3 * math.tan(step / 4) * radius_mm
    angles = [math.radians(from_deg) + step * number for number in range(count + 1)]
    spots = [(centre[0] + radius_mm * math.cos(a), centre[1] + radius_mm * math.sin(a)) for a in angles]
    if abs(abs(to_deg - from_deg) - 360) < 1e-12:
        spots[-1] = spots[0]
    segments = []
    for a, b, start, end in zip(angles, angles[1:], spots, spots[1:], strict=False):
        out = (start[0] - reach * math.sin(a), start[1] + reach * math.cos(a))
        into = (end[0] + reach * math.sin(b), end[1] - reach * math.cos(b))
        segments.append(Cubic(start, out, into, end))
    return Path(tuple(segments))
