"""A path: segments end to end, open like an edge or closed like an outline.

Each segment starts where the one before it ends.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from dataclasses import dataclass

from lastlook.geometry.curve import Line, Segment
from lastlook.geometry.point import Point

FINE_MM = 0.01
"""Chords for exact work stay this close to the curve."""


@dataclass(frozen=True)
class Path:
    """Segments end to end; closed if the last one ends where the first starts."""

    segments: tuple[Segment, ...]

    @property
    def start(self) -> Point:
        """Return where the path begins."""
        return self.segments[0].start

    @property
    def end(self) -> Point:
        """Return where the path ends."""
        return self.segments[-1].end

    def is_closed(self) -> bool:
        """Whether it comes back to its start."""
        return self.start == self.end

    def length_mm(self) -> float:
        """Return the length along the path, in mm."""
        return sum(segment.length_mm() for segment in self.segments)

    def points(self, sagitta_mm: float = FINE_MM) -> tuple[Point, ...]:
        """Return points along the path, the start first; a closed path repeats its start at the end."""
        out = [self.start]
        for segment in self.segments:
            out += segment.points(sagitta_mm)
        return tuple(out)

    def area_mm2(self) -> float:
        """Return the signed area inside a closed path, in mm2: positive if counter-clockwise."""
        spots = self.points()
        pairs = itertools.pairwise(spots)
        return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs) / 2

    def reversed(self) -> Path:
        """Return the same path walked the other way."""
        return Path(tuple(segment.reversed() for segment in reversed(self.segments)))

    def __add__(self, other: Path) -> Path:
        """Join a path that starts where this one ends."""
        return Path(self.segments + other.segments)


def polyline(points: Iterable[Point]) -> Path:
    """Return the open path of straight lines through the points."""
    spots = list(points)
    return Path(tuple(Line(a, b) for a, b in itertools.pairwise(spots)))


def polygon(points: Iterable[Point]) -> Path:
    """Return the closed path of straight lines through the points; the first may or may not be repeated."""
    spots = list(points)
    return polyline(spots if spots[0] == spots[-1] else [*spots, spots[0]])
