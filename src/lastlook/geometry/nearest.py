"""The place on a path that is nearest to a point."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.geometry.curve import Line, Segment
from lastlook.geometry.path import Path
from lastlook.geometry.point import Point, distance_mm
from lastlook.geometry.split import split

_SAMPLES = 16
_ROUNDS = 60


@dataclass(frozen=True)
class Place:
    """A place on a path."""

    spot: float
    """Number of the segment plus the share of it."""
    along_mm: float
    """How far from the path's start, along it."""
    away_mm: float
    """How far from the point that was asked about."""


def nearest(path: Path, point: Point) -> Place:
    """Return the place on a path that is nearest to a point."""
    tried = [(_closest(segment, point), index) for index, segment in enumerate(path.segments)]
    (away, share), index = min(tried)
    before = sum(segment.length_mm() for segment in path.segments[:index])
    part = split(path.segments[index], share)[0].length_mm() if share else 0.0
    return Place(index + share, before + part, away)


def _closest(segment: Segment, point: Point) -> tuple[float, float]:
    """Return the least distance and its share: on a line worked out, on a curve sampled, then narrowed by thirds."""
    if isinstance(segment, Line):
        x, y = segment.end[0] - segment.start[0], segment.end[1] - segment.start[1]
        square = x * x + y * y
        dot = (point[0] - segment.start[0]) * x + (point[1] - segment.start[1]) * y
        share = min(1.0, max(0.0, dot / square)) if square else 0.0
        return distance_mm(segment.at(share), point), share
    shares = [step / _SAMPLES for step in range(_SAMPLES + 1)]
    best = min(shares, key=lambda share: distance_mm(segment.at(share), point))
    low, high = max(0.0, best - 1 / _SAMPLES), min(1.0, best + 1 / _SAMPLES)
    for _ in range(_ROUNDS):
        third = (high - low) / 3
        if distance_mm(segment.at(low + third), point) <= distance_mm(segment.at(high - third), point):
            high -= third
        else:
            low += third
    share = min((low, (low + high) / 2, high), key=lambda one: distance_mm(segment.at(one), point))
    return distance_mm(segment.at(share), point), share
