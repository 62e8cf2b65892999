"""Two pieces worked side by side from one sheet, open like a book: one on either page, one row number between them.

Every shaping says where it comes in the row as she looks at it, and which edge that is as worn. A bind-off comes a
row later on one piece than on the other, because it is made where a row begins; that is right, and is said.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import zip_longest

from lastlook.knit import Act, Shaping, Side, WorkedPiece, WorkedRow
from lastlook.quantity import Gauge, write_length
from lastlook.sheet.draw.needle import spots
from lastlook.sheet.knitting.gather import again_words, repeats
from lastlook.sheet.knitting.handed import piece_in
from lastlook.sheet.layout.flow import BODY, CHAPTER, SMALL, TITLE, Block, beside, heading, pages, paragraph, stacked
from lastlook.sheet.layout.frame import Framing
from lastlook.sheet.layout.page import Sheet
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import INK, PENCIL, SHADE, Align, Face, Ink, Stroke, Style, Words, box, line

GUTTER_MM = 16.0
"""Room in the middle for the row's number and its box."""
BOX_MM = (11.0, 5.8)
EDGE = Style(7.5, Face.ITALIC, PENCIL)
Both = tuple[WorkedRow | None, WorkedRow | None]


@dataclass(frozen=True)
class Pair:
    """Two pieces of one garment that are worked at the same time."""

    title: str
    size: str
    a: WorkedPiece
    b: WorkedPiece
    gauge: Gauge | None = None
    needle_mm: float | None = None
    """How long the needle is; None where it is not known."""


def pair(both: Pair, manner: Manner) -> Sheet:
    """Return the pages, lying, with the two pieces side by side."""
    a, b = (piece_in(piece, manner.hand) for piece in (both.a, both.b))
    both = replace(both, a=a, b=b)
    title = f"{both.a.name} and {both.b.name} together"
    framing = Framing(f"{both.title}: {title}", both.size, manner, lying=True)
    room = framing.room_mm[0]
    blocks = [heading(title, room, TITLE), *(paragraph(text, room, BODY) for text in _before(both, manner))]
    blocks.append(_names(both, room))
    rows = list(zip_longest(both.a.rows, both.b.rows))
    for spot, length, times in repeats([_key(one) for one in rows]):
        blocks += [_row(both, rows, row, room, manner) for row in range(spot, spot + length)]
        if times > 1:
            blocks += _again(rows[spot + length : spot + length * times], spot + 1, (length, times - 1), room)
    return Sheet(framing.title, pages(blocks, framing))


def _before(both: Pair, manner: Manner) -> list[str]:
    said = [
        "Use a ball for either piece, and finish a row on both before you turn. "
        "“Begins” and “ends” are as you look at the work; the edge named after it is as it is worn.",
    ]
    widest = max((row.after for piece in (both.a, both.b) for row in piece.rows), default=0)
    if both.gauge and both.needle_mm:
        wide = both.gauge.width_mm(widest * 2).best
        if wide > both.needle_mm:
            said.append(
                f"Both together are {write_length(wide, manner.units)} wide at their widest; the needle holds "
                f"{write_length(both.needle_mm, manner.units)}. Part them before that, or take a longer one."
            )
    return [manner.say(one) for one in said]


def _names(both: Pair, room: float) -> Block:
    half = (room - GUTTER_MM) / 2
    names = [heading(piece.name, half, CHAPTER) for piece in (both.a, both.b)]
    counts = [paragraph(f"Cast on {piece.cast_on or 0} stitches.", half) for piece in (both.a, both.b)]
    left, right = (stacked(one) for one in zip(names, counts, strict=True))
    whole = beside(((0.0, left), (half + GUTTER_MM, right)))
    return Block(whole.height_mm, whole.items, kept=True)


def _key(both: Both) -> tuple[object, ...]:
    return tuple((row.words, row.side) if row else None for row in both)


def _again(rows: list[Both], first: int, block: tuple[int, int], room: float) -> list[Block]:
    """Rows that come again, with their boxes across both pages; `block` is its length and how often it comes."""
    length, times = block
    start = first + length
    half = (room - GUTTER_MM) / 2
    said = again_words((start, start + len(rows) - 1), (first, start - 1), times)
    sides = [_counts(one[side] for one in rows) for side in (0, 1)]
    parts = [stacked((paragraph(said, half), paragraph(count, half, SMALL))) for count in sides]
    top = beside(((0.0, parts[0]), (half + GUTTER_MM, parts[1])))
    return [_spine(top, room), *_boxes(rows, start - 1, room)]


def _counts(rows: Iterable[WorkedRow | None]) -> str:
    there = [row for row in rows if row is not None]
    if not there:
        return "nothing here"
    if there[0].before == there[-1].after:
        return f"{there[-1].after} stitches throughout"
    return f"{there[0].before} stitches before, {there[-1].after} after"


def _row(both: Pair, rows: list[Both], spot: int, room: float, manner: Manner) -> Block:
    half = (room - GUTTER_MM) / 2
    parts = []
    for side, piece in enumerate((both.a, both.b)):
        row = rows[spot][side]
        parts.append(_half(piece, row, _later(rows, spot, side), half, manner))
    number = _number(rows[spot], spot, half)
    return _spine(beside(((0.0, parts[0]), (0.0, number), (half + GUTTER_MM, parts[1]))), room)


def _half(piece: WorkedPiece, row: WorkedRow | None, later: str, room: float, manner: Manner) -> Block:
    if row is None:
        return paragraph("–", room)
    changed = row.after != row.before
    count = f"  {row.after} sts" if changed else ""
    lines = [paragraph(manner.say(row.words) + count, room, Style(9, Face.BOLD) if changed else BODY)]
    if row.shapings:
        lines.append(paragraph(manner.say(_edges(piece.name, row, manner)), room, EDGE))
    if later:
        lines.append(paragraph(later, room, SMALL))
    return stacked(lines)


def _edges(name: str, row: WorkedRow, manner: Manner) -> str:
    kinds = {(one.act, one.stitches) for one in row.shapings}
    if len(row.shapings) == 2 and len(kinds) == 1 and {one.edge for one in row.shapings} == {"left", "right"}:
        return "at both ends"
    return "; ".join(edge_words(name, row, shaping, manner) for shaping in row.shapings)


def edge_words(name: str, row: WorkedRow, shaping: Shaping, manner: Manner) -> str:
    """Say where a shaping comes in the row, and which edge that is as worn."""
    if shaping.edge == "inside":
        return "within the row"
    begins = spots(row, shaping, manner.hand) < row.before / 2
    return f"as the row {'begins' if begins else 'ends'}: {worn(name, shaping.edge)}"


def worn(name: str, edge: str) -> str:
    """Return which edge it is on the body, from the piece's name and the side as seen from the right side.

    >>> worn("Left Front", "right")
    'the side edge'
    """
    plain = name.lower()
    other = "left" if edge == "right" else "right"
    if "front" in plain and ("left" in plain or "right" in plain):
        towards = edge if "left" in plain else other
        return "the front edge" if towards == "left" else "the side edge"
    if "sleeve" in plain and ("left" in plain or "right" in plain):
        towards = edge if "left" in plain else other
        return "the edge towards the front" if towards == "left" else "the edge towards the back"
    if "back" in plain:
        return f"the wearer’s {edge}"
    return f"the {edge} edge, seen from the right side"


def _later(rows: list[Both], spot: int, side: int) -> str:
    """Say that a bind-off comes a row later here than on the other piece, where it does."""
    here = rows[spot][side]
    before = rows[spot - 1][1 - side] if spot else None
    if here is None or before is None:
        return ""
    ours, theirs = _bound(here), _bound(before)
    if ours and ours == theirs and not _bound(rows[spot][1 - side]):
        return "One row later than on the other piece; that is right."
    return ""


def _bound(row: WorkedRow | None) -> int:
    return sum(one.stitches for one in row.shapings if one.act is Act.BIND_OFF) if row else 0


def _number(both: Both, spot: int, half: float) -> Block:
    row = both[0] or both[1]
    wrong = row is not None and row.side is Side.WRONG
    x = half + (GUTTER_MM - BOX_MM[0]) / 2
    words = Words((x + BOX_MM[0] / 2, 4.2), str(spot + 1), Style(9, Face.HEAD), Align.MIDDLE)
    return Block(BOX_MM[1] + 1.2, (Stroke((box(x, 0.2, *BOX_MM),), Ink(INK, 0.2, SHADE if wrong else None)), words))


def _boxes(rows: list[Both], spot: int, room: float) -> list[Block]:
    """The boxes of a long stretch, across both pages."""
    a_line = int(room // BOX_MM[0]) // 2 * 2
    out = []
    for start in range(0, len(rows), a_line):
        items: list[Stroke | Words] = []
        for step, both in enumerate(rows[start : start + a_line]):
            row = both[0] or both[1]
            wrong = row is not None and row.side is Side.WRONG
            x = step * BOX_MM[0]
            items.append(Stroke((box(x, 0.0, *BOX_MM),), Ink(INK, 0.2, SHADE if wrong else None)))
            items.append(Words((x + 0.8, 2.5), str(spot + start + step + 1), Style(6)))
        out.append(Block(BOX_MM[1] + 0.8, tuple(items)))
    return out


def _spine(block: Block, room: float) -> Block:
    """Return a block with the fold of the book behind it."""
    fold = line((room / 2, 0.0), (room / 2, block.height_mm), Ink(SHADE, 0.3))
    return Block(block.height_mm, (fold, *block.items), block.kept)
