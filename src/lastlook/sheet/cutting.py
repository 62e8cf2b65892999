"""The cutting sheet: what is left over, the last look, the table, the measures, the order of cuts.

Each piece is laid by its grainline: how far along the tape, and how far from the selvedge, either end lies. Where
both ends are equally far from the selvedge the piece is on grain.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.lay import BOTH, Fold, LeftOver, rest_in_words, worth_keeping
from lastlook.lay import headline as told
from lastlook.outfit import LastLook
from lastlook.quantity import write_length
from lastlook.sheet.draw.table import Laid, Table, draw_table
from lastlook.sheet.layout.flow import (
    BODY,
    SECTION,
    SMALL,
    TITLE,
    Block,
    beside,
    heading,
    pages,
    paragraph,
    rule,
    stacked,
)
from lastlook.sheet.layout.frame import Framing
from lastlook.sheet.layout.looks import look_blocks
from lastlook.sheet.layout.page import Sheet
from lastlook.sheet.manner import Hand, Manner
from lastlook.sheet.mark import INK, Face, Ink, Stroke, Style, Words, box

MOST_KEPT = 14
"""Up to so many cuts stay on one page."""
LOWEST_MM = {True: 70.0, False: 115.0}
"""The table is drawn as high as keeps everything on one page, but never lower than this, on lying and upright paper."""
HIGHEST_MM = 150.0
"""Where it has a page of its own, it is drawn at most so high."""
ROUND_MM = 22.0
"""Room that the tapes and the words above the table take."""
WIDE = 1.35
"""From this length over depth on, the paper lies on its side."""


@dataclass(frozen=True)
class Cutting:
    """All that a cutting sheet says."""

    title: str
    size: str
    cloth_name: str
    table: Table
    is_proven: bool
    looks: tuple[LastLook, ...] = ()


def cutting(sheet: Cutting, manner: Manner) -> Sheet:
    """Return the cutting sheet, page by page; the paper lies on its side where the cloth is long."""
    lying = sheet.table.length_mm > WIDE * sheet.table.deep_mm
    framing = Framing(f"{sheet.title}: cutting {sheet.cloth_name}", sheet.size, manner, lying)
    room, high = framing.room_mm
    above = [heading(headline(sheet, manner), room, TITLE)]
    for look in sheet.looks:
        above += look_blocks(look, room, manner)
    below = [*_measures(sheet, room, manner), *_rests(worth_keeping(sheet.table.left_over), room, manner)]
    clear = high - sum(block.height_mm for block in (*above, *below)) - ROUND_MM
    tallest = clear if clear >= LOWEST_MM[lying] else HIGHEST_MM
    return Sheet(framing.title, pages([*above, *_table(sheet, room, tallest, manner), *below], framing))


def headline(sheet: Cutting, manner: Manner) -> str:
    """Say what is left over, in words; or that the lay is not proven."""
    if not sheet.is_proven:
        return "Don’t cut by this yet: the lay is not proven."
    return told(sheet.table.left_over, manner.units)


def in_words(rest: LeftOver, manner: Manner) -> str:
    """Return a rest in words: 'a strip 12 × 140 cm'."""
    return rest_in_words(rest, manner.units)


def use_of(rest: LeftOver) -> str:
    """Say what a rest of that size is good for (common practice, no source)."""
    short, long = sorted((rest.width_mm, rest.length_mm))
    if short >= 300 and long >= 300:
        return "enough for bias strips, a pocket, or a test of wash and iron"
    if short >= 180 and long >= 200:
        return "enough for a patch pocket, or a test of wash and iron"
    if short >= 70 and long >= 700:
        return "enough for a belt, or for facing a band"
    if short >= 30 and long >= 300:
        return "enough for loops, a binding, a stay"
    return "keep it for a mend"


def _table(sheet: Cutting, room: float, tallest: float, manner: Manner) -> list[Block]:
    table = sheet.table
    times = min((room - 15) / table.length_mm, tallest / table.deep_mm)
    drawing = draw_table(table, times, manner)
    stand = "on your left" if manner.hand is Hand.RIGHT else "on your right"
    side = (
        "Folded right sides together, the fold away from you"
        if table.cloth.fold is Fold.LENGTHWISE
        else "The cloth lies open, right side up"
    )
    if table.cloth.fold is Fold.LENGTHWISE and manner.hand is Hand.LEFT:
        side = "Folded right sides together, the fold before you, the selvedges away from you"
    said = f"As you stand at the table; the tape begins {stand}. {side}. Drawn 1 : {1 / times:.1f}."
    return [stacked((paragraph(said, room, SMALL), Block(drawing.height_mm, drawing.items)))]


_COLUMNS = (0.0, 0.065, 0.30, 0.44, 0.58, 0.72, 0.86, 1.0)
"""Where the columns of the measures begin, as shares of the room."""
_HEADS = ("", "piece", "a: along the tape", "a: from selvedge", "b: along the tape", "b: from selvedge", "")


def _measures(sheet: Cutting, room: float, manner: Manner) -> list[Block]:
    style = Style(8, Face.ITALIC)
    heads = beside(_cells(_HEADS, (style,) * len(_HEADS), room))
    rows = [_measure(number, laid, sheet, room, manner) for number, laid in enumerate(sheet.table.laid, 1)]
    out = [heading("Lay by tape, then cut in this order", room, SECTION), replace(heads, kept=True), *rows]
    return [replace(one, kept=len(rows) <= MOST_KEPT) for one in out] + [rule(room)]


def _cells(said: tuple[str, ...], styles: tuple[Style, ...], room: float) -> list[tuple[float, Block]]:
    places = zip(_COLUMNS, _COLUMNS[1:], said, styles, strict=False)
    return [(x * room, paragraph(text, (end - x) * room - 2, style)) for x, end, text, style in places]


def _measure(number: int, laid: Laid, sheet: Cutting, room: float, manner: Manner) -> Block:
    cells = ["", laid.name]
    for end in laid.grain_ends:
        away = sheet.table.from_selvedge(end, manner.hand)
        cells += [write_length(end[0], manner.units), write_length(away, manner.units)]
    cells.append(_how(laid, sheet.table))
    styles = (BODY, Style(9, Face.BOLD), BODY, BODY, BODY, BODY, SMALL)
    tick = (Stroke((box(0, 0.3, 4.0, 4.0),), Ink(INK, 0.25)), Words((6.0, 3.7), str(number), Style(10, Face.HEAD)))
    return beside(((0.0, Block(5.0, tick)), *_cells(tuple(cells), styles, room)))


def _how(laid: Laid, table: Table) -> str:
    put = laid.placement
    words = []
    if laid.fold:
        words.append("on the fold" if table.cloth.fold is not Fold.NONE else "opened out")
    elif put.layer == BOTH:
        words.append("both layers")
    elif table.cloth.fold is not Fold.NONE:
        words.append("one layer only: open the cloth for this cut")
    if put.mirrored:
        words.append("paper face down")
    return ", ".join(words)


def _rests(left_over: tuple[LeftOver, ...], room: float, manner: Manner) -> list[Block]:
    if not left_over:
        return []
    out = [heading("What stays", room, SECTION)]
    for rest in left_over:
        said = in_words(rest, manner)
        out.append(paragraph(f"{said[:1].upper()}{said[1:]}: {use_of(rest)}.", room))
    return out
