"""The two squares that are measured before anything is cut: 100 mm and 4 inches."""

from __future__ import annotations

from lastlook.geometry import Path, polyline
from lastlook.quantity import MM_PER_INCH
from lastlook.sheet.mark import INK, Align, Face, Ink, Item, Stroke, Style, Words, box

SIDES = ((100.0, "100 mm", 10, 10.0), (4 * MM_PER_INCH, "4 inches", 32, MM_PER_INCH / 8))


def squares(left: float, top: float, step: tuple[float, float]) -> tuple[Item, ...]:
    """Return both squares, the second moved from the first by `step`; exact outlines, with marks inside them."""
    items: list[Item] = []
    for number, (side, said, marks, fine) in enumerate(SIDES):
        x, y = left + number * step[0], top + number * step[1]
        items.append(Stroke((box(x, y, side, side),), Ink(INK, 0.1)))
        items.append(Stroke(tuple(_rules(x, y, side, marks, fine)), Ink(INK, 0.1)))
        middle = (x + side / 2, y + side / 2 + 3)
        items.append(Words(middle, said, Style(20, Face.HEAD), Align.MIDDLE))
        below = (middle[0], middle[1] + 6)
        items.append(Words(below, "each way, from line to line", Style(8, Face.ITALIC), Align.MIDDLE))
    return tuple(items)


def _rules(x: float, y: float, side: float, marks: int, fine: float) -> list[Path]:
    out: list[Path] = []
    for number in range(1, marks):
        away = number * fine
        tall = 4.0 if number % 8 == 0 and marks == 32 else 2.0
        out.append(polyline(((x + away, y + side), (x + away, y + side - tall))))
        out.append(polyline(((x, y + away), (x + tall, y + away))))
    return out
