"""Which tile of which page holds what.

A *window* is the part of a page that shows the pattern; a *field* is a rectangle of tiles that together show one
large piece, or a single tile that several small ones share. Tiles that nothing lies on are left out.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from lastlook.geometry import Point
from lastlook.paper import PaperPiece
from lastlook.sheet.draw.paper import room_of, true_size
from lastlook.sheet.draw.spread_out import Extent, Onto, onto
from lastlook.sheet.layout.page import Paper
from lastlook.sheet.mark import Group

SIDE_MM = 8.0
TOP_MM = 9.0
LAP_MM = 8.0
"""How far a tile shows on beyond its window to the right and downwards, for the next one to lie on."""
FOOT_MM = 26.0
AIR_MM = 4.0
"""Least room round a piece in its field."""
SHARES = (0.5, 0.25, 0.75, 0.0, 1.0)
"""Where in the spare room of its field a piece is tried, the middle first."""


@dataclass(frozen=True)
class Window:
    """What one page shows, in mm."""

    width: float
    height: float


def window_of(paper: Paper) -> Window:
    """Return the window for a paper, in whole millimetres.

    >>> window_of(Paper.A4)
    Window(width=186, height=262)
    """
    wide = math.floor(paper.width_mm - 2 * SIDE_MM - LAP_MM)
    return Window(wide, math.floor(paper.height_mm - TOP_MM - FOOT_MM))


@dataclass(frozen=True)
class Placed:
    """A piece in its field."""

    piece: PaperPiece
    way: Onto


@dataclass(frozen=True)
class Tile:
    """One page of a field: its number in it, from 1, and where it lies."""

    number: int
    column: int
    row: int


@dataclass(frozen=True)
class Field:
    """A rectangle of tiles."""

    name: str
    columns: int
    rows: int
    placed: tuple[Placed, ...]
    tiles: tuple[Tile, ...]

    def tile_at(self, column: int, row: int) -> Tile | None:
        """Return the tile in that column and row, None where none is printed."""
        return next((tile for tile in self.tiles if (tile.column, tile.row) == (column, row)), None)

    def tile_name(self, tile: Tile) -> str:
        """Return what a tile is called: 'Front 3', or the name alone if it is the only one."""
        return f"{self.name} {tile.number}" if len(self.tiles) > 1 else self.name

    def items(self, said: tuple[str, ...], window: Window) -> tuple[Group, ...]:
        """Return the pieces where they lie in the field."""
        joins = (window.width, window.height)
        return tuple(true_size(one.piece, said, one.way, joins) for one in self.placed)


def fields(pieces: tuple[PaperPiece, ...], window: Window) -> tuple[Field, ...]:
    """Return the fields of a pattern: each large piece by itself, small ones together."""
    large: list[tuple[PaperPiece, int, int, float]] = []
    small: list[tuple[PaperPiece, int, int, float]] = []
    for piece in pieces:
        columns, rows, turn_deg = _grid(room_of(piece), window)
        (small if columns * rows == 1 else large).append((piece, columns, rows, turn_deg))
    out = [_large(piece, columns, rows, turn_deg, window) for piece, columns, rows, turn_deg in large]
    return (*out, *_shelves([(piece, turn_deg) for piece, _, _, turn_deg in small], window))


def _grid(room: Extent, window: Window) -> tuple[int, int, float]:
    """Return columns, rows and turn of the smallest field for a rectangle; upright wherever that costs nothing."""

    def count(wide: float, high: float) -> tuple[int, int]:
        return math.ceil((wide + 2 * AIR_MM) / window.width), math.ceil((high + 2 * AIR_MM) / window.height)

    upright, lying = count(room.width, room.height), count(room.height, room.width)
    if lying[0] * lying[1] < upright[0] * upright[1]:
        return (*lying, 90.0)
    return (*upright, 0.0)


def _large(piece: PaperPiece, columns: int, rows: int, turn_deg: float, window: Window) -> Field:
    """Return a piece's own field, the piece lying in it where the fewest tiles have to be printed."""
    room = room_of(piece)
    wide, high = (room.height, room.width) if turn_deg else (room.width, room.height)
    spare = (columns * window.width - wide - 2 * AIR_MM, rows * window.height - high - 2 * AIR_MM)
    spots = [(column, row) for row in range(rows) for column in range(columns)]
    best: tuple[Onto, list[tuple[int, int]]] | None = None
    for across, down in itertools.product(SHARES, SHARES):
        way = onto(room, 1.0, AIR_MM + spare[0] * across, AIR_MM + spare[1] * down, turn_deg)
        outline = [way.point(point) for point in piece.cut_line.points(0.2)]
        touched = _touched(outline, window)
        shown = [spot for spot in spots if spot in touched or _is_inside(outline, _middle(spot, window))]
        if best is None or len(shown) < len(best[1]):
            best = (way, shown)
    assert best is not None
    tiles = tuple(Tile(number, *spot) for number, spot in enumerate(best[1], 1))
    return Field(piece.name, columns, rows, (Placed(piece, best[0]),), tiles)


def _shelves(pieces: list[tuple[PaperPiece, float]], window: Window) -> list[Field]:
    """Set small pieces side by side on shelves, the tallest first, a new page when one is full."""
    sizes = []
    for piece, turn_deg in pieces:
        room = room_of(piece)
        wide, high = (room.height, room.width) if turn_deg else (room.width, room.height)
        sizes.append((high, wide, piece, room, turn_deg))
    sizes.sort(key=lambda one: (-one[0], -one[1], one[2].name))
    out: list[list[Placed]] = []
    x = y = shelf = math.inf
    for high, wide, piece, room, turn_deg in sizes:
        if x + wide + AIR_MM > window.width:
            x, y = AIR_MM, y + shelf + AIR_MM
            shelf = high
        if y + high + AIR_MM > window.height:
            out.append([])
            x, y, shelf = AIR_MM, AIR_MM, high
        out[-1].append(Placed(piece, onto(room, 1.0, x, y, turn_deg)))
        x += wide + AIR_MM
    return [_shared(group) for group in out]


def _shared(placed: list[Placed]) -> Field:
    return Field(", ".join(one.piece.name for one in placed), 1, 1, tuple(placed), (Tile(1, 0, 0),))


def _touched(outline: list[Point], window: Window) -> set[tuple[int, int]]:
    """Return the tiles that an outline runs through: each of its lines is parted at every join that it crosses."""
    out: set[tuple[int, int]] = set()
    for (ax, ay), (bx, by) in itertools.pairwise(outline):
        shares = sorted({0.0, 1.0, *_crossings(ax, bx, window.width), *_crossings(ay, by, window.height)})
        for share in (0.0, *((a + b) / 2 for a, b in itertools.pairwise(shares)), 1.0):
            x, y = ax + (bx - ax) * share, ay + (by - ay) * share
            out.add((math.floor(x / window.width), math.floor(y / window.height)))
    return out


def _crossings(a: float, b: float, step: float) -> list[float]:
    """Return the shares of the way from a to b at which a multiple of the step is passed."""
    low, high = sorted((a, b))
    if high - low < 1e-9:
        return []
    joins = range(math.ceil(low / step), math.floor(high / step) + 1)
    return [(join * step - a) / (b - a) for join in joins]


def _middle(spot: tuple[int, int], window: Window) -> Point:
    return (spot[0] + 0.5) * window.width, (spot[1] + 0.5) * window.height


def _is_inside(outline: list[Point], point: Point) -> bool:
    """Count how often a ray to the right crosses the outline."""
    x, y = point
    inside = False
    for (ax, ay), (bx, by) in itertools.pairwise(outline):
        if (ay > y) != (by > y) and x < ax + (y - ay) / (by - ay) * (bx - ax):
            inside = not inside
    return inside
