"""The booklet of one garment's knitting in one size: last look, facts, drawings, every row.

The words of the rows are as they were written for a right-handed knitter; the sheet changes none of them beyond the
trade's two names for one thing. For a left-handed one they stay too, and the pieces come out mirrored.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.geometry import Path
from lastlook.knit import WorkedPiece
from lastlook.outfit import LastLook, Step
from lastlook.quantity import Gauge, Missing
from lastlook.sheet.draw.blocking import draw_blocking
from lastlook.sheet.draw.knitted import Knitted, draw_knitted, is_worth_drawing, size_mm
from lastlook.sheet.knitting import piece_blocks
from lastlook.sheet.knitting.handed import outline_in, piece_in
from lastlook.sheet.layout.flow import (
    BODY,
    CHAPTER,
    SECTION,
    SMALL,
    TITLE,
    Block,
    beside,
    heading,
    pages,
    paragraph,
    space,
)
from lastlook.sheet.layout.frame import Framing
from lastlook.sheet.layout.looks import look_blocks
from lastlook.sheet.layout.page import Sheet
from lastlook.sheet.manner import Hand, Manner
from lastlook.sheet.mark import Align, Drawing, Face, Group, Style, Words, shift

SCALES = (1 / 4, 1 / 5, 1 / 6, 1 / 8, 1 / 10, 1 / 12, 1 / 15, 1 / 20)
OVERVIEW_SHARES = (0.6, 0.5, 0.4, 0.32)
"""How much smaller than beside its rows a piece is drawn where all are shown together."""
LARGEST_MM = (92.0, 100.0)
"""A piece's drawing is at most so wide and so high."""
SIDES = "Left and right are those of each piece as it lies with its right side up."
LEFT_HANDED = (
    "Left hand",
    "Work every row from left to right. The pieces come out mirrored, and their names and drawings here are "
    "already those of what you get: what the leaflet calls the left front is your right front.",
)
FACT_MM = 34.0
MOST_KEPT = 10
"""Up to so many steps of making up stay on one page."""


@dataclass(frozen=True)
class ToKnit:
    """A piece with its outline, None where no gauge is known."""

    piece: WorkedPiece
    outline: Path | None


@dataclass(frozen=True)
class Knitting:
    """All that a booklet says."""

    title: str
    size: str
    """Printed on every page: 'Size 36 for Nell'."""
    pieces: tuple[ToKnit, ...]
    gauge: Gauge | None = None
    facts: tuple[tuple[str, str], ...] = ()
    """What goes under the title, name and sentence: ('Yarn', 'Nine 50 g balls of plain green wool')."""
    looks: tuple[LastLook, ...] = ()
    """Before casting on, printed first; before sewing up, printed with the making up."""
    making_up: tuple[str, ...] = ()
    """The order of work when all pieces are there, a sentence each."""


def booklet(knitting: Knitting, manner: Manner) -> Sheet:
    """Return the booklet, page by page."""
    knitting = _in_hand(knitting, manner)
    framing = Framing(knitting.title, knitting.size, manner)
    room = framing.room_mm[0]
    drawn = [_knitted(one, knitting.gauge) for one in knitting.pieces]
    times = scale_for([one for one in drawn if one])
    blocks = _front(knitting, room, manner)
    blocks += _all_pieces([one for one in drawn if one], room, manner)
    for one, picture in zip(knitting.pieces, drawn, strict=True):
        blocks += piece_blocks(one.piece, picture, times, room, manner)
    blocks += _making_up(knitting, [one for one in drawn if one], room, manner)
    return Sheet(f"{knitting.title}, {knitting.size}", pages(blocks, framing))


def _in_hand(knitting: Knitting, manner: Manner) -> Knitting:
    if manner.hand is Hand.RIGHT:
        return knitting
    pieces = tuple(
        ToKnit(piece_in(one.piece, manner.hand), outline_in(one.outline, manner.hand)) for one in knitting.pieces
    )
    return replace(knitting, pieces=pieces, facts=(*knitting.facts, LEFT_HANDED))


def scale_for(drawn: list[Knitted]) -> float:
    """Return the one scale at which every piece still fits its room."""
    for times in SCALES:
        sizes = [size_mm(one, times) for one in drawn]
        if all(wide <= LARGEST_MM[0] and high <= LARGEST_MM[1] for wide, high in sizes):
            return times
    return SCALES[-1]


def _knitted(one: ToKnit, gauge: Gauge | None) -> Knitted | None:
    if one.outline is None or gauge is None or isinstance(gauge.rows, Missing):
        return None
    return Knitted(one.piece, one.outline, gauge)


def _front(knitting: Knitting, room: float, manner: Manner) -> list[Block]:
    title = paragraph(knitting.title, room, TITLE)
    out = [
        Block(title.height_mm, title.items, label=knitting.title),
        paragraph(knitting.size, room, Style(13, Face.HEAD_ITALIC)),
    ]
    out.append(space(2))
    for look in (one for one in knitting.looks if one.before is Step.CAST_ON):
        out += look_blocks(look, room, manner)
    if knitting.facts:
        out.append(heading("What you need to know", room, SECTION))
    for name, said in knitting.facts:
        name_block = paragraph(manner.say(name), FACT_MM, Style(9, Face.BOLD))
        out.append(beside(((0.0, name_block), (FACT_MM, paragraph(manner.say(said), room - FACT_MM, BODY)))))
    return out


def _all_pieces(drawn: list[Knitted], room: float, manner: Manner) -> list[Block]:
    """Return the pieces side by side at one scale, in one row where that does not make them too small."""
    for share in OVERVIEW_SHARES:
        times = scale_for(drawn) * share
        pictures = [(one.piece.name, draw_knitted(one, times, manner)) for one in drawn if is_worth_drawing(one, times)]
        shelves = _shelves(pictures, room) if pictures else []
        if len(shelves) <= 1:
            break
    return [heading("The pieces", room, SECTION), *shelves] if shelves else []


def _pinned(drawn: list[Knitted], room: float, manner: Manner) -> list[Block]:
    """Return the pieces side by side with the measures to pin them out to."""
    times = scale_for(drawn) * 0.75
    pictures = [(one.piece.name, draw_blocking(one, times, manner)) for one in drawn if is_worth_drawing(one, times)]
    if not pictures:
        return []
    said = paragraph("Ribs are not pinned out. Let the pieces dry before a pin is drawn.", room, SMALL)
    return [heading("Pin out to these measures", room, SECTION), replace(said, kept=True), *_shelves(pictures, room)]


def _shelves(pictures: list[tuple[str, Drawing]], room: float) -> list[Block]:
    """Return drawings side by side with their names under them, feet level, as many on a shelf as it holds."""
    out: list[Block] = []
    shelf: list[tuple[float, Block]] = []
    x = 0.0
    for said, picture in pictures:
        if shelf and x + picture.width_mm > room:
            out.append(_feet_level(shelf))
            shelf, x = [], 0.0
        name = Words((picture.width_mm / 2, picture.height_mm + 3), said, Style(9, Face.HEAD), Align.MIDDLE)
        shelf.append((x, Block(picture.height_mm + 6, (*picture.items, name))))
        x += picture.width_mm + 4
    return [*out, _feet_level(shelf)]


def _feet_level(shelf: list[tuple[float, Block]]) -> Block:
    tall = max(block.height_mm for _, block in shelf)
    lowered = [(x, Block(tall, (Group(block.items, shift(0, tall - block.height_mm)),))) for x, block in shelf]
    return beside(lowered)


def _making_up(knitting: Knitting, drawn: list[Knitted], room: float, manner: Manner) -> list[Block]:
    if not knitting.making_up:
        return []
    title = heading("Making up", room, CHAPTER)
    steps = []
    for number, said in enumerate(knitting.making_up, 1):
        mark = paragraph(str(number), 7, Style(11, Face.HEAD))
        steps.append(beside(((0.0, mark), (8.0, paragraph(manner.say(said), room - 8.0, BODY)))))
    together = len(steps) <= MOST_KEPT
    told = paragraph(SIDES, room, SMALL) if any("left" in said.lower() for said in knitting.making_up) else space(0)
    looks = [
        block for look in knitting.looks if look.before is Step.SEW_UP for block in look_blocks(look, room, manner)
    ]
    return [
        space(4),
        *looks,
        *_pinned(drawn, room, manner),
        title,
        replace(told, kept=True),
        *(replace(step, kept=together) for step in steps[:-1]),
        steps[-1],
    ]
