"""A tape measure, lying along something, at any scale.

It is the frame of every sheet: along the top of each page it is true, so a ruler laid against it shows at once
whether the printer kept the size.
"""

from __future__ import annotations

import math

from lastlook.geometry import Path, polyline
from lastlook.quantity import MM_PER_INCH, Units
from lastlook.sheet.mark import (
    INK,
    SHADE,
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


def tape(length_mm: float, units: Units, scale: float = 1.0, matrix: Matrix = (1, 0, 0, 1, 0, 0)) -> Group:
    """Return a tape from zero to `length_mm` of the real thing, drawn at `scale`, numbers above its lower edge.

    It runs to the right along y = 0 with its band above; the matrix lays it elsewhere.
    """
    unit, steps = _STEPS[units]
    step = next((n for n in steps if n * unit * scale >= 7), steps[-1])
    fine = next((n for n in (_FINE[units], 2, 1) if unit * scale / n >= 0.95), 0)
    end = length_mm * scale
    items: list[Item] = [
        Stroke((box(0, -BAND_MM, end, BAND_MM),), Ink(INK, 0.18, TISSUE)),
        Stroke((box(-TIP_MM, -BAND_MM, TIP_MM, BAND_MM),), Ink(INK, 0.18, SHADE)),
        Stroke(_rules(length_mm, unit * scale, scale, (fine, step)), Ink(INK, 0.15)),
    ]
    style = Style(6.5, Face.BOLD)
    for number in range(step, math.floor(length_mm / unit + 1e-6) + 1, step):
        x = number * unit * scale
        if x < end - 2.5:
            items.append(Words((x - 0.7, -BAND_MM + 2.7), str(number), style, Align.END))
    return Group(tuple(items), matrix)


def _rules(length_mm: float, unit: float, scale: float, parts: tuple[int, int]) -> tuple[Path, ...]:
    """Return the marks: long ones where a number stands, middle ones each unit, short ones between."""
    fine, step = parts
    end, out = length_mm * scale, []
    every = max(1, fine)
    for count in range(1, math.floor(end / unit * every + 1e-6) + 1):
        x = count * unit / every
        whole, part = divmod(count, every)
        if part:
            tall = 2.2 if part * 2 == every else 1.3
        else:
            tall = BAND_MM if whole % step == 0 else 3.0
        out.append(polyline(((x, 0.0), (x, -tall))))
    return tuple(out)
