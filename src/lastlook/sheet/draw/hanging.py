"""The fabric that hangs from the needle: what is worked so far, as wide as the row above it.

On the wrong side she sees it turned, so it is drawn mirrored. Every tenth row is a faint line with its number.
"""

from __future__ import annotations

from lastlook.geometry import polyline
from lastlook.knit import Side, WorkedRow
from lastlook.sheet.draw.knitted import Knitted
from lastlook.sheet.draw.spread_out import extent, straightened
from lastlook.sheet.mark import (
    INK,
    SOFT,
    TISSUE,
    Align,
    Face,
    Group,
    Ink,
    Item,
    Matrix,
    Stroke,
    Style,
    Words,
    path_at,
    point_at,
    scale,
    shift,
    then,
)

TENTHS = 10
NUMBER = Style(6, Face.TEXT, SOFT)


def hanging(knitted: Knitted, row: WorkedRow, ends: tuple[float, float], top: float, deep: float) -> list[Item]:
    """Return the fabric below a row, hung between two x at `top`, cut off after `deep` mm."""
    height = knitted.height_mm(row.number - 1)
    across = knitted.ends(height)
    if height <= 0 or across is None or across[1] - across[0] < 1e-6:
        return []
    way = _way(knitted, row, across, ends, top)
    outline = path_at(way, straightened(knitted.outline))
    wide = ends[1] - ends[0]
    window = (ends[0] - wide, top, 3 * wide, deep)
    inside: list[Item] = [Stroke((outline,), Ink(INK, 0.3, TISSUE))]
    inside += _tens(knitted, row, way, (ends[1], top + deep))
    return [Group(tuple(inside), clip=window)]


def _way(
    knitted: Knitted, row: WorkedRow, across: tuple[float, float], ends: tuple[float, float], top: float
) -> Matrix:
    """Return the way that lays the row's two ends on the needle; turned over where the wrong side faces."""
    times = (ends[1] - ends[0]) / (across[1] - across[0])
    foot = extent((knitted.outline,)).bottom
    height = foot + knitted.height_mm(row.number - 1)
    if row.side is Side.WRONG:
        return then(shift(-across[1], -height), scale(-times, -times), shift(ends[0], top))
    return then(shift(-across[0], -height), scale(times, -times), shift(ends[0], top))


def _tens(knitted: Knitted, row: WorkedRow, way: Matrix, window: tuple[float, float]) -> list[Item]:
    foot = extent((knitted.outline,)).bottom
    items: list[Item] = []
    for number in range((row.number - 1) // TENTHS * TENTHS, knitted.piece.rows[0].number, -TENTHS):
        across = knitted.ends(knitted.height_mm(number))
        if across is None:
            continue
        a, b = (point_at(way, (x, foot + knitted.height_mm(number))) for x in across)
        if a[1] > window[1]:
            break
        items.append(Stroke((polyline((a, b)),), Ink(SOFT, 0.12)))
        right = min(max(a[0], b[0]), window[0])
        items.append(Words((right - 1.0, a[1] - 0.6), f"row {number}", NUMBER, Align.END))
    return items
