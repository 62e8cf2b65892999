"""One version of a paper piece over another, every changed edge measured.

What was stands behind in thin broken line, what is in ink, and the slip of cloth between them is shaded. They lie on
each other by a point that both keep.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.geometry import Path, Point, at
from lastlook.paper import PaperPiece, SeamEdge, Use
from lastlook.quantity import Units, write_length
from lastlook.sheet.draw.spread_out import Extent, Onto, extent, onto
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import INK, PENCIL, SHADE, SOFT, Align, Drawing, Face, Ink, Item, Stroke, Style, Words, line

SIDE_MM = 40.0
"""Room for the figures on either side."""
SAME_MM = 0.05
"""A change smaller than this is none on paper."""
EIGHTHS_MM, TENTH_CM_MM = 6.0, 5.0
"""Changes below these are told in millimetres: a tape in eighths of an inch is too coarse for them."""
NAME = Style(10, Face.HEAD)
SAID = Style(7)


@dataclass(frozen=True)
class Change:
    """How an edge changed: its sewn length before and after, in mm."""

    edge: str
    before_mm: float
    after_mm: float

    @property
    def by_mm(self) -> float:
        """Return how much longer it became."""
        return self.after_mm - self.before_mm


def changes(before: PaperPiece, after: PaperPiece) -> tuple[Change, ...]:
    """Return every edge that both have and whose sewn length changed, in the order of the walk."""
    out = []
    for side in after.sides:
        old = before.side(side.name)
        if old is not None and abs(side.sewn_mm - old.sewn_mm) > SAME_MM:
            out.append(Change(side.name, old.sewn_mm, side.sewn_mm))
    return tuple(out)


def change_words(change: Change, manner: Manner) -> str:
    """Return a change in words: 'waist 8 mm shorter: 35.6 cm becomes 34.8 cm'."""
    longer = "longer" if change.by_mm > 0 else "shorter"
    by, old, new = (
        _fine(abs(change.by_mm), manner),
        *(write_length(mm, manner.units) for mm in (change.before_mm, change.after_mm)),
    )
    return f"{change.edge} {by} {longer}: {old} becomes {new}" if old != new else f"{change.edge} {by} {longer}"


def _fine(mm: float, manner: Manner) -> str:
    """Return a small change as the tape shows it; what is less than its marks tell apart, in millimetres."""
    least = EIGHTHS_MM if manner.units is Units.INCHES else TENTH_CM_MM
    return write_length(mm, manner.units) if mm >= least else f"{mm:.1f} mm"


def draw_overlay(before: PaperPiece, after: PaperPiece, times: float, manner: Manner) -> Drawing:
    """Return both versions over each other at a scale, with the changed edges named and measured."""
    room = extent((before.seam_line, after.seam_line))
    way = onto(room, times, SIDE_MM, 10.0)
    changed = changes(before, after)
    items: list[Item] = [
        Stroke((way.path(before.seam_line), way.path(after.seam_line)), Ink(None, 0, SHADE)),
        Stroke((way.path(before.seam_line),), Ink(SOFT, 0.25, dash=(1.2, 0.8))),
        Stroke(tuple(way.path(side.path) for side in after.sides), Ink(INK, 0.4)),
    ]
    bottom = room.height * times + 14
    items += _pencilled(after, changed, room, way, manner)
    items.append(Words((SIDE_MM + room.width * times / 2, 6.0), after.name, NAME, Align.MIDDLE))
    for number, change in enumerate(changed):
        items.append(Words((2, bottom + 4 * number), change_words(change, manner), SAID))
    wide, high = room.width * times + 2 * SIDE_MM, bottom + 4 * max(1, len(changed))
    said = "; ".join(change_words(change, manner) for change in changed) or "nothing changed"
    return Drawing(f"{after.name}, before and after", said + ".", wide, high, tuple(items))


def _pencilled(after: PaperPiece, changed: tuple[Change, ...], room: Extent, way: Onto, manner: Manner) -> list[Item]:
    """Go over the changed edges in red pencil and write by how much beside each."""
    items: list[Item] = []
    for change in changed:
        side = after.side(change.edge)
        if side is None or side.use is Use.FOLD:
            continue
        path = way.path(side.path)
        items.append(Stroke((path,), Ink(PENCIL, 0.5)))
        items += _figure(change, _middle(side, way), way.point(((room.left + room.right) / 2, 0.0))[0], manner)
    return items


def _middle(side: SeamEdge, way: Onto) -> Point:
    path: Path = max(side.parts, key=lambda part: part.length_mm())
    return way.point(at(path, len(path.segments) / 2))


def _figure(change: Change, spot: Point, centre: float, manner: Manner) -> list[Item]:
    sign = "+" if change.by_mm > 0 else "–"
    said = f"{sign} {_fine(abs(change.by_mm), manner)}"
    style = Style(7.5, Face.BOLD, PENCIL)
    right = spot[0] >= centre
    x = spot[0] + (6 if right else -6)
    align = Align.START if right else Align.END
    reach = x - 0.8 if right else x + 0.8
    return [line(spot, (reach, spot[1] - 2), Ink(PENCIL, 0.2)), Words((x, spot[1] - 1.2), said, style, align)]
