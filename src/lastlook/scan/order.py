"""The order in which strips of print are read: headings across, then column after column, line after line.

A *gutter* is an upright gap that hardly any strip crosses. Strips that cross it part the page into bands, and in
each band the left column is read before the right one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import median

MOST_CROSSING = 0.2
"""Of all strips, those that may cross a gutter: headings and what is set across."""
LEAST_COLUMN_LINES = 3
LEAST_COLUMN_WIDTH = 7.0
"""In heights of a line; the cells of a table of measures are narrower, and a table is read across."""
WIDEST_LEADING = 1.0
"""In heights of a strip, which has air above and below; wider steps than NEW_PARAGRAPH times this are gaps,
even where most are, as between single lines."""
NEW_PARAGRAPH = 1.5
"""A step between two lines this many times the usual one leaves a line blank."""


@dataclass(frozen=True)
class Lying:
    """A strip on the levelled page: which one it is, and the rectangle round its middle line."""

    which: int
    left: float
    right: float
    middle: float
    height: float


@dataclass(frozen=True)
class PrintedLine:
    """The strips of one line from left to right, and whether a blank line stands before it."""

    strips: tuple[int, ...]
    after_gap: bool


def in_order(lying: Sequence[Lying]) -> list[PrintedLine]:
    """Return the lines of a page in reading order."""
    return [line for column in _columns(list(lying)) for line in _lines(column)]


def _columns(lying: list[Lying]) -> list[list[Lying]]:
    gutter = _gutter(lying)
    if gutter is None:
        return [lying] if lying else []
    across = sorted((one for one in lying if one.left < gutter < one.right), key=lambda one: one.middle)
    out: list[list[Lying]] = []
    rest = [one for one in lying if not one.left < gutter < one.right]
    for head in [*across, None]:
        above = [one for one in rest if head is None or one.middle < head.middle]
        rest = [one for one in rest if one not in above]
        out += _columns([one for one in above if one.right <= gutter])
        out += _columns([one for one in above if one.left >= gutter])
        if head is not None:
            out.append([head])
    return _joined(out)


def _joined(columns: list[list[Lying]]) -> list[list[Lying]]:
    """Put headings that follow each other directly into one column, so that their lines keep their gaps."""
    out: list[list[Lying]] = []
    for column in columns:
        if out and len(column) == 1 and len(out[-1]) == 1:
            out[-1] = [*out[-1], *column]
        else:
            out.append(column)
    return out


def _gutter(lying: list[Lying]) -> float | None:
    """Return the middle of the widest upright gap that parts two columns, None where there is one column."""
    if len(lying) < 2 * LEAST_COLUMN_LINES:
        return None
    height = median(one.height for one in lying)
    edges = sorted({one.right for one in lying})
    best: tuple[float, float] | None = None
    for edge in edges:
        spot = edge + 0.25 * height
        crossing = [one for one in lying if one.left < spot < one.right]
        left = [one for one in lying if one.right <= spot]
        right = [one for one in lying if one.left >= spot]
        if len(crossing) > MOST_CROSSING * len(lying) or not _are_columns(left, right, height):
            continue
        gap = min(one.left for one in right) - edge
        if gap > 0.5 * height and (best is None or gap - 3 * height * len(crossing) > best[0]):
            best = (gap - 3 * height * len(crossing), edge + gap / 2)
    return best[1] if best else None


def _are_columns(left: list[Lying], right: list[Lying], height: float) -> bool:
    for side in (left, right):
        if len(side) < LEAST_COLUMN_LINES or median(one.right - one.left for one in side) < LEAST_COLUMN_WIDTH * height:
            return False
    top = max(min(one.middle for one in side) for side in (left, right))
    bottom = min(max(one.middle for one in side) for side in (left, right))
    return bottom - top > 1.2 * height


def _lines(column: list[Lying]) -> list[PrintedLine]:
    rows: list[list[Lying]] = []
    for one in sorted(column, key=lambda strip: strip.middle):
        close = rows and abs(one.middle - rows[-1][-1].middle) < 0.5 * min(one.height, rows[-1][-1].height)
        if close and all(
            one.left >= other.right - other.height or one.right <= other.left + other.height for other in rows[-1]
        ):
            rows[-1].append(one)
        else:
            rows.append([one])
    middles = [median(one.middle for one in row) for row in rows]
    steps = [after - before for before, after in pairwise(middles)]
    tall = median(one.height for one in column)
    usual = min(median(steps), WIDEST_LEADING * tall) if steps else 0.0
    gaps = [False, *(step > NEW_PARAGRAPH * usual for step in steps)]
    return [
        PrintedLine(tuple(one.which for one in sorted(row, key=lambda strip: strip.left)), gap)
        for row, gap in zip(rows, gaps, strict=True)
    ]
