"""An outline taken apart at its corners: each run with its number and its name, to be held on to on a screen."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.geometry import Path, Point, at
from lastlook.sheet.draw.spread_out import extent, onto
from lastlook.sheet.mark import INK, PENCIL, SHADE, Align, Drawing, Face, Group, Ink, Item, Stroke, Style, Words

WIDE_MM, HIGH_MM = 78.0, 110.0
"""The outline is drawn as large as it goes into this."""
MARGIN_MM = 18.0
NUMBER = Style(8, Face.BOLD, PENCIL)
NAME = Style(7.5, Face.ITALIC)


def draw_runs(name: str, runs: Sequence[tuple[Path, str]]) -> Drawing:
    """Return the outline with every run in a group of its own, 'run 1', 'run 2', …"""
    room = extent([run for run, _ in runs])
    times = min(WIDE_MM / max(room.width, 1.0), HIGH_MM / max(room.height, 1.0))
    way = onto(room, times, MARGIN_MM, MARGIN_MM)
    whole = Path(tuple(segment for run, _ in runs for segment in way.path(run).segments))
    items: list[Item] = [Stroke((whole,), Ink(None, 0, SHADE))]
    middle = way.point(((room.left + room.right) / 2, (room.bottom + room.top) / 2))
    for number, (run, called) in enumerate(runs, 1):
        items.append(_run(number, way.path(run), called, middle))
    said = "; ".join(f"edge {number}: {called or 'leg of a dart'}" for number, (_, called) in enumerate(runs, 1))
    wide, high = room.width * times + 2 * MARGIN_MM, room.height * times + 2 * MARGIN_MM
    return Drawing(f"{name}, its edges", said + ".", wide, high, tuple(items))


def _run(number: int, path: Path, called: str, middle: Point) -> Group:
    spot = at(path, len(path.segments) / 2)
    right, below = spot[0] >= middle[0], spot[1] >= middle[1]
    across = abs(path.end[0] - path.start[0]) > abs(path.end[1] - path.start[1])
    align = Align.MIDDLE if across else Align.START if right else Align.END
    place = (spot[0], spot[1] + (5.4 if below else -2.6)) if across else (spot[0] + (2.4 if right else -2.4), spot[1])
    return Group(
        (
            Stroke((path,), Ink(INK, 0.7)),
            Words(place, f"{number} {called}".strip(), NAME if called else NUMBER, align),
        ),
        name=f"run {number}",
    )
