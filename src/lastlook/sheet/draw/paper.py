"""A sewing-pattern piece as it is drawn: cut line, seam line, fold, darts, notches, grain, and what it says.

At scale 1 it is the true-size pattern; smaller, it is a picture for the screen. Every mark is told apart by its
kind of line and by words, never by colour alone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from lastlook.geometry import Point, at, distance_mm, nearest, polyline
from lastlook.paper import Notch, PaperPiece, Use
from lastlook.sheet.draw.naming import NO_JOINS, naming, readable
from lastlook.sheet.draw.spread_out import Extent, Onto, extent, extent_of, onto
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import (
    INK,
    PENCIL,
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
    arrow,
    circle,
    line,
)
from lastlook.sheet.type import MM_PER_PT, width_mm

EDGE_MM = 4.0
"""Room left round a small picture."""


@dataclass(frozen=True)
class Hand:
    """The pens for one scale."""

    cut: Ink
    seam: Ink
    fine: Ink
    name: Style
    said: Style
    small: Style
    reach_mm: float
    """How far the bracket of a fold stands in from it."""


TRUE = Hand(
    cut=Ink(INK, 0.5),
    seam=Ink(INK, 0.25, dash=(5, 2)),
    fine=Ink(INK, 0.25),
    name=Style(26, Face.HEAD),
    said=Style(11),
    small=Style(8.5, Face.ITALIC),
    reach_mm=12.0,
)
SMALL = Hand(
    cut=Ink(INK, 0.35, TISSUE),
    seam=Ink(INK, 0.15, dash=(1.2, 0.8)),
    fine=Ink(INK, 0.15),
    name=Style(9, Face.HEAD),
    said=Style(6.5),
    small=Style(6, Face.ITALIC),
    reach_mm=3.0,
)


def quantity_words(piece: PaperPiece) -> str:
    """Return how often and how a piece is cut.

    A pair is one left and one right: on single cloth the second is laid with the paper turned over.
    """
    if piece.fold:
        return "Cut 1 on the fold" if piece.quantity == 1 else f"Cut {piece.quantity}, each on the fold"
    if piece.mirrored_pair:
        pairs = piece.quantity // 2
        return f"Cut {piece.quantity}: one left, one right" + (f", {pairs} times" if pairs > 1 else "")
    return f"Cut {piece.quantity}"


def room_of(piece: PaperPiece) -> Extent:
    """Return the rectangle that a piece takes up, in its own mm."""
    return extent((piece.cut_line, piece.seam_line))


def true_size(piece: PaperPiece, said: tuple[str, ...], way: Onto, joins: Point) -> Group:
    """Return a piece at its true size, its name clear of the joins, which come every `joins` across and down."""
    return Group(_marks(piece, said, way, TRUE, joins), name=f"piece {piece.name}")


def picture(pieces: tuple[PaperPiece, ...], times: float, manner: Manner) -> Drawing:
    """Return pieces side by side at a smaller scale, feet on one line."""
    rooms = [room_of(piece) for piece in pieces]
    tallest = max(room.height for room in rooms) * times
    x, items = EDGE_MM, []
    for piece, room in zip(pieces, rooms, strict=True):
        wide = max(room.width * times, width_mm(piece.name, SMALL.name) + 2)
        way = onto(room, times, x + (wide - room.width * times) / 2, EDGE_MM + tallest - room.height * times)
        items.append(Group(_marks(piece, (), way, SMALL), name=f"piece {piece.name}"))
        x += wide + EDGE_MM
    said = "; ".join(f"{piece.name}: {quantity_words(piece).lower()}" for piece in pieces)
    return Drawing("Paper pieces", manner.say(said) + ".", x, tallest + 2 * EDGE_MM, tuple(items))


def _marks(
    piece: PaperPiece, said: tuple[str, ...], way: Onto, hand: Hand, joins: Point = NO_JOINS
) -> tuple[Item, ...]:
    items: list[Item] = [Stroke((way.path(piece.cut_line),), hand.cut)]
    seams = [way.path(side.path) for side in piece.sides if side.use is not Use.FOLD]
    items.append(Stroke(tuple(seams), hand.seam))
    items += _darts(piece, way, hand)
    items += [item for notch in piece.notches for item in _notch(piece, notch, way, hand)]
    items += [item for mark in piece.marks for item in _cross(mark, way, hand)]
    items += _fold(piece, way, hand)
    items += _edge_names(piece, way) if hand is TRUE else []
    items += _grain(piece, way, hand)
    names = ((piece.name, hand.name), (quantity_words(piece), hand.said), *((one, hand.said) for one in said))
    items += naming(piece, names, way, hand.reach_mm, joins)
    return tuple(items)


def _darts(piece: PaperPiece, way: Onto, hand: Hand) -> list[Item]:
    legs, dots = [], []
    for dart in piece.darts:
        legs += [polyline((way.point(end), way.point(dart.point))) for end in (dart.first, dart.second)]
        dots.append(circle(way.point(dart.point), hand.cut.width_mm * 1.6))
    if not legs:
        return []
    return [Stroke(tuple(legs), hand.seam), Stroke(tuple(dots), Ink(None, 0, INK))]


def _notch(piece: PaperPiece, notch: Notch, way: Onto, hand: Hand) -> list[Item]:
    """A bar across the allowance from the seam line to the cut line, and a small ring on the seam."""
    on_cut = at(piece.cut_line, nearest(piece.cut_line, notch.point).spot)
    seam, cut = way.point(notch.point), way.point(on_cut)
    ring = circle(seam, hand.cut.width_mm * 1.8)
    if distance_mm(seam, cut) < 0.2:
        return [Stroke((ring,), hand.fine)]
    return [
        line(seam, cut, Ink(INK, hand.cut.width_mm * 1.2)),
        Stroke((ring,), Ink(INK, hand.fine.width_mm, "#ffffff")),
    ]


def _cross(mark: Notch, way: Onto, hand: Hand) -> list[Item]:
    x, y = way.point(mark.point)
    arm = hand.cut.width_mm * 6
    return [Stroke((polyline(((x - arm, y), (x + arm, y))), polyline(((x, y - arm), (x, y + arm)))), hand.fine)]


def _edge_names(piece: PaperPiece, way: Onto) -> list[Item]:
    """The name of each sewn edge, set along it just inside the seam line."""
    items: list[Item] = []
    style = Style(8.5, Face.ITALIC)
    for side in piece.sides:
        longest = max((way.path(part) for part in side.parts), key=lambda part: part.length_mm())
        if side.use is Use.FOLD or longest.length_mm() < width_mm(side.name, style) + 12:
            continue
        spot = len(longest.segments) * 0.5
        middle, ahead = at(longest, spot), at(longest, min(spot + 0.02, len(longest.segments)))
        heading = math.degrees(math.atan2(ahead[1] - middle[1], ahead[0] - middle[0]))
        inward = math.radians(heading - 90)
        lean = readable(heading)
        deep = 2.2 + (2.4 if abs(lean - heading) > 1 else 0.0)
        where = (middle[0] + deep * math.cos(inward), middle[1] + deep * math.sin(inward))
        items.append(Words(where, side.name, style, Align.MIDDLE, lean))
    return items


def _fold(piece: PaperPiece, way: Onto, hand: Hand) -> list[Item]:
    """A red line along the fold with a bracket turned in at both ends, and the words beside it."""
    if not piece.fold:
        return []
    a, b = (way.point(end) for end in piece.fold)
    inward = _inward(piece, way, a, b)
    long = distance_mm(a, b)
    reach = hand.reach_mm
    along = ((b[0] - a[0]) / long, (b[1] - a[1]) / long)

    def spot(far: float, deep: float) -> Point:
        return (a[0] + along[0] * far + inward[0] * deep, a[1] + along[1] * far + inward[1] * deep)

    ends = (long * 0.18, long * 0.82)
    bracket = polyline((spot(ends[0], 0), spot(ends[0], reach), spot(ends[1], reach), spot(ends[1], 0)))
    lean = readable(math.degrees(math.atan2(along[1], along[0])))
    rises = math.radians(lean - 90)
    towards_fold = math.cos(rises) * inward[0] + math.sin(rises) * inward[1] < 0
    words = spot(long / 2, reach + hand.said.size_pt * MM_PER_PT * (1.1 if towards_fold else 0.4))
    style = Style(hand.said.size_pt, hand.said.face, PENCIL)
    ink = Ink(PENCIL, hand.cut.width_mm)
    tips = [item for end in ends for item in arrow(spot(end, reach), spot(end, 0), ink)]
    return [Stroke((bracket,), ink), *tips, Words(words, "on the fold", style, Align.MIDDLE, lean)]


def _inward(piece: PaperPiece, way: Onto, a: Point, b: Point) -> Point:
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    side = (-(b[1] - a[1]), b[0] - a[0])
    long = math.hypot(*side) or 1.0
    room = extent_of(way.path(piece.cut_line).points(1.0))
    centre = ((room.left + room.right) / 2, (room.bottom + room.top) / 2)
    sign = 1.0 if (centre[0] - middle[0]) * side[0] + (centre[1] - middle[1]) * side[1] >= 0 else -1.0
    return (sign * side[0] / long, sign * side[1] / long)


def _grain(piece: PaperPiece, way: Onto, hand: Hand) -> list[Item]:
    a, b = (way.point(end) for end in piece.grain)
    lean = readable(math.degrees(math.atan2(b[1] - a[1], b[0] - a[0])))
    out = math.radians(lean - 90)
    away = hand.small.size_pt * MM_PER_PT * 0.45
    middle = ((a[0] + b[0]) / 2 + away * math.cos(out), (a[1] + b[1]) / 2 + away * math.sin(out))
    items: list[Item] = list(arrow(a, b, hand.fine, "both"))
    if hand is TRUE and distance_mm(a, b) > width_mm("straight grain", hand.small) + 6:
        items.append(Words(middle, "straight grain", hand.small, Align.MIDDLE, lean))
    return items
