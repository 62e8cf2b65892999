"""The pages of one knitted piece: what it is, its drawing, then every row with a box to tick."""

from __future__ import annotations

from dataclasses import replace

from lastlook.knit import Act, Side, WorkedPiece
from lastlook.quantity import Gauge, Missing, write_length
from lastlook.sheet.draw.knitted import UNNAMED, Knitted, draw_knitted, is_worth_drawing
from lastlook.sheet.knitting.boxes import HIGH_MM, NUMBER, WIDE_MM, boxes
from lastlook.sheet.knitting.gather import RowLine, again_words, gather
from lastlook.sheet.layout.flow import BODY, CHAPTER, SECTION, SMALL, Block, beside, heading, paragraph, rule, stacked
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import INK, SHADE, SOFT, Align, Face, Ink, Item, Stroke, Style, Words, box

COUNT_MM = 30.0
"""Room on the right for the count and the length so far."""
WORDS_MM = 11.0
FEW_ROWS = 12
"""A piece of so few rows does not begin a page of its own."""
SIDES = {Side.RIGHT: "right side", Side.WRONG: "wrong side", Side.ROUND: "round"}


def piece_blocks(
    piece: WorkedPiece, drawn: Knitted | None, times: float, room_mm: float, manner: Manner
) -> list[Block]:
    """Return the blocks of one piece; without a drawing where no gauge is known."""
    out = [_opening(piece, drawn, times, room_mm, manner), rule(room_mm)]
    gauge = drawn.gauge if drawn else None
    structure = ""
    for line in gather(piece.rows):
        fresh = line.rows[0].structure
        if fresh != structure and fresh not in UNNAMED:
            out.append(heading(manner.say(fresh[:1].upper() + fresh[1:]), room_mm, SECTION))
            structure = fresh
        out += _line(line, gauge, room_mm, manner)
    out[-1] = replace(out[-1], kept=True)
    out.append(paragraph(manner.say(_ending(piece)), room_mm, Style(9, Face.BOLD)))
    return out


def _opening(piece: WorkedPiece, drawn: Knitted | None, times: float, room_mm: float, manner: Manner) -> Block:
    picture = draw_knitted(drawn, times, manner) if drawn and is_worth_drawing(drawn, times) else None
    room = room_mm - (picture.width_mm + 5 if picture else 0)
    made = f" (make {piece.make})" if piece.make > 1 else ""
    parts = [heading(piece.name + made, room, CHAPTER)]
    if _begins_open(piece):
        parts.append(paragraph(f"Begins with {piece.rows[0].before or piece.rows[0].after} stitches.", room))
    elif piece.cast_on is not None:
        across = f", {write_length(drawn.gauge.width_mm(piece.cast_on).best, manner.units)} across" if drawn else ""
        parts.append(paragraph(f"Cast on {piece.cast_on} stitches{across}.", room))
    rows = len(piece.rows)
    parts.append(paragraph(f"{rows} rows{_long(drawn.gauge if drawn else None, rows, manner)}.", room))
    if not drawn:
        parts.append(paragraph(manner.say("Not drawn: its gauge is not known yet."), room, SMALL))
    if fresh_page(piece):
        parts.append(paragraph("Tick a box for each row; boxes on tissue are wrong-side rows.", room, SMALL))
    said = stacked(parts)
    fresh = fresh_page(piece)
    if not picture:
        return Block(said.height_mm + 2, said.items, kept=True, new_page=fresh, label=piece.name)
    whole = beside(((0.0, said), (room_mm - picture.width_mm, Block(picture.height_mm, picture.items))))
    return Block(whole.height_mm, whole.items, kept=True, new_page=fresh, label=piece.name)


def _begins_open(piece: WorkedPiece) -> bool:
    """Whether a piece begins on stitches that were there: picked up, or left by another."""
    first = piece.rows[0] if piece.rows else None
    return first is not None and (not piece.cast_on or any(one.act is Act.PICK_UP for one in first.shapings))


def fresh_page(piece: WorkedPiece) -> bool:
    """Whether a piece begins a page: it is no part of another, and long enough."""
    return piece.part_of is None and len(piece.rows) > FEW_ROWS


def _long(gauge: Gauge | None, rows: int, manner: Manner) -> str:
    length = gauge.length_mm(rows) if gauge else None
    if length is None or isinstance(length, Missing):
        return ""
    return f", {write_length(length.best, manner.units)} long"


def _line(line: RowLine, gauge: Gauge | None, room_mm: float, manner: Manner) -> list[Block]:
    """One row: its box, its words, its count. A repeat: what comes again, then its ladder of boxes."""
    count = _count(line, gauge, room_mm, manner)
    if line.like is None:
        said = paragraph(manner.say(line.words), room_mm - WORDS_MM - COUNT_MM, BODY)
        whole = beside(((0.0, _box(line)), (WORDS_MM, said), (0.0, count)))
        return [Block(max(whole.height_mm, HIGH_MM + 1.2), whole.items)]
    said = paragraph(row_words(line), room_mm - COUNT_MM, BODY)
    first, *more = boxes(line.rows, room_mm)
    return [stacked((beside(((0.0, said), (0.0, count))), first)), *more]


def _box(line: RowLine) -> Block:
    row = line.rows[0]
    wrong = row.side is Side.WRONG
    items: tuple[Item, ...] = (
        Stroke((box(0, 0, WIDE_MM, HIGH_MM),), Ink(INK, 0.2, SHADE if wrong else None)),
        Words((0.7, 2.3), str(row.number), NUMBER),
    )
    return Block(HIGH_MM, items)


def _count(line: RowLine, gauge: Gauge | None, room_mm: float, manner: Manner) -> Block:
    row = line.rows[-1]
    changed = any(one.after != one.before for one in line.rows)
    items: list[Item] = []
    if changed or line.like or row.number == 1:
        items.append(Words((room_mm, 3.5), f"{row.after} sts", Style(8.5, Face.BOLD), Align.END))
    long = gauge.length_mm(row.number) if gauge and line.like else None
    if long is not None and not isinstance(long, Missing):
        said = f"{write_length(long.best, manner.units)} from cast on"
        items.append(Words((room_mm - 14, 3.5), said, Style(7, Face.ITALIC, SOFT), Align.END))
    return Block(4.0, tuple(items))


def row_words(line: RowLine) -> str:
    """Return what a line says: the words of its row, or what comes again."""
    return line.words if line.like is None else again_words((line.first, line.last), line.like, line.times)


def _ending(piece: WorkedPiece) -> str:
    counts = f"{piece.end_stitches} stitches" if piece.end_stitches != 1 else "1 stitch"
    return {
        "bound off": f"Bind off the {counts}.",
        "on holder": f"Leave the {counts} on a holder.",
        "drawn up": f"Draw the yarn through the {counts} and pull up.",
        "fastened off": "Fasten off.",
        "joined": f"The {counts} go on in what follows.",
        "open": f"{counts.capitalize()} are on the needle.",
    }[piece.ended.value]
