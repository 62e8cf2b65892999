"""A ladder of boxes to tick, one for each row.

A box holds its row's number; a wrong-side row is on tissue, a right-side row on white; where the count on the
needle changes, the new count stands under the box.
"""

from __future__ import annotations

from lastlook.geometry import Path
from lastlook.knit import Side, WorkedRow
from lastlook.sheet.layout.flow import Block
from lastlook.sheet.mark import INK, SHADE, Align, Face, Ink, Item, Stroke, Style, Words, box, line

WIDE_MM = 8.0
HIGH_MM = 5.4
COUNT_MM = 3.3
LAST_MM = 0.8
NUMBER = Style(6, Face.TEXT)
COUNT = Style(6.5, Face.BOLD)


def boxes(rows: tuple[WorkedRow, ...], room_mm: float) -> list[Block]:
    """Return the boxes of these rows, a ladder a block, in tens where the room lets it."""
    a_line = int(room_mm // WIDE_MM)
    a_line = max(1, a_line // 10 * 10 if a_line >= 20 else a_line // 2 * 2)
    ladders = [rows[start : start + a_line] for start in range(0, len(rows), a_line)]
    return [_block(some, LAST_MM if some is ladders[-1] else 0.0) for some in ladders]


def _block(rows: tuple[WorkedRow, ...], under_mm: float) -> Block:
    counted = any(row.after != row.before for row in rows)
    return Block(HIGH_MM + (COUNT_MM if counted else 0.9) + under_mm, tuple(_ladder(rows, 0.0)))


def _ladder(rows: tuple[WorkedRow, ...], y: float) -> list[Item]:
    right: list[Path] = []
    wrong: list[Path] = []
    items: list[Item] = []
    for number, row in enumerate(rows):
        x = number * WIDE_MM
        (wrong if row.side is Side.WRONG else right).append(box(x, y, WIDE_MM, HIGH_MM))
        items.append(Words((x + 0.7, y + 2.2), str(row.number), NUMBER))
        if row.after != row.before:
            below = (x + WIDE_MM / 2, y + HIGH_MM + 2.5)
            items.append(Words(below, str(row.after), COUNT, Align.MIDDLE))
            items.append(line((x + WIDE_MM / 2, y + HIGH_MM - 0.9), (x + WIDE_MM / 2, y + HIGH_MM), Ink(INK, 0.4)))
    strokes: list[Item] = []
    if wrong:
        strokes.append(Stroke(tuple(wrong), Ink(INK, 0.2, SHADE)))
    if right:
        strokes.append(Stroke(tuple(right), Ink(INK, 0.2)))
    return [*strokes, *items]
