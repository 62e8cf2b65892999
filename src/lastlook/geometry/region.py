"""Areas of the plane: what is left of a box, an outline made simpler from outside, an outline drawn in."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np
import shapely

from lastlook.geometry.nofit import Corners, convex_parts
from lastlook.geometry.point import Point

Box = tuple[float, float, float, float]
"""x low, y low, x high, y high."""


def outside_parts(box: Box, outline: Sequence[Point]) -> list[Corners]:
    """Return convex parts of all of a box that lies outside an outline."""
    rest = shapely.box(*box).difference(shapely.Polygon(outline))
    return [part for polygon in _polygons(rest) for part in convex_parts(polygon)]


def area_parts(outlines: Iterable[Sequence[Point]]) -> list[Corners]:
    """Return convex parts of several outlines together."""
    whole = shapely.union_all([shapely.Polygon(one) for one in outlines])
    return [part for polygon in _polygons(whole) for part in convex_parts(polygon)]


def simpler(outline: Sequence[Point], within_mm: float, most: int) -> tuple[Point, ...]:
    """Return an outline of at most about `most` corners that holds the given one, as near to it as that allows."""
    true = shapely.Polygon(outline)
    while len(outline) > most:
        rough = true.simplify(within_mm * 0.5).buffer(within_mm * 0.51, join_style="mitre", mitre_limit=2.0)
        spots = list(rough.exterior.coords)[:-1]
        if shapely.Polygon(spots).covers(true):
            outline = [(float(x), float(y)) for x, y in spots]
        within_mm *= 2
        if within_mm > 64:
            break
    polygon = shapely.Polygon(outline)
    return tuple(_ring(polygon))


def simpler_inside(outline: Sequence[Point], within_mm: float, most: int) -> tuple[Point, ...]:
    """Return an outline of at most about `most` corners that lies inside the given one, as near as that allows."""
    true = shapely.Polygon(outline)
    spots = tuple(outline)
    while len(spots) > most and within_mm < 64:
        rough = true.simplify(within_mm * 0.5).buffer(-within_mm * 0.51, join_style="mitre", mitre_limit=2.0)
        parts = _polygons(rough)
        if len(parts) == 1 and not parts[0].interiors and true.covers(parts[0]):
            spots = tuple((float(x), float(y)) for x, y in parts[0].exterior.coords[:-1])
        within_mm *= 2
    return spots


def drawn_in_parts(outline: Sequence[Point], by_mm: float) -> list[Corners]:
    """Return convex parts of an outline drawn in by some mm; none where nothing is left."""
    rest = shapely.Polygon(outline).buffer(-by_mm, join_style="mitre")
    return [part for polygon in _polygons(rest) for part in convex_parts(polygon)]


def joined(outlines: Iterable[Sequence[Point]]) -> tuple[Point, ...] | None:
    """Return the outline of several that make up one area, None where they don't."""
    whole = shapely.union_all([shapely.Polygon(one) for one in outlines])
    polygons = _polygons(whole)
    if len(polygons) != 1 or polygons[0].interiors:
        return None
    tidy = _polygons(polygons[0].simplify(0))
    return tuple(_ring(tidy[0])) if len(tidy) == 1 else None


def covered_mm2(outlines: Iterable[Sequence[Point]]) -> float:
    """Return the area that several outlines cover together."""
    return float(shapely.union_all([shapely.Polygon(one) for one in outlines]).area)


def open_area_mm2(outline: Sequence[Point], taken: Iterable[Sequence[Point]]) -> float:
    """Return the area of an outline that none of the others takes."""
    rest = shapely.Polygon(outline).difference(shapely.union_all([shapely.Polygon(one) for one in taken]))
    return float(rest.area)


def part_between(outline: Sequence[Point], axis: int, low: float, high: float) -> tuple[Point, ...] | None:
    """Return the part of an outline between two lines across an axis, None where it falls into several."""
    spots = np.array(outline)
    x0, y0 = (float(v) - 1 for v in spots.min(0))
    x1, y1 = (float(v) + 1 for v in spots.max(0))
    box = (low, y0, high, y1) if axis == 0 else (x0, low, x1, high)
    polygons = _polygons(shapely.Polygon(outline).intersection(shapely.box(*box)))
    if len(polygons) != 1:
        return None
    return tuple(_ring(polygons[0]))


def box_length_mm(outline: Sequence[Point], least_mm: float, most_corners: int = 40) -> float:
    """Return the length along x of the longest box, higher than so much, that was found inside an outline; 0 if none.

    Boxes that begin and end at corners are tried; the one that is told lies inside, to a millionth.
    """
    shape = shapely.Polygon(outline)
    xs = sorted({float(x) for x, _ in outline})
    xs = xs[:: max(1, len(xs) // most_corners)]
    low, high = (float(v) for v in (shape.bounds[1], shape.bounds[3]))
    runs: list[tuple[float, float] | None] = []
    for x in xs:
        cut = shape.intersection(shapely.LineString([(x, low - 1), (x, high + 1)]))
        runs.append(
            (cut.bounds[1], cut.bounds[3]) if isinstance(cut, shapely.LineString) and not cut.is_empty else None
        )
    best = 0.0
    for first in range(len(xs)):
        bottom, top = low, high
        for last in range(first, len(xs)):
            run = runs[last]
            if run is None:
                break
            bottom, top = max(bottom, run[0]), min(top, run[1])
            if top - bottom <= least_mm:
                break
            if xs[last] - xs[first] > best:
                inner = shapely.box(xs[first] + 1e-6, bottom + 1e-6, xs[last] - 1e-6, top - 1e-6)
                best = xs[last] - xs[first] if shape.covers(inner) else best
    return best


def _polygons(shape: shapely.Geometry) -> list[shapely.Polygon]:
    if isinstance(shape, shapely.Polygon):
        return [] if shape.is_empty else [shape]
    return [one for one in getattr(shape, "geoms", ()) if isinstance(one, shapely.Polygon) and one.area > 1e-9]


def _ring(polygon: shapely.Polygon) -> list[Point]:
    """Return the outer corners of a polygon, counter-clockwise, the first not repeated."""
    spots = [(float(x), float(y)) for x, y in polygon.exterior.coords[:-1]]
    return spots if polygon.exterior.is_ccw else spots[::-1]
