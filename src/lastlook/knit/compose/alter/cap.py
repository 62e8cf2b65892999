"""The cap of a set-in sleeve, made higher or lower so that it still goes round the armhole.

A cap's edge and an armhole's are lengths along a slope; scaled counts keep the rows but not those lengths once a
sleeve is widened or a gauge squeezes rows more than stitches. What cap and armhole differed by as printed they differ
by again, as near as two rows come.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.compose.alter.changes import is_sleeve
from lastlook.knit.compose.alter.shape.profile import signed, underarm_row
from lastlook.knit.compose.alter.shape.shoulder import shoulder_row
from lastlook.knit.worked import WorkedPiece
from lastlook.piece import Seam, Unit
from lastlook.quantity import Gauge, Missing

MOST_ROWS = 40
EASED_MM = 15.0
"""More than that can't be eased into knitting (knits take no cap ease beyond 1 to 2 cm: common practice, no source)."""
NEAR_MM = 4.0
"""A difference that no tape would show along an armhole: common practice, no source."""


def printed_over_mm(seams: Sequence[Seam]) -> float | None:
    """Return by how much the cap is longer than its armhole as the reader laid them; None where there is no cap."""
    found = next((seam for seam in seams if seam.mate.unit is Unit.MM and seam.mate.b.edge == "cap"), None)
    return None if found is None else found.b_length - found.a_length


def cap_over_mm(pieces: Sequence[WorkedPiece], gauge: Gauge) -> float | None:
    """Return by how much the cap is longer than its armhole; None where one of the pieces is not there."""
    sleeve = next((piece for piece in pieces if is_sleeve(piece) and piece.rows), None)
    back = next((piece for piece in pieces if piece.name.lower() == "back" and piece.rows), None)
    front = next((piece for piece in pieces if piece.name.lower() in ("front", "left front") and piece.rows), None)
    if sleeve is None or back is None or front is None or isinstance(gauge.rows, Missing):
        return None
    edge = "left" if front.name.lower() == "front" else "right"
    parts = [piece for piece in pieces if piece.part_of == front.name]
    hole = _along(back, "left", gauge) + _along(front, edge, gauge) + _rest(front, parts, back, gauge)
    cap = 2 * _along(sleeve, "left", gauge, len(sleeve.rows)) + gauge.width_mm(sleeve.end_stitches).best
    return cap - hole


def refit(over: Callable[[int], float | None], was_mm: float, printed_mm: float, up: float) -> int:
    """Return the rows more, even, with which the cap goes round the armhole as it did; `up` is a row in mm.

    `was_mm` is the difference as it is laid here, `printed_mm` as the reader laid it.
    """
    now = over(0)
    if now is None or abs(now - was_mm) <= NEAR_MM:
        return 0
    wanted_mm = was_mm + max(-EASED_MM, min(EASED_MM, printed_mm)) - printed_mm
    best, miss = 0, abs(now - wanted_mm)
    step = -2 if now > wanted_mm else 2
    for rows in range(step, step * MOST_ROWS // 2, step):
        tried = over(rows)
        if tried is None or abs(tried - wanted_mm) > miss + up:
            break
        if abs(tried - wanted_mm) < miss:
            best, miss = rows, abs(tried - wanted_mm)
    return best


def refitted(rows: int, name: str) -> Finding:
    """Return that a cap got rows or gave some up."""
    return Finding(
        "cap-refitted",
        Certainty.NOTE,
        f"The cap of {name} has {abs(rows)} rows {'more' if rows > 0 else 'fewer'} than scaling alone would give it.",
        "Only so does its edge go round the armhole as it did in the leaflet.",
        where=Where(piece=name),
    )


def _along(piece: WorkedPiece, edge: str, gauge: Gauge, end: int | None = None) -> float:
    """Return the length of an edge from the underarm to the shoulder, row by row along the slope."""
    height = gauge.length_mm(1)
    if isinstance(height, Missing):
        return 0.0
    top = shoulder_row(piece) if end is None else end
    total = 0.0
    for row in piece.rows[underarm_row(piece) : top]:
        takes = sum(signed(one) for one in row.shapings if one.edge == edge)
        total += math.hypot(gauge.width_mm(abs(takes)).best, height.best)
    return total


def _rest(front: WorkedPiece, parts: Sequence[WorkedPiece], back: WorkedPiece, gauge: Gauge) -> float:
    """Return what a front that divides has left of its armhole: as many rows as the back."""
    if not parts:
        return 0.0
    rows = shoulder_row(back) - underarm_row(back) - (len(front.rows) - underarm_row(front))
    height = gauge.length_mm(max(0, rows))
    return 0.0 if isinstance(height, Missing) else height.best
