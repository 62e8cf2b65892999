"""Shapes that sheets draw again and again: lines, boxes, dots, arrow heads, ticks."""

from __future__ import annotations

import math

from lastlook.geometry import Cubic, Path, Point, polygon, polyline
from lastlook.sheet.mark.item import Ink, Stroke

ROUND = 0.5522847498
"""Handle of the cubic that comes closest to a quarter circle of radius 1 (4/3 (sqrt 2 - 1))."""


def line(a: Point, b: Point, ink: Ink) -> Stroke:
    """Return one straight stroke."""
    return Stroke((polyline((a, b)),), ink)


def box(x: float, y: float, width: float, height: float) -> Path:
    """Return a rectangle from its top left corner."""
    return polygon(((x, y), (x + width, y), (x + width, y + height), (x, y + height)))


def circle(centre: Point, radius: float) -> Path:
    """Return a circle of four cubics."""
    x, y = centre
    r, h = radius, radius * ROUND
    east, south, west, north = (x + r, y), (x, y + r), (x - r, y), (x, y - r)
    return Path(
        (
            Cubic(east, (x + r, y + h), (x + h, y + r), south),
            Cubic(south, (x - h, y + r), (x - r, y + h), west),
            Cubic(west, (x - r, y - h), (x - h, y - r), north),
            Cubic(north, (x + h, y - r), (x + r, y - h), east),
        )
    )


def arrow_head(tip: Point, towards_deg: float, size: float) -> Path:
    """Return a slim arrow head that points in a direction (degrees clockwise from the right)."""
    back = [math.radians(towards_deg + 180 + side) for side in (-16, 16)]
    wings = [(tip[0] + size * math.cos(angle), tip[1] + size * math.sin(angle)) for angle in back]
    return polygon((tip, *wings))


def arrow(a: Point, b: Point, ink: Ink, heads: str = "end") -> tuple[Stroke, ...]:
    """Return a line with slim heads at its 'end' or at 'both' ends."""
    heading = math.degrees(math.atan2(b[1] - a[1], b[0] - a[0]))
    size = max(1.6, ink.width_mm * 7)
    tips = [arrow_head(b, heading, size)] + ([arrow_head(a, heading + 180, size)] if heads == "both" else [])
    return (line(a, b, ink), Stroke(tuple(tips), Ink(None, 0, ink.line)))
