"""Placements as they lie on the open cloth: every copy with its outlines, which way round, and its match point.

A placement through both layers of a fold gives the copy under the pattern and its reflection in the fold.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from lastlook.lay.cloth import Cloth, Fold, Outline, Point
from lastlook.lay.judge.exact import Corners, area_mm2
from lastlook.lay.placement import BOTH, Placement
from lastlook.lay.wanted import Wanted

_ALONG = (Fold.LENGTHWISE, Fold.BOTH_TO_MIDDLE, Fold.PARTIAL)


@dataclass(frozen=True)
class Zone:
    """A band of the cloth between two lines, and the fold it is reflected in, None where it is single."""

    axis: int
    """0 where the lines are at x, 1 where they are at y."""
    low: float
    high: float
    fold_at: float | None


@dataclass(frozen=True)
class Copy:
    """One copy, or one part of it, as it lies."""

    placement: Placement
    wanted: Wanted
    copy: int
    mirrored: bool
    angle_deg: float
    outlines: tuple[Corners, ...]
    """The cutting line; an opened fold piece has two halves."""
    guarded: tuple[Corners, ...]
    """What no flaw may touch."""
    point: Point | None
    waste: tuple[Corners, ...] = field(default=())
    """What is cut away with it from the other layer."""


def zones(cloth: Cloth, length_mm: float) -> tuple[Zone, ...]:
    """Return the bands that the fold divides the cloth into."""
    wide = cloth.width_mm
    if cloth.fold is Fold.LENGTHWISE:
        return Zone(1, 0, wide / 2, wide / 2), Zone(1, wide / 2, wide, wide / 2)
    if cloth.fold is Fold.BOTH_TO_MIDDLE:
        q = wide / 4
        return Zone(1, 0, q, q), Zone(1, q, 2 * q, q), Zone(1, 2 * q, 3 * q, 3 * q), Zone(1, 3 * q, wide, 3 * q)
    if cloth.fold is Fold.PARTIAL:
        deep = cloth.partial_mm
        return Zone(1, 0, deep, deep), Zone(1, deep, 2 * deep, deep), Zone(1, 2 * deep, wide, None)
    if cloth.fold is Fold.CROSSWISE:
        return Zone(0, 0, length_mm / 2, length_mm / 2), Zone(0, length_mm / 2, length_mm, length_mm / 2)
    return ()


def zone_of(places: tuple[Zone, ...], outlines: tuple[Corners, ...], slack_mm: float) -> Zone | None:
    """Return the zone that holds the outlines altogether, None where they cross a fold."""
    for zone in places:
        low = min(float(one[:, zone.axis].min()) for one in outlines)
        high = max(float(one[:, zone.axis].max()) for one in outlines)
        if low >= zone.low - slack_mm and high <= zone.high + slack_mm:
            return zone
    return None


def moved(outline: Outline, placement: Placement) -> Corners:
    """Return an outline mirrored, turned and moved, counter-clockwise."""
    spots = np.array(outline, float)
    if placement.mirrored:
        spots = spots * (1.0, -1.0)
    turn = math.radians(placement.angle_deg)
    cos, sin = _exactly(math.cos(turn)), _exactly(math.sin(turn))
    x, y = spots[:, 0], spots[:, 1]
    return _counter_clockwise(np.stack([x * cos - y * sin + placement.x, x * sin + y * cos + placement.y], 1), outline)


def _exactly(value: float) -> float:
    """Clear the last digits of a sine or cosine that stands for 0, 1 or -1."""
    near = round(value)
    return float(near) if abs(value - near) < 1e-15 else value


def _counter_clockwise(corners: Corners, outline: Outline) -> Corners:
    return corners if len(outline) < 3 or area_mm2(corners) > 0 else corners[::-1].copy()


def copies(wanted: Wanted, placement: Placement, cloth: Cloth, length_mm: float) -> list[Copy]:
    """Return the copies that one placement yields, lying on the open cloth."""
    outline = placement.outline if placement.outline is not None else wanted.outline
    shape = moved(outline, placement)
    free = wanted.flaw_free if placement.outline is None else None
    guard = (shape,) if free is None else tuple(moved(one, placement) for one in free)
    spot = None
    if wanted.match and placement.part == 1:
        spot = tuple(float(v) for v in moved((wanted.match.point,), placement)[0])
    point = (spot[0], spot[1]) if spot else None
    places = zones(cloth, length_mm)
    zone = zone_of(places, (shape,), 0.005)
    folded = wanted.on_fold is not None and placement.outline is None

    def build(copy: int, mirrored: bool, angle: float, line: Zone | None, back: Zone | None) -> Copy:
        shapes = (shape if line is None else _reflected(shape, line),)
        guards = guard if line is None else tuple(_reflected(one, line) for one in guard)
        spot = point if line is None or point is None else _reflected_point(point, line)
        waste = () if back is None or back.fold_at is None else (_reflected(shape, back),)
        return Copy(placement, wanted, copy, mirrored, angle, shapes, guards, spot, waste)

    if placement.layer == BOTH and zone and zone.fold_at is not None:
        if folded:
            one = build(placement.copy, placement.mirrored, placement.angle_deg, None, None)
            both = (shape, _reflected(shape, zone))
            guards = (*guard, *(_reflected(g, zone) for g in guard))
            return [Copy(placement, wanted, one.copy, one.mirrored, one.angle_deg, both, guards, point)]
        other = (180.0 if zone.axis == 0 else 0.0) - placement.angle_deg
        return [
            build(placement.copy, placement.mirrored, placement.angle_deg, None, None),
            build(placement.copy + 1, not placement.mirrored, other, zone, None),
        ]
    if folded and wanted.on_fold:
        a, b = moved(wanted.on_fold, placement)
        both = (shape, _over_line(shape, a, b))
        guards = (*guard, *(_over_line(g, a, b) for g in guard))
        zone = zone_of(places, both, 0.005)
        waste = tuple(_reflected(one, zone) for one in both) if zone and zone.fold_at is not None else ()
        one = build(placement.copy, placement.mirrored, placement.angle_deg, None, None)
        return [Copy(placement, wanted, one.copy, one.mirrored, one.angle_deg, both, guards, point, waste)]
    return [build(placement.copy, placement.mirrored, placement.angle_deg, None, zone)]


def _reflected(corners: Corners, zone: Zone) -> Corners:
    out = corners[::-1].copy()
    out[:, zone.axis] = 2 * (zone.fold_at or 0.0) - out[:, zone.axis]
    return out


def _reflected_point(spot: Point, zone: Zone) -> Point:
    at = 2 * (zone.fold_at or 0.0)
    return (at - spot[0], spot[1]) if zone.axis == 0 else (spot[0], at - spot[1])


def _over_line(corners: Corners, a: Corners, b: Corners) -> Corners:
    way = (b - a) / np.hypot(*(b - a))
    off = corners - a
    along = off @ way
    out: Corners = (2 * (a + along[:, None] * way) - corners)[::-1].copy()
    return out
