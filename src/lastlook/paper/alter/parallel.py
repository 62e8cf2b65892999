"""An edge moved alongside itself, its ends along its neighbours, the mouths of its darts along their legs."""

from __future__ import annotations

import itertools

from lastlook.geometry import (
    Point,
    direction,
    end_direction,
    ends_along,
    right_of,
    start_direction,
    starts_along,
)
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import SeamEdge

FLATTEST = 0.2
"""A neighbour that meets the edge at a smaller sine than this gives no direction; the edge's own is taken."""


def alongside(piece: PaperPiece, side: SeamEdge, by_mm: float) -> dict[Point, Point]:
    """Return where each anchor of an edge goes if the edge moves outwards by that much everywhere."""
    moves: dict[Point, Point] = {}
    for part in side.parts:
        joints = itertools.pairwise(part.segments)
        _send(moves, part.start, right_of(start_direction(part)), _ahead(piece, side, part.start), by_mm)
        for here, following in joints:
            a, b = right_of(ends_along(here)), right_of(starts_along(following))
            between = direction((0.0, 0.0), (a[0] + b[0], a[1] + b[1]))
            _send(moves, here.end, a, between, by_mm)
        _send(moves, part.end, right_of(end_direction(part)), _ahead(piece, side, part.end), by_mm)
    return moves


def _send(moves: dict[Point, Point], spot: Point, away: Point, along: Point | None, by_mm: float) -> None:
    """Send a spot along a direction until it is `by_mm` away, measured square to the edge."""
    along = along or away
    sine = along[0] * away[0] + along[1] * away[1]
    if sine < FLATTEST:
        along, sine = away, 1.0
    moves[spot] = (spot[0] + along[0] * by_mm / sine, spot[1] + along[1] * by_mm / sine)


def _ahead(piece: PaperPiece, side: SeamEdge, spot: Point) -> Point | None:
    """Return the outward direction in which a neighbour or the leg of a dart carries on beyond a spot."""
    for dart in side.darts:
        if spot in (dart.first, dart.second):
            return direction(dart.point, spot)
    for other in piece.sides:
        if other.name == side.name:
            continue
        if other.end == spot:
            return ends_along(other.parts[-1].segments[-1])
        if other.start == spot:
            x, y = starts_along(other.parts[0].segments[0])
            return (-x, -y)
    return None
