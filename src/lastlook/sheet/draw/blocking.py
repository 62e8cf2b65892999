"""The measures to pin a knitted piece out to: widths across at the heights that matter, heights from the cast-on edge.

The measures are those of the plan; a pin stands at every corner. Ribs are not pinned out.
"""

from __future__ import annotations

from lastlook.quantity import write_length
from lastlook.sheet.draw.knitted import Knitted, key_rows
from lastlook.sheet.draw.spread_out import Extent, Onto, extent, onto, straightened
from lastlook.sheet.draw.tape import BAND_MM, tape
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import (
    INK,
    PENCIL,
    SOFT,
    TISSUE,
    Align,
    Drawing,
    Face,
    Group,
    Ink,
    Item,
    Stroke,
    Style,
    Words,
    arrow,
    circle,
    shift,
    then,
    turn,
)

SIDE_MM = 6.0
WIDTH = Style(7.5, Face.BOLD)
HEIGHT = Style(6.5)
STEP_MM = 7.5
"""Least distance between two measures."""


def draw_blocking(knitted: Knitted, times: float, manner: Manner) -> Drawing:
    """Return a piece with the measures to pin it out to."""
    room = extent((knitted.outline,))
    way = onto(room, times, SIDE_MM, 4.0)
    outline = way.path(straightened(knitted.outline))
    long = [segment for segment in outline.segments if segment.length_mm() > 2.0]
    corners = tuple(circle(end, 0.7) for end in dict.fromkeys(end for one in long for end in (one.start, one.end)))
    items: list[Item] = [Stroke((outline,), Ink(INK, 0.35, TISSUE))]
    measured = _measures(knitted, room, way, times)
    for height, ends, wide in measured:
        items += _width(height, ends, wide, (room, way), manner)
    items.append(Stroke(corners, Ink(None, 0, PENCIL)))
    x, foot = way.point((room.right, room.bottom))
    upright = then(turn(-90), shift(x + 4 + BAND_MM, foot))
    items.append(Group((tape(room.height, manner.units, times),), upright))
    wide, high = x + 6 + BAND_MM, foot + 5
    said = ", ".join(
        f"{write_length(across, manner.units)} at {write_length(height, manner.units)}"
        for height, _, across in measured
    )
    return Drawing(
        f"{knitted.piece.name}: pin out to", f"Across {said} from the cast-on edge.", wide, high, tuple(items)
    )


def _measures(
    knitted: Knitted, room: Extent, way: Onto, times: float
) -> list[tuple[float, tuple[float, float], float]]:
    """Return height, ends and width at the key rows, those left out that lie too near to the one below."""
    out: list[tuple[float, tuple[float, float], float]] = []
    for row, _, _ in key_rows(knitted.piece):
        height = min(knitted.height_mm(row), room.height)
        ends = knitted.ends(height)
        if ends is None or (out and (height - out[-1][0]) * times < STEP_MM):
            continue
        out.append((height, ends, ends[1] - ends[0]))
    return out


def _width(
    height: float, ends: tuple[float, float], wide: float, where: tuple[Extent, Onto], manner: Manner
) -> list[Item]:
    room, way = where
    inside = min(max(height, 2.0), room.height)
    a, b = (way.point((x, room.bottom + inside)) for x in ends)
    low = 1.6 if height > room.height - 1 else -1.6 if height < 1 else 0.0
    start, end = (a[0] + 0.4, a[1] + low), (b[0] - 0.4, b[1] + low)
    middle = (start[0] + end[0]) / 2
    up = -0.8 if low <= 0 else 3.0
    said = write_length(wide, manner.units)
    items: list[Item] = list(arrow(start, end, Ink(SOFT, 0.2), "both"))
    items.append(Words((middle, start[1] + up), said, WIDTH, Align.MIDDLE))
    if height > 1:
        under = (middle, start[1] + (2.9 if up < 0 else 5.8))
        items.append(Words(under, f"at {write_length(height, manner.units)}", HEIGHT, Align.MIDDLE))
    return items
