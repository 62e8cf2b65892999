"""The outline of a worked piece in millimetres, from its rows and a gauge.

Left and right are those of the right side. A decrease or increase slopes the edge over its row; a bind-off, a
cast-on or a holder makes a step where its row begins. What is shaped inside the row takes from both edges alike.
Rounds lie flat, so that their width is half of their stitches; rows worked back and forth on a tube, like those
beside the neck of a yoke, lie folded with it. One gauge serves the whole piece.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.geometry import Path, Point, polygon
from lastlook.knit.worked import Act, Shaping, Side, WorkedPiece, WorkedRow
from lastlook.quantity import Gauge, Missing

STEPS = frozenset({Act.BIND_OFF, Act.CAST_ON, Act.HOLD, Act.PICK_UP})
MOST_OF_IT = 0.6
"""A heel is worked on half of a sock's stitches and lies by itself; a yoke beside its neck has nearly all."""
LESS = frozenset({Act.DECREASE, Act.BIND_OFF, Act.HOLD})


@dataclass(frozen=True)
class _Ends:
    """Where a row's two ends lie, in stitches."""

    left: float
    right: float


def outline(piece: WorkedPiece, gauge: Gauge) -> Path | None:
    """Return the closed outline of a piece in mm, counter-clockwise from its first row's left end.

    None where it has no rows, or no row gauge is known.
    """
    if not piece.rows or isinstance(gauge.rows, Missing):
        return None
    first, folded = piece.rows[0], _folded(piece.rows)
    count = piece.cast_on or first.before or first.after
    ends = _Ends(0.0, _lying(count, folded[0]))
    left: list[Point] = [(ends.left, 0.0)]
    right: list[Point] = [(ends.right, 0.0)]
    for number, row in enumerate(piece.rows, 1):
        after = _after(ends, row, folded[number - 1])
        if any(one.act in STEPS and one.edge != "right" for one in row.shapings):
            left.append((after.left, number - 1.0))
        if any(one.act in STEPS and one.edge != "left" for one in row.shapings):
            right.append((after.right, number - 1.0))
        left.append((after.left, float(number)))
        right.append((after.right, float(number)))
        ends = after
    across, up = gauge.width_mm(1).best, 100.0 / gauge.rows.best
    corners = _corners([(x * across, y * up) for x, y in [*right, *reversed(left)]])
    return polygon(corners) if len(corners) > 2 else None


def _folded(rows: Sequence[WorkedRow]) -> list[bool]:
    """Return which rows lie in two layers: rounds, and the rows that go on with nearly all of a round's stitches."""
    out = [row.side is Side.ROUND for row in rows]
    start = 0
    for in_rounds, stretch in itertools.groupby(rows, key=lambda row: row.side is Side.ROUND):
        these = list(stretch)
        stop = start + len(these)
        if not in_rounds and start:
            out[start:stop] = [these[0].before > MOST_OF_IT * rows[start - 1].before] * len(these)
        elif not in_rounds and stop < len(rows):
            out[start:stop] = [these[-1].after > MOST_OF_IT * rows[stop].before] * len(these)
        start = stop
    return out


def _lying(count: float, is_folded: bool) -> float:
    """Return over how many stitches a count lies flat."""
    return count / 2 if is_folded else float(count)


def _after(ends: _Ends, row: WorkedRow, is_folded: bool) -> _Ends:
    """Return the ends of a row; what its shapings don't account for is shared by both edges."""
    part = 0.5 if is_folded else 1.0
    left = ends.left + part * sum(_inwards(one) for one in row.shapings if one.edge == "left")
    right = ends.right - part * sum(_inwards(one) for one in row.shapings if one.edge == "right")
    over = (right - left) - _lying(row.after, is_folded)
    return _Ends(left + over / 2, right - over / 2)


def _inwards(shaping: Shaping) -> int:
    return shaping.stitches if shaping.act in LESS else -shaping.stitches


def _corners(points: list[Point]) -> list[Point]:
    """Leave out points that only lie on a straight line between their neighbours, and points that come twice."""
    kept: list[Point] = []
    for point in points:
        if kept and math.dist(point, kept[-1]) < 1e-9:
            continue
        while len(kept) > 1 and _runs_on(kept[-2], kept[-1], point):
            kept.pop()
        kept.append(point)
    return kept


def _runs_on(a: Point, b: Point, c: Point) -> bool:
    u, v = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
    return abs(u[0] * v[1] - u[1] * v[0]) < 1e-9 and u[0] * v[0] + u[1] * v[1] > 0
