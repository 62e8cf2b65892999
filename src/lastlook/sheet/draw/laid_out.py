"""From a garment of the outfit and its lay to the cutting table, the largest cut first."""

from __future__ import annotations

import math

from lastlook import lay, outfit, paper
from lastlook.geometry import Point
from lastlook.sheet.draw.spread_out import extent_of
from lastlook.sheet.draw.table import Laid, Table

GRAIN_SHARE = 0.6
"""A part that has no grainline of its own gets one over this share of its length."""


def table_of(one: outfit.Sewn, placements: tuple[lay.Placement, ...]) -> Table | None:
    """Return the table with these cuts on it; None where there is no cloth or nothing is laid."""
    problem = one.problem
    if problem is None:
        return None
    laid = [cut for place in placements if (cut := _laid(one, problem, place))]
    if not laid:
        return None
    laid.sort(key=lambda cut: -_area_mm2(cut.outline))
    used = max(x for cut in laid for x, _ in cut.on_cloth(cut.outline))
    rests = lay.left_over(problem, placements)
    return Table(problem.cloth, problem.cloth.length_mm or used, tuple(laid), rests)


def _laid(one: outfit.Sewn, problem: lay.Problem, place: lay.Placement) -> Laid | None:
    wanted, piece = problem.piece(place.id), one.drafted.piece(place.id)
    if wanted is None:
        return None
    name = place.id if place.part == 1 and place.outline is None else f"{place.id}, part {place.part}"
    if place.outline is not None:
        return Laid(name, place, place.outline, _own_grain(place.outline, wanted.grain_deg or 0.0))
    return Laid(name, place, wanted.outline, _grain(piece, wanted), wanted.on_fold)


def _grain(piece: paper.PaperPiece | None, wanted: lay.Wanted) -> tuple[Point, Point]:
    """Return the paper's grainline, turned as the outfit turns its pieces for laying: upright becomes lengthwise."""
    if piece is None:
        return _own_grain(wanted.outline, wanted.grain_deg or 0.0)
    a, b = piece.grain
    return (a[1], -a[0]), (b[1], -b[0])


def _own_grain(outline: lay.Outline, grain_deg: float) -> tuple[Point, Point]:
    room = extent_of(outline)
    x, y = (room.left + room.right) / 2, (room.bottom + room.top) / 2
    c, s = math.cos(math.radians(grain_deg)), math.sin(math.radians(grain_deg))
    half = (abs(c) * room.width + abs(s) * room.height) * GRAIN_SHARE / 2
    return (x - c * half, y - s * half), (x + c * half, y + s * half)


def _area_mm2(outline: lay.Outline) -> float:
    pairs = zip(outline, (*outline[1:], outline[0]), strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2
