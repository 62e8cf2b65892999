"""Which way a path runs, and how sharply two paths turn where they meet.

A direction is a vector of length one; a *turn* is in degrees, to the left positive.
"""

from __future__ import annotations

import math

from lastlook.geometry.curve import Cubic, Segment
from lastlook.geometry.path import Path
from lastlook.geometry.point import Point, distance_mm


def starts_along(segment: Segment) -> Point:
    """Return the direction in which a segment sets out."""
    spots = [segment.out, segment.into, segment.end] if isinstance(segment, Cubic) else [segment.end]
    return _first_direction(segment.start, spots)


def ends_along(segment: Segment) -> Point:
    """Return the direction in which a segment arrives."""
    x, y = starts_along(segment.reversed())
    return (-x, -y)


def start_direction(path: Path) -> Point:
    """Return the direction in which a path sets out."""
    return starts_along(path.segments[0])


def end_direction(path: Path) -> Point:
    """Return the direction in which a path arrives."""
    return ends_along(path.segments[-1])


def turn_deg(arriving: Point, leaving: Point) -> float:
    """Return by how many degrees the way turns to the left, from -180 to 180."""
    cross = arriving[0] * leaving[1] - arriving[1] * leaving[0]
    dot = arriving[0] * leaving[0] + arriving[1] * leaving[1]
    return math.degrees(math.atan2(cross, dot))


def right_of(direction: Point) -> Point:
    """Return the direction a quarter turn to the right: outward of a counter-clockwise outline."""
    return (direction[1], -direction[0])


def turned(vector: Point, degrees: float) -> Point:
    """Return a vector turned to the left."""
    angle = math.radians(degrees)
    c, s = math.cos(angle), math.sin(angle)
    return (vector[0] * c - vector[1] * s, vector[0] * s + vector[1] * c)


def direction(a: Point, b: Point) -> Point:
    """Return the direction from one point to another; rightwards if they are the same."""
    length = distance_mm(a, b)
    return ((b[0] - a[0]) / length, (b[1] - a[1]) / length) if length else (1.0, 0.0)


def _first_direction(start: Point, spots: list[Point]) -> Point:
    for spot in spots:
        if distance_mm(start, spot) > 1e-9:
            return direction(start, spot)
    return (1.0, 0.0)
