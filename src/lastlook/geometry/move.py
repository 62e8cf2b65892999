"""New paths from old: shifted, turned, mirrored, or with every corner sent somewhere else."""

from __future__ import annotations

from collections.abc import Callable

from lastlook.geometry.curve import Cubic, Line, Segment
from lastlook.geometry.path import Path
from lastlook.geometry.point import Point
from lastlook.geometry.tangent import turned


def mapped(path: Path, send: Callable[[Point], Point]) -> Path:
    """Return the path with every point, handles too, sent where `send` says."""
    return Path(tuple(_mapped(segment, send) for segment in path.segments))


def shifted(path: Path, by: Point) -> Path:
    """Return the path moved without turning."""
    return mapped(path, lambda spot: (spot[0] + by[0], spot[1] + by[1]))


def mirrored(path: Path, x_mm: float) -> Path:
    """Return the path mirrored at an upright line, walked so that left stays left of it."""
    return mapped(path, lambda spot: (2 * x_mm - spot[0], spot[1])).reversed()


def swung(path: Path, about: Point, degrees: float) -> Path:
    """Return the path turned to the left about a point."""

    def send(spot: Point) -> Point:
        x, y = turned((spot[0] - about[0], spot[1] - about[1]), degrees)
        return (about[0] + x, about[1] + y)

    return mapped(path, send)


def _mapped(segment: Segment, send: Callable[[Point], Point]) -> Segment:
    if isinstance(segment, Line):
        return Line(send(segment.start), send(segment.end))
    return Cubic(send(segment.start), send(segment.out), send(segment.into), send(segment.end))
