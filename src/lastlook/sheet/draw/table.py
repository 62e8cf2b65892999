"""The cutting table seen from the cutter's side: the cloth, everything on it, a tape along the selvedge.

A right-handed cutter stands at the selvedge y = 0 with the cloth's beginning on her left; a left-handed one stands
at the other side of the same table, so the picture is turned half round and nothing is mirrored. A *twin* is what
the other layer of a fold gives: the other half of a piece on the fold, or the other of a pair.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from lastlook.geometry import Path, Point, at, crossings, distance_mm, polygon, polyline
from lastlook.lay import BOTH, Cloth, Fold, LeftOver, Outline, Placement
from lastlook.quantity import write_length
from lastlook.sheet.draw.spread_out import Extent, extent_of
from lastlook.sheet.draw.tape import BAND_MM, tape
from lastlook.sheet.manner import Hand, Manner
from lastlook.sheet.mark import (
    INK,
    PAPER,
    PENCIL,
    SHADE,
    SOFT,
    TISSUE,
    Align,
    Drawing,
    Face,
    Group,
    Ink,
    Item,
    Matrix,
    Stroke,
    Style,
    Words,
    arrow,
    box,
    circle,
    point_at,
    scale,
    shift,
    then,
    turn,
)
from lastlook.sheet.type import MM_PER_PT, shortened, width_mm

NAME = Style(8, Face.HEAD)
NOTE = Style(6.5, Face.ITALIC)
NUMBER = Style(8, Face.BOLD, PAPER)
SLIM_MM = 15.0
"""A piece drawn lower than this has its label on one line."""


@dataclass(frozen=True)
class Laid:
    """One cut of the lay: a piece, where it lies, its grainline and its fold in its own millimetres."""

    name: str
    placement: Placement
    outline: Outline
    grain: tuple[Point, Point]
    fold: tuple[Point, Point] | None = None

    @property
    def matrix(self) -> Matrix:
        """Return the way from the piece's own millimetres onto the cloth: mirrored, turned, moved."""
        put = self.placement
        mirror = scale(1.0, -1.0 if put.mirrored else 1.0)
        return then(mirror, turn(put.angle_deg), shift(put.x, put.y))

    def on_cloth(self, points: Outline) -> tuple[Point, ...]:
        """Return where points of the piece lie on the open cloth."""
        return tuple(point_at(self.matrix, point) for point in points)

    @property
    def grain_ends(self) -> tuple[Point, Point]:
        """Return the two ends of the grainline on the cloth, the one nearer the beginning first."""
        a, b = self.on_cloth(self.grain)
        return (a, b) if a <= b else (b, a)


@dataclass(frozen=True)
class Table:
    """The cloth with all that lies on it, in the order of cutting."""

    cloth: Cloth
    length_mm: float
    laid: tuple[Laid, ...]
    left_over: tuple[LeftOver, ...] = ()

    @property
    def deep_mm(self) -> float:
        """Return how deep the cloth is on the table: half its width if folded lengthwise."""
        return self.cloth.width_mm / 2 if self.cloth.fold is Fold.LENGTHWISE else self.cloth.width_mm

    def from_selvedge(self, point: Point, hand: Hand) -> float:
        """Return how far a point is from the selvedge that is measured from, in mm."""
        return self.cloth.width_mm - point[1] if self.is_far_side(hand) else point[1]

    def is_far_side(self, hand: Hand) -> bool:
        """Whether it is the selvedge at y = width that lies before the cutter."""
        return hand is Hand.LEFT and self.cloth.fold is not Fold.LENGTHWISE


def draw_table(table: Table, times: float, manner: Manner) -> Drawing:
    """Return the table at a scale."""
    wide, deep = table.length_mm * times, table.deep_mm * times
    left, top = (BAND_MM + 4.0) if manner.hand is Hand.RIGHT else 4.0, 4.0
    if _tape_above(table, manner):
        top += BAND_MM + 1
    way = _view(table, times, manner.hand, (left, top))
    items = (
        *_cloth(table, way),
        *_left_overs(table, way, manner),
        *(item for laid in table.laid for item in _twin(table, laid, way)),
        *(item for number, laid in enumerate(table.laid, 1) for item in _piece(number, laid, way)),
        *_flaws(table, way),
        *_folds(table, way),
        *_tapes(table, times, manner, (left, top)),
    )
    size = (wide + BAND_MM + 8.0, deep + BAND_MM + 9.0)
    names = ", ".join(f"{number} {laid.name}" for number, laid in enumerate(table.laid, 1))
    said = f"The cloth from the {manner.hand.value}-handed cutter's side, selvedge before her; on it lie {names}."
    return Drawing("The cutting table", said, size[0], size[1], tuple(items))


def _tape_above(table: Table, manner: Manner) -> bool:
    return manner.hand is Hand.LEFT and not table.is_far_side(manner.hand)


def _view(table: Table, times: float, hand: Hand, corner: Point) -> Matrix:
    """Return the way from the cloth onto the paper."""
    wide, deep = table.length_mm * times, table.deep_mm * times
    if hand is Hand.RIGHT:
        return then(scale(times, -times), shift(corner[0], corner[1] + deep))
    return then(scale(-times, times), shift(corner[0] + wide, corner[1]))


def _drawn(way: Matrix, points: Outline) -> Path:
    return polygon([point_at(way, point) for point in points])


def _cloth(table: Table, way: Matrix) -> list[Item]:
    cloth, long, deep = table.cloth, table.length_mm, table.deep_mm
    whole = ((0.0, 0.0), (long, 0.0), (long, deep), (0.0, deep))
    items: list[Item] = [Stroke((_drawn(way, cloth.outline or whole),), Ink(INK, 0.3, TISSUE))]
    edge = cloth.selvedge_mm
    if edge:
        bands = [(0.0, edge)] + ([(deep - edge, deep)] if cloth.fold is not Fold.LENGTHWISE else [])
        strips = tuple(_drawn(way, ((0, a), (long, a), (long, b), (0, b))) for a, b in bands)
        items.append(Stroke(strips, Ink(SOFT, 0.1, SHADE)))
    if cloth.one_way:
        top = min(point_at(way, corner)[1] for corner in whole) - 2.0
        a, b = ((point_at(way, (long * share, 0.0))[0], top) for share in (0.97, 0.85))
        items += arrow(a, b, Ink(INK, 0.25))
        items.append(Words(((a[0] + b[0]) / 2, top - 0.7), "nap", NOTE, Align.MIDDLE))
    return [*items, *_stripes(table, way)]


def _stripes(table: Table, way: Matrix) -> list[Item]:
    repeat = table.cloth.repeat
    if not repeat:
        return []
    lines: list[Path] = []
    for step, offset, limit in (
        (repeat.along_mm, repeat.offset[0], table.length_mm),
        (repeat.across_mm, repeat.offset[1], table.deep_mm),
    ):
        along = step is repeat.along_mm and limit == table.length_mm
        spot = offset % step if step else limit + 1
        while step and spot <= limit and len(lines) < 400:
            ends = ((spot, 0.0), (spot, table.deep_mm)) if along else ((0.0, spot), (table.length_mm, spot))
            lines.append(polyline([point_at(way, end) for end in ends]))
            spot += step
    return [Stroke(tuple(lines), Ink(SOFT, 0.1))]


def _flaws(table: Table, way: Matrix) -> list[Item]:
    """Flaws crossed out in red pencil, by name."""
    items: list[Item] = []
    for flaw, said in (_in_sight(table, one) for one in table.cloth.flaws):
        path = _drawn(way, flaw)
        room = extent_of(path.points(0.5))
        cross = (
            polyline(((room.left, room.bottom), (room.right, room.top))),
            polyline(((room.left, room.top), (room.right, room.bottom))),
        )
        items += [Stroke((path,), Ink(PENCIL, 0.35)), Stroke(cross, Ink(PENCIL, 0.25))]
        spot = ((room.left + room.right) / 2, room.bottom - 0.9)
        items.append(Words(spot, said, Style(6.5, Face.ITALIC, PENCIL), Align.MIDDLE))
    return items


def _in_sight(table: Table, flaw: Outline) -> tuple[Outline, str]:
    """Return where a flaw shows on the table; one of the lower layer shows through, at its height from the fold."""
    fold = table.deep_mm
    if fold < table.cloth.width_mm and min(y for _, y in flaw) >= fold:
        return tuple((x, 2 * fold - y) for x, y in flaw), "flaw in the layer below"
    return flaw, "flaw"


def _left_overs(table: Table, way: Matrix, manner: Manner) -> list[Item]:
    """The rectangles that stay, in broken line with their size."""
    items: list[Item] = []
    for rest in table.left_over:
        x, y = rest.x, rest.y
        corners = ((x, y), (x + rest.length_mm, y), (x + rest.length_mm, y + rest.width_mm), (x, y + rest.width_mm))
        path = _drawn(way, corners)
        room = extent_of(path.points(1.0))
        said = f"left over {_by(rest, manner)}"
        items.append(Stroke((path,), Ink(SOFT, 0.3, dash=(2.0, 1.2))))
        items += _along(said, room, Style(7, Face.ITALIC, INK))
    return items


def _by(rest: LeftOver, manner: Manner) -> str:
    short, long = (write_length(mm, manner.units) for mm in sorted((rest.width_mm, rest.length_mm)))
    return f"{short.rsplit(' ', 1)[0]} × {long}"


def _along(said: str, room: Extent, style: Style) -> list[Item]:
    """Words in the middle of a rectangle, along its longer side; none if it is too small for them."""
    middle = ((room.left + room.right) / 2, (room.bottom + room.top) / 2)
    high = style.size_pt * MM_PER_PT
    if width_mm(said, style) < room.width - 2 and high < room.height:
        return [Words((middle[0], middle[1] + high * 0.35), said, style, Align.MIDDLE)]
    if width_mm(said, style) < room.height - 2 and high < room.width:
        return [Words((middle[0] + high * 0.35, middle[1]), said, style, Align.MIDDLE, -90.0)]
    return []


def _piece(number: int, laid: Laid, way: Matrix) -> list[Item]:
    path = _drawn(way, laid.on_cloth(laid.outline))
    a, b = (point_at(way, end) for end in laid.grain_ends)
    items: list[Item] = [Stroke((path,), Ink(INK, 0.4, PAPER))]
    items += arrow(a, b, Ink(INK, 0.2), "both")
    for end, letter in ((a, "a"), (b, "b")):
        items.append(Words((end[0], end[1] - 1.0), letter, Style(7, Face.ITALIC), Align.MIDDLE))
    if laid.fold:
        ends = [point_at(way, point) for point in laid.on_cloth(laid.fold)]
        items.append(Stroke((polyline(ends),), Ink(PENCIL, 0.5)))
    items += _label(number, laid, path, (a, b))
    return [Group(tuple(items), name=f"cut {number} {laid.name}")]


def _label(number: int, laid: Laid, path: Path, grain: tuple[Point, Point]) -> list[Item]:
    """The number in a dot and the name under it; beside it, on a slip of white, where the piece is slim."""
    room = extent_of(path.points(0.5))
    if room.height < SLIM_MM:
        x, y = (grain[0][0] + grain[1][0]) / 2, (room.bottom + room.top) / 2
        said = shortened(laid.name, NAME, max(8.0, room.width * 0.6))
        long = width_mm(said, NAME)
        slip = box(x - long / 2 - 6.0, y - 1.9, long + 8.0, 3.8)
        return [
            Stroke((slip,), Ink(None, 0, PAPER)),
            Stroke((circle((x - long / 2 - 3.0, y), 2.0),), Ink(None, 0, INK)),
            Words((x - long / 2 - 3.0, y + 0.95), str(number), Style(7, Face.BOLD, PAPER), Align.MIDDLE),
            Words((x - long / 2, y + 1.0), said, NAME),
        ]
    x, y = _inside(path, room, grain)
    said = shortened(laid.name, NAME, max(8.0, room.width * 0.8))
    items: list[Item] = [
        Stroke((circle((x, y - 2.6), 2.3),), Ink(INK, 0.2, INK)),
        Words((x, y - 1.6), str(number), NUMBER, Align.MIDDLE),
        Words((x, y + 3.2), said, NAME, Align.MIDDLE),
    ]
    if laid.placement.layer == BOTH and not laid.fold:
        items.append(Words((x, y + 6.0), "both layers", NOTE, Align.MIDDLE))
    return items


def _inside(path: Path, room: Extent, grain: tuple[Point, Point]) -> Point:
    """Return the middle of the widest clear stretch at the heights beside the grainline."""
    best: tuple[float, Point] = (-1.0, ((room.left + room.right) / 2, (room.bottom + room.top) / 2))
    middle = (grain[0][1] + grain[1][1]) / 2
    for share in (0.5, 0.35, 0.65, 0.25, 0.75):
        y = room.bottom + share * room.height
        spots = sorted(at(path, spot)[0] for spot in crossings(path, (0.0, y), (1.0, 0.0)))
        for left, right in zip(spots[::2], spots[1::2], strict=False):
            clear = min(abs(y - middle), 8.0) / 8.0 if abs(grain[0][1] - grain[1][1]) < 3 else 1.0
            score = (right - left) * (0.4 + 0.6 * clear)
            best = max(best, (score, ((left + right) / 2, y)))
    return best[1]


def _twin(table: Table, laid: Laid, way: Matrix) -> list[Item]:
    """What the other layer gives, thin and broken, wherever it lies in sight."""
    if table.cloth.fold is Fold.LENGTHWISE:
        return []
    points = laid.on_cloth(laid.outline)
    if laid.fold:
        a, b = laid.on_cloth(laid.fold)
    elif laid.placement.layer == BOTH:
        y = min(fold_lines(table.cloth), key=lambda line: abs(line - points[0][1]), default=0.0)
        a, b = (0.0, y), (1.0, y)
    else:
        return []
    ink = Ink(INK, 0.3, PAPER, dash=(1.5, 0.9))
    return [Stroke((_drawn(way, tuple(_reflected(point, a, b) for point in points)),), ink)]


def _reflected(point: Point, a: Point, b: Point) -> Point:
    long = distance_mm(a, b) or 1.0
    u = ((b[0] - a[0]) / long, (b[1] - a[1]) / long)
    along = (point[0] - a[0]) * u[0] + (point[1] - a[1]) * u[1]
    foot = (a[0] + along * u[0], a[1] + along * u[1])
    return (2 * foot[0] - point[0], 2 * foot[1] - point[1])


def fold_lines(cloth: Cloth) -> tuple[float, ...]:
    """Return the heights across the cloth at which it is folded lengthwise."""
    return {
        Fold.LENGTHWISE: (cloth.width_mm / 2,),
        Fold.BOTH_TO_MIDDLE: (cloth.width_mm / 4, cloth.width_mm * 3 / 4),
        Fold.PARTIAL: (cloth.partial_mm,),
    }.get(cloth.fold, ())


def _folds(table: Table, way: Matrix) -> list[Item]:
    items: list[Item] = []
    for y in fold_lines(table.cloth):
        a, b = point_at(way, (0.0, y)), point_at(way, (table.length_mm, y))
        items.append(Stroke((polyline((a, b)),), Ink(PENCIL, 0.7)))
        items.append(Words(((a[0] + b[0]) / 2, a[1] - 0.9), "fold", Style(7, Face.ITALIC, PENCIL), Align.MIDDLE))
    return items


def _tapes(table: Table, times: float, manner: Manner, corner: Point) -> list[Item]:
    """One tape along the selvedge that is measured from, one across from it at the cloth's beginning."""
    wide, deep = table.length_mm * times, table.deep_mm * times
    x, y = corner
    right = manner.hand is Hand.RIGHT
    heading: Literal[1, -1] = 1 if right else -1
    begin = x if right else x + wide
    if _tape_above(table, manner):
        along = tape(table.length_mm, manner.units, times, shift(begin, y - 0.8), heading)
        across = tape(table.deep_mm, manner.units, times, then(turn(90), shift(begin + 0.8, y)))
    else:
        along = tape(table.length_mm, manner.units, times, shift(begin, y + deep + BAND_MM + 0.8), heading)
        edge = x - 0.8 if right else begin + BAND_MM + 0.8
        across = tape(table.deep_mm, manner.units, times, then(turn(-90), shift(edge, y + deep)))
    return [along, across]
