"""One tile's page: its window on the field, its neighbours by name, and the tapes that cross each join.

A tape lies half on either tile. When the joined paper shows an unbroken tape of the length printed on it, the
distance is true; when its long sides run straight on, nothing has slipped.
"""

from __future__ import annotations

from lastlook.geometry import Path, polyline
from lastlook.quantity import MM_PER_INCH, Units
from lastlook.sheet.draw.tape import tape
from lastlook.sheet.layout.page import Page
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import (
    INK,
    PENCIL,
    SOFT,
    Align,
    Face,
    Group,
    Ink,
    Item,
    Stroke,
    Style,
    Words,
    box,
    line,
    shift,
    then,
    turn,
)
from lastlook.sheet.tile.field import LAP_MM, SIDE_MM, TOP_MM, Field, Tile, Window
from lastlook.sheet.type import shortened

CROSSING = {Units.CM: (60.0, 1.0, "60 mm"), Units.INCHES: (2.5 * MM_PER_INCH, MM_PER_INCH / 8, "2½ in")}
"""Length of the tape across a join, its finest mark, and what is printed on it."""
HIGH_MM = 5.0
NOTE = Style(7.0, Face.ITALIC)
SPOTS = (0.25, 0.75)
"""Where along a join the tapes lie, as shares of the tile's side."""


def join_tapes(field: Field, window: Window, units: Units) -> tuple[Item, ...]:
    """Return the tapes over every join of a field, in the field's own millimetres."""
    items: list[Item] = []
    for tile in field.tiles:
        left, top = tile.column * window.width, tile.row * window.height
        if field.tile_at(tile.column + 1, tile.row):
            x = left + window.width
            items += [_crossing(units, shift(x, top + window.height * spot)) for spot in SPOTS]
        if field.tile_at(tile.column, tile.row + 1):
            y = top + window.height
            items += [_crossing(units, then(turn(90), shift(left + window.width * spot, y))) for spot in SPOTS]
    return tuple(items)


def _crossing(units: Units, matrix: tuple[float, float, float, float, float, float]) -> Group:
    """Return one tape with its middle at the origin, lying to the right."""
    long, fine, said = CROSSING[units]
    marks: list[Path] = [box(-long / 2, -HIGH_MM / 2, long, HIGH_MM)]
    steps = round(long / fine)
    for step in range(1, steps):
        x = -long / 2 + step * fine
        tall = 2.6 if step % (10 if units is Units.CM else 8) == 0 else 1.8 if step % 5 == 0 else 1.1
        marks.append(polyline(((x, HIGH_MM / 2), (x, HIGH_MM / 2 - tall))))
    style = Style(6, Face.BOLD)
    words = [Words((x, -0.4), said, style, Align.MIDDLE) for x in (-long / 4, long / 4)]
    return Group((Stroke(tuple(marks), Ink(INK, 0.12)), *words), matrix)


def tile_page(field: Field, tile: Tile, drawn: Group, window: Window, saying: tuple[str, str, Manner]) -> Page:
    """Return one tile as a page; `drawn` is the field, `saying` its foot: title, page of pages, manner."""
    title, place, manner = saying
    paper = manner.paper
    shown = (0.0, 0.0, window.width + LAP_MM, window.height + LAP_MM)
    moved = Group((drawn,), shift(-tile.column * window.width, -tile.row * window.height))
    name = field.tile_name(tile)
    items = (
        Group((Group((moved,), clip=shown), *_edges(field, tile, window)), shift(SIDE_MM, TOP_MM)),
        *_foot(name, title, place, manner),
    )
    return Page(paper.width_mm, paper.height_mm, items, name)


def _edges(field: Field, tile: Tile, window: Window) -> list[Item]:
    """Return the four sides: cut and laid over to the left and above, laid under to the right and below."""
    wide, high = window.width, window.height
    items: list[Item] = []
    cut, rest, edge = Ink(PENCIL, 0.3, dash=(3, 1.5)), Ink(SOFT, 0.2, dash=(0.6, 1.2)), Ink(SOFT, 0.1)
    sides = (
        ((-1, 0), (0.0, 0.0), (0.0, high), (2.8, high / 2), -90.0, "cut here and lay over {}"),
        ((0, -1), (0.0, 0.0), (wide, 0.0), (wide / 2, 3.0), 0.0, "cut here and lay over {}"),
        ((1, 0), (wide, 0.0), (wide, high), (wide - 1.0, high / 2), -90.0, "{} is laid up to this line"),
        ((0, 1), (0.0, high), (wide, high), (wide / 2, high - 1.0), 0.0, "{} is laid up to this line"),
    )
    for (right, down), start, end, spot, lean, words in sides:
        other = field.tile_at(tile.column + right, tile.row + down)
        over = right + down < 0
        items.append(line(start, end, edge if other is None else cut if over else rest))
        if other:
            items.append(Words(spot, words.format(field.tile_name(other)), NOTE, Align.MIDDLE, lean))
    return items


def _foot(name: str, title: str, place: str, manner: Manner) -> tuple[Item, ...]:
    width, y = manner.paper.width_mm, manner.paper.height_mm - 8.0
    inches = manner.units is Units.INCHES
    true = tape(4 * MM_PER_INCH if inches else 100.0, manner.units, 1.0, shift(width - SIDE_MM - 103.0, y + 0.5))
    room = width - 2 * SIDE_MM - 112
    return (
        Words((SIDE_MM, y - 3.4), shortened(name, Style(13, Face.HEAD), room), Style(13, Face.HEAD)),
        Words((SIDE_MM, y + 0.5), shortened(f"{title} · {place}", Style(7), room), Style(7, colour=SOFT)),
        true,
    )
