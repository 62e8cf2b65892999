"""An outline grown outwards, each of its runs by its own width.

A *run* is an open part of a closed, counter-clockwise outline. Corners are carried on straight until they meet; a
corner sharper than the limit is cut off. A run that is folded up later *mirrors* its neighbours: beyond the fold
its ends slant the other way, so that they lie on the neighbours once folded.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

from shapely.geometry import LinearRing, Polygon

from lastlook.geometry.path import Path, polygon, polyline
from lastlook.geometry.point import Point, distance_mm
from lastlook.geometry.split import meeting
from lastlook.geometry.tangent import direction, right_of

CHORD_MM = 0.02
"""How closely the grown outline's chords follow the true curve."""
LONGEST_CORNER = 2.5
"""A corner reaches this many widths at most (about 47 degrees); common practice, no source."""


@dataclass(frozen=True)
class Run:
    """One part of an outline, and how far it grows."""

    path: Path
    width_mm: float
    folds_up: bool = False


def grown(runs: Sequence[Run]) -> Path:
    """Return the outline grown outwards by the width of each run, as a closed path of straight lines.

    Where nothing is left of it, as where the widths fold it over itself, it is the outline as it was.
    """
    lines, between = _lines(runs)
    ring = [*lines[0], *between[0]]
    for line, joint in zip(lines[1:], between[1:], strict=True):
        ring += [*line, *joint]
    return _clean(ring) or Path(tuple(segment for run in runs for segment in run.path.segments))


def shrunk(runs: Sequence[Run]) -> tuple[Path, ...]:
    """Return each run moved inwards by its width and carried on, or cut off, to where it meets its neighbours."""
    lines, _ = _lines([Run(run.path, -run.width_mm) for run in runs])
    kept = []
    for line in lines:
        spots = [line[0], *(b for a, b in itertools.pairwise(line) if distance_mm(a, b) > 1e-6)]
        kept.append(polyline(spots if len(spots) > 1 else [line[0], line[-1]]))
    return tuple(kept)


def _lines(runs: Sequence[Run]) -> tuple[list[list[Point]], list[list[Point]]]:
    """Return the line beside each run, clipped at its corners, and the points that join each to the next."""
    lines = [_beside(run.path.points(CHORD_MM), run.width_mm) for run in runs]
    between: list[list[Point]] = []
    for number, run in enumerate(runs):
        following = (number + 1) % len(runs)
        corner = _corner(run, lines[number], runs[following], lines[following])
        lines[number], joint, lines[following] = corner
        between.append(joint)
    return lines, between


def beside(run: Run, sagitta_mm: float = CHORD_MM) -> Path:
    """Return the line that runs beside a run at its width: outwards, or inwards if the width is less than nothing."""
    return polyline(_beside(run.path.points(sagitta_mm), run.width_mm))


def _beside(points: Sequence[Point], width_mm: float) -> list[Point]:
    """Return the polyline shifted to its right, its chords carried on until they meet."""
    steps = [(a, b) for a, b in itertools.pairwise(points) if distance_mm(a, b) > 1e-9]
    if not steps:
        return [points[0], points[-1]]
    aways = [right_of(direction(a, b)) for a, b in steps]
    moved = [(_off(a, n, width_mm), _off(b, n, width_mm)) for (a, b), n in zip(steps, aways, strict=True)]
    out = [moved[0][0]]
    for (a, b), (c, d) in itertools.pairwise(moved):
        spot = meeting(a, direction(a, b), c, direction(c, d))
        near = spot is not None and distance_mm(spot, b) <= max(LONGEST_CORNER * abs(width_mm), 1e-6)
        out += [spot] if spot is not None and near else [b, c]
    return [*out, moved[-1][1]]


def _corner(a: Run, line_a: list[Point], b: Run, line_b: list[Point]) -> tuple[list[Point], list[Point], list[Point]]:
    """Return both lines, clipped or not, and the points that join them."""
    along_a, along_b = direction(line_a[-2], line_a[-1]), direction(line_b[0], line_b[1])
    if b.folds_up and b.width_mm > 0:
        return _folded(line_a, along_a, a.path.end, along_b, line_b)
    if a.folds_up and a.width_mm > 0:
        back_b, back_a, corner = [*reversed(line_b)], [*reversed(line_a)], a.path.end
        first, between, last = _folded(back_b, _back(along_b), corner, _back(along_a), back_a)
        return [*reversed(last)], [*reversed(between)], [*reversed(first)]
    spot = meeting(line_a[-1], along_a, line_b[0], along_b)
    if spot is None:
        return line_a, [], line_b
    limit = LONGEST_CORNER * max(abs(a.width_mm), abs(b.width_mm), 1e-6)
    if distance_mm(spot, a.path.end) > limit:
        reach = max(a.width_mm, b.width_mm)
        return line_a, [_off(line_a[-1], along_a, reach), _off(line_b[0], along_b, -reach)], line_b
    return _clipped(line_a, spot), [], _clipped(line_b[::-1], spot)[::-1]


def _folded(
    side: list[Point], along: Point, corner: Point, hem_along: Point, hem: list[Point]
) -> tuple[list[Point], list[Point], list[Point]]:
    """Join a side to a hem that folds up: down the side to the fold, then slanting as the side does, mirrored."""
    turn = meeting(side[-1], along, corner, hem_along)
    if turn is None:
        return side, [], hem
    dot = along[0] * hem_along[0] + along[1] * hem_along[1]
    mirrored = (along[0] - 2 * dot * hem_along[0], along[1] - 2 * dot * hem_along[1])
    spot = _first_crossing(hem, turn, mirrored) or meeting(turn, mirrored, hem[0], hem_along)
    if spot is None:
        return side, [], hem
    return _clipped(side, turn), [], _clipped(hem[::-1], spot)[::-1]


def _first_crossing(line: list[Point], through: Point, along: Point) -> Point | None:
    for a, b in itertools.pairwise(line):
        sides = [(p[0] - through[0]) * along[1] - (p[1] - through[1]) * along[0] for p in (a, b)]
        if sides[0] * sides[1] < 0:
            return meeting(a, direction(a, b), through, along)
    return None


def _clipped(line: list[Point], spot: Point) -> list[Point]:
    """Let a line end at a spot: points beyond it are dropped, and the last stretch is carried on to it."""
    kept = list(line)
    while len(kept) > 1:
        x, y = direction(kept[-2], kept[-1])
        if (kept[-1][0] - spot[0]) * x + (kept[-1][1] - spot[1]) * y < -1e-9:
            break
        kept.pop()
    return [*kept, spot]


def _clean(ring: list[Point]) -> Path | None:
    """Close the ring; loops that turned inside out at narrow inner corners are dropped; None where nothing is left."""
    kept = [ring[0]]
    kept += [spot for before, spot in itertools.pairwise(ring) if distance_mm(before, spot) > 1e-6]
    if distance_mm(kept[0], kept[-1]) <= 1e-6:
        kept.pop()
    if len(kept) < 3:
        return None
    if not LinearRing(kept).is_simple:
        shape = Polygon(kept).buffer(0)
        largest = max(getattr(shape, "geoms", [shape]), key=lambda part: part.area)
        kept = [(x, y) for x, y in list(largest.exterior.coords)[:-1]]
    bends = _bends(kept) if len(kept) > 2 else []
    if len(bends) < 3:
        return None
    path = polygon(bends)
    return path if path.area_mm2() > 0 else path.reversed()


def _bends(ring: list[Point]) -> list[Point]:
    """Drop the points at which a ring runs straight on."""
    out = []
    for before, here, after in zip([ring[-1], *ring], ring, [*ring[1:], ring[0]], strict=False):
        ahead, behind = direction(before, here), direction(here, after)
        if abs(ahead[0] * behind[1] - ahead[1] * behind[0]) > 1e-9 or ahead[0] * behind[0] + ahead[1] * behind[1] < 0:
            out.append(here)
    return out


def _off(spot: Point, along: Point, by_mm: float) -> Point:
    return (spot[0] + along[0] * by_mm, spot[1] + along[1] * by_mm)


def _back(along: Point) -> Point:
    return (-along[0], -along[1])
