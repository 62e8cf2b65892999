"""The map: every field small, its tiles numbered, so that the pages find their places on the floor."""

from __future__ import annotations

from lastlook.geometry import Path
from lastlook.sheet.mark import (
    INK,
    SOFT,
    TISSUE,
    Align,
    Face,
    Ink,
    Item,
    Stroke,
    Style,
    Words,
    box,
    path_at,
    scale,
    shift,
    then,
)
from lastlook.sheet.tile.field import Field, Window
from lastlook.sheet.type import shortened

AIR_MM = 7.0
NAME_MM = 6.0
SCALES = (0.14, 0.125, 0.1, 0.08, 0.0667, 0.05, 0.04, 0.03, 0.02)


def map_of(fields: tuple[Field, ...], window: Window, room: tuple[float, float]) -> tuple[tuple[Item, ...], float]:
    """Return the map drawn as large as the room lets it, and its height."""
    for times in SCALES:
        items, height = _drawn(fields, window, room[0], times)
        if height <= room[1]:
            break
    return items, height


def _drawn(fields: tuple[Field, ...], window: Window, wide: float, times: float) -> tuple[tuple[Item, ...], float]:
    items: list[Item] = []
    x = y = shelf = 0.0
    for field in fields:
        width, height = field.columns * window.width * times, field.rows * window.height * times
        if x and x + width > wide:
            x, y, shelf = 0.0, y + shelf + AIR_MM + NAME_MM, 0.0
        items += _field(field, window, times, (x, y + NAME_MM))
        x += max(width, 24.0) + AIR_MM
        shelf = max(shelf, height)
    return tuple(items), y + shelf + NAME_MM


def _field(field: Field, window: Window, times: float, at: tuple[float, float]) -> list[Item]:
    move = then(scale(times), shift(*at))
    tiles: list[Path] = []
    numbers: list[Item] = []
    wide, high = window.width * times, window.height * times
    for tile in field.tiles:
        x, y = at[0] + tile.column * wide, at[1] + tile.row * high
        tiles.append(box(x, y, wide, high))
        style = Style(8, Face.BOLD)
        numbers.append(Words((x + wide / 2, y + high / 2 + 1), str(tile.number), style, Align.MIDDLE))
    lines = tuple(path_at(move, one.way.path(one.piece.cut_line)) for one in field.placed)
    name = Style(8.5, Face.HEAD)
    return [
        Words((at[0], at[1] - 1.5), shortened(field.name, name, max(field.columns * wide, 24.0) + AIR_MM), name),
        Stroke(lines, Ink(INK, 0.25, TISSUE)),
        Stroke(tuple(tiles), Ink(SOFT, 0.15)),
        *numbers,
    ]
