"""The record: what was done, so that it can be done again; with room for a thread, a snip, and the maker's own hand.

A figure that was entered is printed; one that was not is a line to write on. Nothing is filled in from the plan.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.quantity import write_length, write_weight
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
    space,
    stacked,
)
from lastlook.sheet.layout.frame import Framing
from lastlook.sheet.layout.page import Sheet
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import SOFT, Face, Ink, Item, Stroke, Style, box, line

SNIP_MM = (46.0, 34.0)
"""Room to pin a thread or a snip."""
LINES = 9
LINE_MM = 8.0
BOLD = Style(9, Face.BOLD)
COLUMNS = (0.0, 0.26, 0.39, 0.52, 0.65, 0.79, 0.91, 1.0)
HEADS = ("", "rows planned", "rows made", "stitches cast on", "width", "length", "weight")


@dataclass(frozen=True)
class Material:
    """One lot or cloth, with what is known of it in a sentence."""

    name: str
    say: str
    scrap: str
    """What is pinned in: 'a thread', 'a snip'."""


@dataclass(frozen=True)
class Came:
    """One piece: what was planned, and what came off; None where nobody entered it."""

    name: str
    rows_planned: int | None = None
    rows_made: int | None = None
    cast_on: int | None = None
    width_mm: float | None = None
    length_mm: float | None = None
    grams: float | None = None


@dataclass(frozen=True)
class Decided:
    """What was decided for one garment, in sentences."""

    garment: str
    sentences: tuple[str, ...]


@dataclass(frozen=True)
class Record:
    """What is kept of one outfit."""

    title: str
    whose: str
    materials: tuple[Material, ...]
    pieces: tuple[Came, ...]
    decided: tuple[Decided, ...] = ()
    again: str = ""
    """What the maker would do again, in her own words."""


def record(kept: Record, manner: Manner) -> Sheet:
    """Return the record, page by page."""
    framing = Framing(f"{kept.title}: the record", kept.whose, manner)
    room = framing.room_mm[0]
    blocks = [heading(kept.title, room, TITLE)]
    if kept.materials:
        blocks.append(heading("What it was made of", room, SECTION))
    blocks += [_material(one, room, manner) for one in kept.materials]
    for one in kept.decided:
        blocks.append(heading(f"{one.garment.replace('-', ' ').capitalize()}: what was decided", room, SECTION))
        blocks += [paragraph(manner.say(sentence), room, BODY) for sentence in one.sentences]
    if kept.pieces:
        blocks.append(heading("What came off", room, SECTION))
        heads = [paragraph(manner.say(said), _wide(spot, room), SMALL) for spot, said in enumerate(HEADS)]
        blocks.append(_cells(heads, room))
    blocks += [_piece(one, room, manner) for one in kept.pieces]
    blocks += _own_hand(kept.again, room)
    return Sheet(framing.title, pages(blocks, framing))


def _material(one: Material, room: float, manner: Manner) -> Block:
    wide, high = SNIP_MM
    frame = Stroke((box(0, 0, wide, high),), Ink(SOFT, 0.25, dash=(1.6, 1.1)))
    inside = paragraph(f"pin {one.scrap} here", wide - 4, Style(7, Face.ITALIC, SOFT))
    said = stacked((paragraph(one.name, room - wide - 6, BOLD), paragraph(manner.say(one.say), room - wide - 6, BODY)))
    return beside(((0.0, Block(high + 3, (frame,))), (2.0, inside), (wide + 6, said)))


def _wide(spot: int, room: float) -> float:
    return (COLUMNS[spot + 1] - COLUMNS[spot]) * room - 2


def _cells(cells: list[Block], room: float) -> Block:
    return beside((COLUMNS[spot] * room, cell) for spot, cell in enumerate(cells))


def _piece(one: Came, room: float, manner: Manner) -> Block:
    figures = (
        one.rows_planned and str(one.rows_planned),
        one.rows_made and str(one.rows_made),
        one.cast_on and str(one.cast_on),
        one.width_mm and write_length(one.width_mm, manner.units),
        one.length_mm and write_length(one.length_mm, manner.units),
        one.grams and write_weight(one.grams),
    )
    cells = [paragraph(one.name, _wide(0, room), BOLD)]
    for spot, figure in enumerate(figures, 1):
        cells.append(paragraph(str(figure), _wide(spot, room)) if figure else _line(_wide(spot, room)))
    whole = _cells(cells, room)
    return Block(max(whole.height_mm, 7.0), whole.items)


def _line(wide: float) -> Block:
    return Block(5.0, (line((0, 4.2), (wide, 4.2), Ink(SOFT, 0.2)),))


def _own_hand(again: str, room: float) -> list[Block]:
    """Return what she wrote, and lines to write on."""
    told = [paragraph(text, room, BODY) for text in again.splitlines() if text.strip()]
    lines: tuple[Item, ...] = tuple(
        line((0, LINE_MM * number), (room, LINE_MM * number), Ink(SOFT, 0.2)) for number in range(1, LINES + 1)
    )
    return [
        space(3),
        heading("What I would do again, and what not", room, SECTION),
        *told,
        Block(LINE_MM * LINES + 2, lines),
    ]
