"""A tape measure, lying along something, at any scale.

It is the frame of every sheet: along the top of each page it is true, so a ruler laid against it shows at once
whether the printer kept the size.
"""

from __future__ import annotations

import math
from typing import Literal

from lastlook.geometry import Path, polyline
from lastlook.quantity import MM_PER_INCH, Units
from lastlook.sheet.mark import (
    INK,
    SHADE,
    STILL,
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
    box,
)

BAND_MM = 6.5
TIP_MM = 3.0
"""The brass end before the zero."""
_STEPS = {Units.CM: (10.0, (1, 2, 5, 10, 20, 50)), Units.INCHES: (MM_PER_INCH, (1, 2, 3, 6, 12, 24))}
_FINE = {Units.CM: 10, Units.INCHES: 8}


def tape(
    length_mm: float, units: Units, scale: float = 1.0, matrix: Matrix = STILL, heading: Literal[1, -1] = 1
) -> Group:
    """Return a tape from zero to `length_mm` of the real thing, drawn at `scale`, numbers above its lower edge.

    It runs to the right (heading 1) or to the left (-1) along y = 0 with its band above; the matrix lays it elsewhere.
    """
    unit, steps = _STEPS[units]
    step = next((n for n in steps if n * unit * scale >= 7), steps[-1])
    fine = next((unit / n for n in (_FINE[units], 2, 1) if unit * scale / n >= 0.95), step * unit / 2)
    end = heading * length_mm * scale
    low = min(0.0, end)
    items: list[Item] = [
        Stroke((box(low, -BAND_MM, abs(end), BAND_MM),), Ink(INK, 0.18, TISSUE)),
        Stroke((box(-TIP_MM if heading > 0 else 0.0, -BAND_MM, TIP_MM, BAND_MM),), Ink(INK, 0.18, SHADE)),
        Stroke(_rules(length_mm, (unit, fine, step * unit), heading * scale), Ink(INK, 0.15)),
    ]
    style = Style(6.5, Face.BOLD)
    for number in range(step, math.floor(length_mm / unit + 1e-6) + 1, step):
        x = number * unit * scale
        if x < length_mm * scale - (2.5 if heading > 0 else 5.5):
            align = Align.END if heading > 0 else Align.START
            items.append(
                Words(
                    (heading * x - 0.7 if heading > 0 else heading * x + 0.7, -BAND_MM + 2.7), str(number), style, align
                )
            )
    return Group(tuple(items), matrix)


def _rules(length_mm: float, parts: tuple[float, float, float], scale: float) -> tuple[Path, ...]:
    """Return the marks: right across where a number stands, long at each unit, short between."""
    unit, fine, step = parts
    out = []
    for count in range(1, math.floor(length_mm / fine + 1e-6) + 1):
        at = count * fine
        if _is_whole(at / step):
            tall = BAND_MM
        elif _is_whole(at / unit) or fine >= unit:
            tall = 3.0
        else:
            tall = 2.2 if _is_whole(at / unit * 2) else 1.3
        out.append(polyline(((at * scale, 0.0), (at * scale, -tall))))
    return tuple(out)


def _is_whole(value: float) -> bool:
    return abs(value - round(value)) < 1e-6
