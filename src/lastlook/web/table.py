"""The cutting table of a garment as a screen shows it: what lies where, and how the drawing stands to the cloth."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from lastlook import lay, outfit
from lastlook.geometry import Point
from lastlook.sheet.draw.table import Laid, Table
from lastlook.sheet.manner import Hand, Manner

WIDE_MM = 250.0
"""How wide the drawing is, in its own millimetres."""


@dataclass(frozen=True)
class Handful:
    """What hands need to know of one cut: how it may be turned."""

    name: str
    copy: int
    turns_deg: tuple[float, ...]


def table_of(one: outfit.Sewn, placements: tuple[lay.Placement, ...]) -> Table | None:
    """Return the table with these cuts on it; None where there is no cloth or nothing to lay."""
    problem = one.problem
    if problem is None:
        return None
    laid = tuple(_laid(one, problem, place) for place in placements if problem.piece(place.id))
    used = max((x for cut in laid for x, _ in cut.on_cloth(cut.outline)), default=1000.0)
    length = problem.cloth.length_mm or used
    return Table(problem.cloth, length, laid, lay.left_over(problem, placements) if laid else ())


def _laid(one: outfit.Sewn, problem: lay.Problem, place: lay.Placement) -> Laid:
    wanted, piece = problem.piece(place.id), one.drafted.piece(place.id)
    assert wanted is not None
    a, b = piece.grain if piece else ((0.0, 0.0), (1.0, 0.0))
    return Laid(place.id, place, place.outline or wanted.outline, (_turned(a), _turned(b)), wanted.on_fold)


def _turned(point: Point) -> Point:
    """Turn a point of an upright paper piece as the lay turns pieces, their length along the cloth."""
    return (point[1], -point[0])


def times_of(table: Table) -> float:
    """Return the scale at which the table is drawn."""
    return WIDE_MM / table.length_mm


def for_hands(one: outfit.Sewn, table: Table, manner: Manner) -> dict[str, Any]:
    """Return what the page needs to let pieces be moved by hand."""
    problem = one.problem
    assert problem is not None
    return {
        "times": times_of(table),
        "left": manner.hand is Hand.LEFT,
        "placements": [lay.placement_as_json(cut.placement) for cut in table.laid],
        "twins": [_twin(table, cut) for cut in table.laid],
        "turns": [turns_of(problem, cut.placement.id) for cut in table.laid],
    }


def _twin(table: Table, cut: Laid) -> str:
    """Say how the other half of a cut moves with it: 'along', 'against' (mirrored in the fold), or '' for none."""
    if table.cloth.fold is lay.Fold.LENGTHWISE or not (cut.fold or cut.placement.layer == lay.BOTH):
        return ""
    return "along" if cut.fold else "against"


def turns_of(problem: lay.Problem, name: str) -> list[float]:
    """Return by how much a piece may be turned at a touch, in degrees; none where it may not."""
    piece = problem.piece(name)
    if piece is None:
        return []
    if piece.angles_deg is not None:
        first = piece.angles_deg[0]
        return [angle - first for angle in piece.angles_deg[1:]]
    if piece.grain_deg is None:
        return [15.0, 180.0]
    round_ = [180.0] if piece.may_turn and not problem.cloth.one_way else []
    return [*([1.0] if piece.tilt_deg else []), *round_]
