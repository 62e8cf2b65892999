"""A knitted piece to scale: its outline, its edgings, where it is shaped, its counts, and a tape beside it.

The piece lies right side up. Counts stand to the left at the heights where they matter; the tape runs up the right
side from the cast-on edge.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from functools import cached_property

from lastlook.geometry import Path, Point, polygon, polyline
from lastlook.knit import Act, WorkedPiece, WorkedRow
from lastlook.quantity import Gauge, Missing, write_length
from lastlook.sheet.draw.spread_out import COARSE_MM, Extent, Onto, extent, onto, straightened
from lastlook.sheet.draw.tape import BAND_MM, tape
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import (
    INK,
    SHADE,
    SOFT,
    TISSUE,
    Align,
    Drawing,
    Face,
    Group,
    Ink,
    Item,
    Stroke,
    Style,
    Words,
    line,
    shift,
    then,
    turn,
)
from lastlook.sheet.type import width_mm

COUNT_ROOM_MM = 27.0
"""Room for the counts on the left."""
UNNAMED = frozenset({"purl", "knit", "plain", ""})
"""Structures of single rows that are no fabric of their own."""
SMALLEST_MM = 7.0
"""A piece drawn smaller than this, either way, is not drawn."""
LABEL_STEP_MM = 3.4
"""Least distance between two labels."""
COUNT = Style(6.5, Face.BOLD)
PLAIN = Style(6.5)


@dataclass(frozen=True)
class Knitted:
    """A worked piece with the outline that its gauge gives it."""

    piece: WorkedPiece
    outline: Path
    gauge: Gauge

    def height_mm(self, row: int) -> float:
        """Return how high the piece is after the row of that number; a part goes on counting where it parted."""
        before = self.piece.rows[0].number - 1 if self.piece.rows else 0
        length = self.gauge.length_mm(max(0, row - before))
        return 0.0 if isinstance(length, Missing) else length.best

    @cached_property
    def room(self) -> Extent:
        """Return the rectangle round the piece."""
        return extent((self.outline,))

    @cached_property
    def _lines(self) -> tuple[tuple[Point, Point], ...]:
        return tuple(itertools.pairwise(straightened(self.outline).points(COARSE_MM)))

    def ends(self, height_mm: float) -> tuple[float, float] | None:
        """Return the left and right end of the fabric at a height."""
        y = min(max(self.room.bottom + height_mm, self.room.bottom + 0.05), self.room.top - 0.05)
        spots = [a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1]) for a, b in self._lines if (a[1] > y) != (b[1] > y)]
        return (min(spots), max(spots)) if len(spots) > 1 else None


def size_mm(knitted: Knitted, times: float) -> tuple[float, float]:
    """Return the width and height of a piece's drawing at a scale."""
    room = knitted.room
    return COUNT_ROOM_MM + room.width * times + 5 + BAND_MM, room.height * times + 10


def is_worth_drawing(knitted: Knitted, times: float) -> bool:
    """Whether a piece is large enough at a scale to be told from its labels."""
    room = knitted.room
    return min(room.width, room.height) * times >= SMALLEST_MM


def draw_knitted(knitted: Knitted, times: float, manner: Manner) -> Drawing:
    """Return the drawing of one piece at a scale."""
    room = knitted.room
    way = onto(room, times, COUNT_ROOM_MM, 4.0)
    items = (
        Stroke((way.path(straightened(knitted.outline)),), Ink(INK, 0.35, TISSUE)),
        *_edgings(knitted, room, way),
        *_shapings(knitted, room, way),
        *_counts(knitted, room, way, manner),
        *_tape(knitted, room, way, times, manner),
    )
    wide, high = size_mm(knitted, times)
    return Drawing(knitted.piece.name, _description(knitted, room, manner), wide, high, tuple(items))


def _edgings(knitted: Knitted, room: Extent, way: Onto) -> list[Item]:
    """Ribs as upright lines, every other structure that is not the main one shaded."""
    rows = knitted.piece.rows
    names = [row.structure for row in rows]
    main = max(dict.fromkeys(names), key=names.count) if names else ""
    items: list[Item] = []
    for name, stretch in itertools.groupby(rows, key=lambda row: row.structure):
        some = list(stretch)
        if name == main or name in UNNAMED:
            continue
        low, high = knitted.height_mm(some[0].number - 1), knitted.height_mm(some[-1].number)
        ends = knitted.ends((low + high) / 2)
        if not ends:
            continue
        corners = [(ends[0], room.bottom + low), (ends[1], room.bottom + low)]
        corners += [(ends[1], room.bottom + high), (ends[0], room.bottom + high)]
        drawn = [way.point(corner) for corner in corners]
        items.append(Stroke((polygon(drawn),), Ink(INK, 0.15, SHADE)))
        if "rib" in name:
            items.append(Stroke(_ribs(drawn), Ink(SOFT, 0.15)))
    return items


def _ribs(corners: list[Point]) -> tuple[Path, ...]:
    left, right = corners[0][0], corners[1][0]
    bottom, top = corners[0][1], corners[2][1]
    count = max(2, round((right - left) / 1.1))
    xs = [left + (right - left) * number / count for number in range(1, count)]
    return tuple(polyline(((x, bottom), (x, top))) for x in xs)


def _shapings(knitted: Knitted, room: Extent, way: Onto) -> list[Item]:
    """A short stroke inside the edge for every shaping row, sloping as the decrease leans."""
    marks: list[Path] = []
    steps: list[Path] = []
    for row in knitted.piece.rows:
        for shaping in row.shapings:
            spot = _spot(knitted, row, shaping.edge, shaping.inset)
            if spot is None:
                continue
            x, y = way.point((spot, room.bottom + knitted.height_mm(row.number)))
            if shaping.act in (Act.BIND_OFF, Act.CAST_ON, Act.HOLD):
                steps.append(polyline(((x - 0.8, y), (x + 0.8, y))))
                continue
            slope = {"left": -0.5, "right": 0.5}.get(shaping.lean or "", 0.0)
            marks.append(polyline(((x - slope, y + 0.55), (x + slope, y - 0.55))))
    strokes: list[Item] = [Stroke(tuple(marks), Ink(INK, 0.3))] if marks else []
    return [*strokes, *([Stroke(tuple(steps), Ink(INK, 0.7))] if steps else [])]


def _spot(knitted: Knitted, row: WorkedRow, edge: str, inset: int) -> float | None:
    ends = knitted.ends(knitted.height_mm(row.number))
    if ends is None:
        return None
    away = knitted.gauge.width_mm(inset + 1).best
    if edge == "left":
        return ends[0] + away
    return ends[1] - away if edge == "right" else (ends[0] + ends[1]) / 2


def key_rows(piece: WorkedPiece) -> list[tuple[int, int, str]]:
    """Return the rows whose counts are worth a label: (row, stitches, what is there), from the cast-on up."""
    names = {row: name for name, row in piece.landmarks}
    out = [(0, piece.cast_on, "cast on")] if piece.cast_on is not None else []
    rows = piece.rows
    for spot, row in enumerate(rows[:-1]):
        ahead = rows[spot + 1].after - rows[spot + 1].before
        named = row.number in names
        if named or (ahead and not _shaped_lately(rows, spot)) or (not ahead and _ends_here(rows, spot)):
            out.append((row.number, row.after, names.get(row.number, "")))
    if rows:
        if out and out[-1][1] == piece.end_stitches and not out[-1][2]:
            out.pop()
        out.append((rows[-1].number, piece.end_stitches, piece.ended.value))
    return out


def _shaped_lately(rows: tuple[WorkedRow, ...], spot: int) -> bool:
    return any(row.after != row.before for row in rows[max(0, spot - 11) : spot + 1])


def _ends_here(rows: tuple[WorkedRow, ...], spot: int) -> bool:
    """Whether this row is the last shaping for a dozen rows."""
    here = rows[spot]
    return here.after != here.before and all(row.after == row.before for row in rows[spot + 1 : spot + 13])


def _counts(knitted: Knitted, room: Extent, way: Onto, manner: Manner) -> list[Item]:
    items: list[Item] = []
    last_y = float("inf")
    labels = key_rows(knitted.piece)
    for spot, (row, stitches, what) in enumerate(labels):
        height = knitted.height_mm(row)
        ends = knitted.ends(height)
        x, y = way.point((ends[0] if ends else room.left, room.bottom + height))
        if last_y - y < LABEL_STEP_MM and spot < len(labels) - 1:
            continue
        y_words = min(y, last_y - LABEL_STEP_MM)
        last_y = y_words
        count = f"{stitches} sts"
        items.append(Words((0, y_words + 0.9), count, COUNT))
        said = manner.say(what or f"row {row}")
        items.append(Words((width_mm(count, COUNT) + 1.2, y_words + 0.9), said, PLAIN))
        start = width_mm(count, COUNT) + width_mm(said, PLAIN) + 2.2
        items.append(line((min(start, x), y_words), (x, y), Ink(SOFT, 0.12)))
    return items


def _tape(knitted: Knitted, room: Extent, way: Onto, times: float, manner: Manner) -> list[Item]:
    x, foot = way.point((room.right, room.bottom))
    upright = then(turn(-90), shift(x + 4 + BAND_MM, foot))
    wide = knitted.gauge.width_mm(knitted.piece.cast_on or 0).best
    across = f"{write_length(wide, manner.units)} across"
    middle = (way.point((room.left, 0))[0] + x) / 2
    return [
        Group((tape(room.height, manner.units, times),), upright),
        Words((middle, foot + 4.2), across, PLAIN, Align.MIDDLE),
    ]


def _description(knitted: Knitted, room: Extent, manner: Manner) -> str:
    parts = [f"{stitches} stitches at {what or f'row {row}'}" for row, stitches, what in key_rows(knitted.piece)]
    long = write_length(room.height, manner.units)
    wide = write_length(room.width, manner.units)
    return manner.say(f"{knitted.piece.name}, {wide} wide and {long} long: {', '.join(parts)}.")
