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
from lastlook.knit.worked import WorkedPiece, WorkedRow
from lastlook.piece import Seam, Unit
from lastlook.quantity import Gauge, Missing

MOST_ROWS = 40
LONGEST_SLOPE = 4
"""A shaping slopes over the rows since the last one, up to so many; before more the edge is straight."""
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
    side = next((piece for piece in pieces if piece.part_of == front.name), None)
    hole = _along(back.rows[underarm_row(back) : shoulder_row(back)], "right", gauge)
    if side is not None:
        rows = (*front.rows[underarm_row(front) :], *side.rows[: shoulder_row(side)])
    else:
        rows = front.rows[underarm_row(front) : shoulder_row(front)]
    hole += _along(rows, "right", gauge)
    cap = 2 * _along(sleeve.rows[underarm_row(sleeve) :], "right", gauge)
    return cap + gauge.width_mm(sleeve.end_stitches).best - hole


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


def _along(rows: Sequence[WorkedRow], edge: str, gauge: Gauge) -> float:
    """Return the length along a shaped edge: each shaping with the rows before it is a slope, as the reader lays it."""
    up, total, at = gauge.length_mm(1), 0.0, 0
    if isinstance(up, Missing):
        return 0.0
    for number, row in enumerate(rows, 1):
        takes = sum(max(0, signed(one)) for one in row.shapings if one.edge == edge)
        if takes:
            straight = max(0, number - at - LONGEST_SLOPE) and number - at - 2
            total += math.hypot(gauge.width_mm(takes).best, (number - at - straight) * up.best) + straight * up.best
            at = number
    return total + (len(rows) - at) * up.best
