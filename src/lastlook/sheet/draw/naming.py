"""Where the name of a paper piece stands: clear of its grainline, its fold and the joins of its paper."""

from __future__ import annotations

import itertools
import math

from lastlook.geometry import Path, Point, at, crossings
from lastlook.paper import PaperPiece
from lastlook.sheet.draw.spread_out import Onto, extent_of
from lastlook.sheet.mark import Align, Item, Style, Words
from lastlook.sheet.type import MM_PER_PT, width_mm

NO_JOINS: Point = (1e9, 1e9)
SHARES = (0.42, 0.36, 0.48, 0.30, 0.54, 0.24, 0.60, 0.68, 0.76)
"""Heights that are tried, as shares from the top."""
CLEAR_MM = 7.0
"""How far words stay from a join."""
LEADING = 1.3
Lines = tuple[tuple[str, Style], ...]


def readable(degrees: float) -> float:
    """Turn words so that they are read from below or from the right.

    >>> readable(90.0), readable(180.0)
    (-90.0, 0.0)
    """
    turned = (degrees + 180) % 360 - 180
    return turned - 180 if turned > 89.9 else turned + 180 if turned < -90.1 else turned


def naming(piece: PaperPiece, lines: Lines, way: Onto, reach_mm: float, joins: Point) -> list[Item]:
    """Return the lines one under the other, in the widest clear stretch of the piece."""
    path = way.path(piece.seam_line)
    wide = max(width_mm(text, style) for text, style in lines)
    high = sum(style.size_pt * MM_PER_PT * LEADING for _, style in lines)
    best: tuple[float, Point] | None = None
    for share in SHARES:
        for left, right, top in _stretches(piece, path, way, reach_mm, (share, high)):
            middle = ((left + right) / 2, top)
            score = min(right - left, wide * 1.6) - 40.0 * _crosses(middle, (wide, high), joins)
            if best is None or score > best[0] + 1e-6:
                best = (score, middle)
    if best is None:
        return []
    x, y = best[1]
    items: list[Item] = []
    for text, style in lines:
        y += style.size_pt * MM_PER_PT * LEADING
        items.append(Words((x, y), text, style, Align.MIDDLE))
    return items


def _stretches(
    piece: PaperPiece, path: Path, way: Onto, reach_mm: float, block: tuple[float, float]
) -> list[tuple[float, float, float]]:
    """Return the clear stretches for a block of words at a height: left, right and its top."""
    share, high = block
    room = extent_of(path.points(1.0))
    middle = room.bottom + share * room.height
    a, b = (way.point(end) for end in piece.grain)
    lies = abs(a[0] - b[0]) > abs(a[1] - b[1])
    if lies and abs((a[1] + b[1]) / 2 - middle) < high / 2 + 1:
        above, below = (a[1] + b[1]) / 2 - room.bottom, room.top - (a[1] + b[1]) / 2
        middle = (a[1] + b[1]) / 2 + (-above / 2 if above > below else below / 2)
    cuts = [sorted(at(path, spot)[0] for spot in crossings(path, (0.0, y), (1.0, 0.0))) for y in _heights(middle, high)]
    if any(len(cut) < 2 for cut in cuts):
        return []
    left, right = max(cut[0] for cut in cuts), min(cut[-1] for cut in cuts)
    left, right = _off_fold(piece, way, reach_mm, (left, right))
    spots = [left, right]
    if not lies and min(a[1], b[1]) - 2 < middle + high / 2 and max(a[1], b[1]) + 2 > middle - high / 2:
        spots = sorted((left, min(max((a[0] + b[0]) / 2, left), right), right))
    return [(one + 1, two - 1, middle - high / 2) for one, two in itertools.pairwise(spots) if two - one > 2]


def _heights(middle: float, high: float) -> tuple[float, float, float]:
    return (middle - high / 2, middle, middle + high / 2)


def _off_fold(piece: PaperPiece, way: Onto, reach_mm: float, ends: tuple[float, float]) -> tuple[float, float]:
    if not piece.fold:
        return ends
    a, b = (way.point(end) for end in piece.fold)
    if abs(a[0] - b[0]) > abs(a[1] - b[1]):
        return ends
    x, away = (a[0] + b[0]) / 2, reach_mm * 1.7
    left, right = ends
    return (left + away, right) if abs(x - left) < abs(x - right) else (left, right - away)


def _crosses(top: Point, size: tuple[float, float], joins: Point) -> int:
    """Return in how many directions a block of words comes too near to a join."""
    x, y = top
    wide, high = size

    def near(low: float, high: float, step: float) -> bool:
        return math.floor((low - CLEAR_MM) / step) != math.floor((high + CLEAR_MM) / step)

    return int(near(x - wide / 2, x + wide / 2, joins[0])) + int(near(y, y + high, joins[1]))
