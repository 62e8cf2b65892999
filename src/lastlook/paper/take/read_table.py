"""Outlines from a table of points: two numbers a line, x to the right and y upwards; a blank line begins the next one.

A first line `unit: cm` says what the numbers are in; a line `piece: Front` names what follows.
"""

from __future__ import annotations

import math
import re

from lastlook.geometry import polyline
from lastlook.paper.take.outline import MOST_POINTS, Outline, Taken, closed, too_many, unread
from lastlook.paper.take.read_svg import MM, scale_assumed

_PAIR = re.compile(r"\s*([-+]?\d*[.,]?\d+)\s*[;\t ,]\s*([-+]?\d*[.,]?\d+)\s*;?\s*$")


def read_table(text: str) -> Taken:
    """Return the outlines of a table; the last point of each joins the first."""
    unit, name = "", ""
    blocks: list[tuple[str, list[tuple[float, float]]]] = [("", [])]
    for number, line in enumerate(text.splitlines(), 1):
        key, _, value = (part.strip().lower() for part in line.partition(":"))
        if key == "unit":
            unit = value
        elif key == "piece":
            name = line.partition(":")[2].strip()
            blocks.append((name, []))
        elif not line.strip():
            blocks.append((name, []))
        elif pair := _PAIR.match(line):
            blocks[-1][1].append((_number(pair.group(1)), _number(pair.group(2))))
        elif not line.lstrip().startswith("#"):
            why = f"It says “{line.strip()[:40]}”."
            return Taken(findings=(unread(f"Line {number} of the table holds no two numbers.", why, "Write x and y."),))
    points = sum(len(spots) for _, spots in blocks)
    if points > MOST_POINTS:
        return Taken(findings=(too_many(points),))
    outlines = _outlines(blocks, MM.get(unit, 1.0) if unit else 1.0)
    if not outlines:
        return Taken(findings=(unread("The table has no outline.", "One has three points or more.", "Add them."),))
    return Taken(outlines=outlines, findings=() if unit in MM and unit else (scale_assumed("1 mm to the unit"),))


def _outlines(blocks: list[tuple[str, list[tuple[float, float]]]], factor: float) -> tuple[Outline, ...]:
    outlines = []
    for name, spots in blocks:
        sized = [(x * factor, y * factor) for x, y in spots]
        sized = [spot for n, spot in enumerate(sized) if n == 0 or spot != sized[n - 1]]
        if len(sized) >= 3 and all(math.isfinite(x) and math.isfinite(y) for x, y in sized):
            ring = sized if sized[0] == sized[-1] else [*sized, sized[0]]
            outlines.append(Outline(closed(polyline(ring)), name))
    return tuple(outlines)


def _number(text: str) -> float:
    return float(text.replace(",", "."))
