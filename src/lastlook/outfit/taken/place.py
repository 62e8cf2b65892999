"""Places along an edge as a maker tells them, and the darts and notches that are marked there.

An edge that lies across is measured from its left end, one that stands upright from its upper end.
"""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from dataclasses import replace

from lastlook.geometry import Path, Point, between, cut, direction, distance_mm, nearest
from lastlook.outfit.written.read_taken import DartSaid, NotchSaid
from lastlook.paper import Notch, PaperPiece, SeamEdge
from lastlook.paper.take import guess, runs_of

CHORD_MM = 0.2


def runs_named(path: Path, said: Mapping[int, str]) -> tuple[tuple[Path, str], ...]:
    """Return the runs of an outline, each with its name: as the maker says, numbered from 1, else as guessed."""
    runs = runs_of(path)
    guessed = enumerate(zip(runs, guess(runs), strict=True), 1)
    return tuple((run, said.get(number, name)) for number, (run, name) in guessed)


def with_dart(piece: PaperPiece, dart: DartSaid) -> PaperPiece | None:
    """Return the piece with a dart cut into one of its edges; None where the edge has no room for it."""
    side = piece.side(dart.edge)
    if side is None or dart.wide_mm <= 0:
        return None
    for number, part in enumerate(side.parts):
        ends = [_along(part, mm) for mm in (dart.from_mm, dart.from_mm + dart.wide_mm)]
        if ends[0] is None or ends[1] is None:
            continue
        spots = sorted(nearest(part, point).spot for point in ends if point is not None)
        before, rest = cut(part, spots[0])
        _, after = cut(part, spots[1])
        if not before.segments or not after.segments or not rest.segments:
            return None
        points = (*side.points[:number], _tip(before.end, after.start, dart.deep_mm), *side.points[number:])
        parts = (*side.parts[:number], before, after, *side.parts[number + 1 :])
        return _with_side(piece, replace(side, parts=parts, points=points))
    return None


def with_notch(piece: PaperPiece, notch: NotchSaid, number: int) -> PaperPiece | None:
    """Return the piece with a notch on one of its edges; None where the edge is not so long."""
    side = piece.side(notch.edge)
    spots = [_along(part, notch.at_mm) for part in side.parts] if side else []
    point = next((spot for spot in spots if spot is not None), None)
    if point is None:
        return None
    return replace(piece, notches=(*piece.notches, Notch(f"{notch.edge} {number}", notch.edge, point)))


def _with_side(piece: PaperPiece, side: SeamEdge) -> PaperPiece:
    return replace(piece, sides=tuple(side if one.name == side.name else one for one in piece.sides))


def _tip(first: Point, second: Point, deep_mm: float) -> Point:
    """Return the point of a dart: from the middle of its mouth inwards, which is to the left of the walk."""
    x, y = between(first, second, 0.5)
    along = direction(first, second)
    return (x - along[1] * deep_mm, y + along[0] * deep_mm)


def _along(path: Path, mm: float) -> Point | None:
    """Return the point so far along an edge from its left or upper end, None where it is shorter."""
    spots = list(path.points(CHORD_MM))
    (x, y), (u, v) = spots[0], spots[-1]
    lies = abs(u - x) >= abs(v - y)
    if (lies and u < x) or (not lies and v > y):
        spots.reverse()
    left = mm
    for a, b in itertools.pairwise(spots):
        step = distance_mm(a, b)
        if left <= step:
            return between(a, b, left / step) if step else a
        left -= step
    return None
