"""Whether an outline is sound: where it crosses itself, and which way round it runs."""

from __future__ import annotations

import re
from collections.abc import Sequence

import shapely

from lastlook.geometry.point import Point


def signed_area_mm2(outline: Sequence[Point]) -> float:
    """Return the area inside a closed outline, in mm2: positive if it runs counter-clockwise."""
    total = 0.0
    x0, y0 = outline[0]
    for a, b in zip(outline, [*outline[1:], outline[0]], strict=True):
        total += (a[0] - x0) * (b[1] - y0) - (b[0] - x0) * (a[1] - y0)
    return total / 2


def crossing_of(outline: Sequence[Point]) -> Point | None:
    """Return a point where a closed outline crosses or touches itself, None if it never does.

    >>> crossing_of([(0, 0), (10, 10), (10, 0), (0, 10)])
    (5.0, 5.0)
    """
    words = str(shapely.is_valid_reason(shapely.Polygon(outline)))
    if words.startswith("Valid"):
        return None
    spot = re.search(r"\[(\S+) (\S+)\]", words)
    return (float(spot.group(1)), float(spot.group(2))) if spot else (outline[0][0], outline[0][1])
