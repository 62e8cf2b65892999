"""Darts, notches and the grain marked on a piece that was taken in, at places told along its edges.

An edge that lies across is measured from its left end, one that stands upright from its upper end.
"""

from __future__ import annotations

import itertools
from dataclasses import replace

from lastlook.geometry import Path, Point, at, between, crossings, cut, direction, distance_mm, nearest
from lastlook.paper.paper_piece import Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge

CHORD_MM = 0.2
LEAST_PART_MM = 2.0
"""What of an edge has to stay beside a dart."""
DartPlace = tuple[float, float, float]
"""Where the mouth of a dart begins along its edge, how wide it is, how deep it goes, in mm."""


def with_dart(piece: PaperPiece, edge: str, place: DartPlace) -> PaperPiece | None:
    """Return the piece with a dart cut into one of its edges; None where the edge has no room for it."""
    side, (begins, wide, deep) = piece.side(edge), place
    if side is None or wide <= 0:
        return None
    for number, part in enumerate(side.parts):
        ends = [_along(part, mm) for mm in (begins, begins + wide)]
        if ends[0] is None or ends[1] is None:
            continue
        spots = sorted(nearest(part, point).spot for point in ends if point is not None)
        before, rest = cut(part, spots[0])
        _, after = cut(part, spots[1])
        if not before.segments or not after.segments or not rest.segments:
            return None
        tip = _tip(before.end, after.start, deep)
        if min(before.length_mm(), after.length_mm()) < LEAST_PART_MM or not _is_inside(piece, tip):
            return None
        points = (*side.points[:number], tip, *side.points[number:])
        parts = (*side.parts[:number], before, after, *side.parts[number + 1 :])
        return _with_side(piece, replace(side, parts=parts, points=points))
    return None


def with_notch(piece: PaperPiece, name: str, edge: str, at_mm: float) -> PaperPiece | None:
    """Return the piece with a notch on one of its edges; None where the edge is not so long."""
    side = piece.side(edge)
    spots = [_along(part, at_mm) for part in side.parts] if side else []
    point = next((spot for spot in spots if spot is not None), None)
    return None if point is None else replace(piece, notches=(*piece.notches, Notch(name, edge, point)))


def with_grain(piece: PaperPiece, said: str) -> PaperPiece:
    """Return the piece with its grain 'upright', 'level', or along one of its edges."""
    side, (top, foot) = piece.side(said), piece.grain
    middle, half = between(top, foot, 0.5), distance_mm(top, foot) / 2
    if side is not None:
        along = direction(side.start, side.end)
    elif said == "level":
        along = (1.0, 0.0)
    else:
        return piece
    ends = [(middle[0] + sign * along[0] * half, middle[1] + sign * along[1] * half) for sign in (-1, 1)]
    return replace(piece, grain=(ends[0], ends[1]))


def _is_inside(piece: PaperPiece, spot: Point) -> bool:
    """Whether a place lies within the seam line."""
    line = piece.seam_line
    return sum(at(line, one)[0] > spot[0] for one in crossings(line, spot, (1.0, 0.0))) % 2 == 1


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
