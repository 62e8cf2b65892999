"""The cutting table of a garment as a screen shows it: what lies where, and how the drawing stands to the cloth."""

from __future__ import annotations

from typing import Any

from lastlook import lay, outfit, sheet

WIDE_MM = 250.0
"""How wide the drawing is, in its own millimetres."""
BARE_MM = 1500.0
"""How long an endless cloth is drawn while nothing lies on it."""


def on_table(one: outfit.Sewn, placements: tuple[lay.Placement, ...]) -> sheet.Table | None:
    """Return the table with these cuts on it, bare where there are none; None where there is no cloth."""
    if one.problem is None:
        return None
    bare = sheet.Table(one.problem.cloth, one.problem.cloth.length_mm or BARE_MM, ())
    return sheet.table_of(one, placements) or bare


def times_of(table: sheet.Table) -> float:
    """Return the scale at which the table is drawn."""
    return WIDE_MM / table.length_mm


def for_hands(one: outfit.Sewn, table: sheet.Table, manner: sheet.Manner) -> dict[str, Any]:
    """Return what the page needs to let pieces be moved by hand."""
    problem = one.problem
    assert problem is not None
    return {
        "times": times_of(table),
        "left": manner.hand is sheet.Hand.LEFT,
        "placements": [lay.placement_as_json(cut.placement) for cut in table.laid],
        "twins": [_twin(table, cut) for cut in table.laid],
        "cut": [spot for spot, cut in enumerate(table.laid) if cut.placement in one.cut],
        "turns": [turns_of(problem, cut.placement.id) for cut in table.laid],
    }


def _twin(table: sheet.Table, cut: sheet.Laid) -> str:
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
        return [15.0, -15.0, 180.0]
    round_ = [180.0] if piece.may_turn and not problem.cloth.one_way else []
    step = min(1.0, piece.tilt_deg)
    return [*((step, -step) if step else ()), *round_]
