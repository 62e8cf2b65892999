"""A row on the needle, seen as the hands see it: the stitches, the shaping, the direction of work.

A right-handed knitter works from her right to her left, a left-handed one the other way; on the wrong side the
fabric is turned, so what is left as worn lies to her right. Stitches are counted from where the row begins.
"""

from __future__ import annotations

from lastlook.geometry import Cubic, Path, polygon, polyline
from lastlook.knit import Act, Shaping, Side, WorkedRow
from lastlook.sheet.draw.hanging import hanging
from lastlook.sheet.draw.knitted import Knitted
from lastlook.sheet.knitting.handed import outline_in, piece_in, row_in
from lastlook.sheet.manner import Hand, Manner
from lastlook.sheet.mark import (
    INK,
    PENCIL,
    SHADE,
    SOFT,
    Align,
    Drawing,
    Face,
    Ink,
    Item,
    Stroke,
    Style,
    Words,
    arrow,
    circle,
)

POINT_MM = 9.0
"""Length of the needle's point and of its knob's end."""
NEEDLE_MM = 2.2
LOOP_MM = 4.2
FABRIC_Y_MM, FABRIC_MM = 27.0, 38.0
"""Where the fabric begins below the needle, and how much of it is shown."""
SMALL = Style(6.5)
COUNT = Style(7, Face.BOLD)
SIGNS = {
    Act.DECREASE: "fewer",
    Act.INCREASE: "more",
    Act.BIND_OFF: "bound off",
    Act.CAST_ON: "cast on",
    Act.HOLD: "on a holder",
    Act.PICK_UP: "picked up",
}


def spots(row: WorkedRow, shaping: Shaping, hand: Hand) -> float:
    """Return after how many stitches from the row's beginning a shaping is worked, of a row as it comes out."""
    begins = "right" if (hand is Hand.RIGHT) == (row.side is not Side.WRONG) else "left"
    if shaping.edge == "inside":
        return row.before / 2
    near = shaping.inset
    return near if shaping.edge == begins else row.before - shaping.inset - _takes(shaping)


def _takes(shaping: Shaping) -> int:
    """Return how many stitches of the old row the shaping is worked over."""
    if shaping.act is Act.DECREASE:
        return shaping.stitches + 1
    return 0 if shaping.act in (Act.INCREASE, Act.CAST_ON, Act.PICK_UP) else shaping.stitches


def draw_row(row: WorkedRow, width_mm: float, manner: Manner, fabric: Knitted | None = None) -> Drawing:
    """Return one row, written for the right hand, as it hangs on this maker's needle before it is worked.

    With the piece that it belongs to, the fabric worked so far hangs below.
    """
    row = row_in(row, manner.hand)
    room = width_mm - 2 * POINT_MM - 4
    step = room / max(1, row.before)
    begin, heading = (width_mm - POINT_MM - 2, -1.0) if manner.hand is Hand.RIGHT else (POINT_MM + 2, 1.0)
    items: list[Item] = [*_needle(width_mm, 12.0, heading), *_loops(row, begin, heading * step)]
    items += _tens(row, begin, heading * step)
    for shaping in row.shapings:
        items += _mark(row, shaping, (begin, heading * step), manner)
    items += arrow((begin, 4.0), (begin + heading * 26, 4.0), Ink(INK, 0.3))
    middle = (begin + heading * 28, 4.9)
    side = {Side.RIGHT: "right side facing", Side.WRONG: "wrong side facing", Side.ROUND: "in the round"}[row.side]
    align = Align.END if heading < 0 else Align.START
    items.append(Words(middle, f"row {row.number}, {side}", SMALL, align))
    high = 28.0
    if fabric is not None and row.before:
        ends = tuple(sorted((begin, begin + heading * room)))
        items += hanging(_in_hand(fabric, manner.hand), row, (ends[0], ends[1]), FABRIC_Y_MM, FABRIC_MM)
        high = FABRIC_Y_MM + FABRIC_MM
    return Drawing(f"Row {row.number}", _said(row, manner), width_mm, high, tuple(items))


def _in_hand(fabric: Knitted, hand: Hand) -> Knitted:
    outline = outline_in(fabric.outline, hand)
    return Knitted(piece_in(fabric.piece, hand), outline or fabric.outline, fabric.gauge)


def _needle(width: float, y: float, heading: float) -> list[Item]:
    """The needle that the stitches wait on: its point where the row begins, its knob at the other end."""
    half, knob = NEEDLE_MM / 2, 2.4
    tip, end = (width, knob + 1.0) if heading < 0 else (0.0, width - knob - 1.0)
    neck = tip + heading * POINT_MM
    shape = [(tip, y), (neck, y - half), (end, y - half), (end, y + half), (neck, y + half)]
    ball = circle((end + heading * 0.6, y), knob)
    return [Stroke((polygon(shape),), Ink(INK, 0.25, SHADE)), Stroke((ball,), Ink(INK, 0.25, SHADE))]


def _loops(row: WorkedRow, begin: float, step: float) -> list[Item]:
    """One loop over the needle for each stitch."""
    wide = min(abs(step) * 0.36, 1.3)
    loops: list[Path] = []
    for number in range(row.before):
        x = begin + (number + 0.5) * step
        top, foot = 12.0 - NEEDLE_MM, 12.0 + LOOP_MM
        loops.append(
            Path(
                (
                    Cubic((x - wide * 0.4, foot), (x - wide * 1.7, 12.0), (x - wide * 1.5, top), (x, top)),
                    Cubic((x, top), (x + wide * 1.5, top), (x + wide * 1.7, 12.0), (x + wide * 0.4, foot)),
                )
            )
        )
    return [Stroke(tuple(loops), Ink(INK, max(0.12, min(0.35, abs(step) * 0.12))))] if loops else []


def _tens(row: WorkedRow, begin: float, step: float) -> list[Item]:
    items: list[Item] = []
    every = 10 if abs(step) * 10 > 7 else 20 if abs(step) * 20 > 7 else 50
    for number in range(every, row.before + 1, every):
        x = begin + number * step
        items.append(Stroke((polyline(((x, 17.4), (x, 18.6))),), Ink(SOFT, 0.2)))
        items.append(Words((x, 21.0), str(number), Style(6, Face.TEXT, SOFT), Align.MIDDLE))
    items.append(Words((begin + row.before * step, 24.6), f"{row.before} sts", COUNT, Align.MIDDLE))
    return items


def _mark(row: WorkedRow, shaping: Shaping, way: tuple[float, float], manner: Manner) -> list[Item]:
    """A red bracket under the stitches that a shaping takes, and what it does."""
    begin, step = way
    start = spots(row, shaping, manner.hand)
    a, b = begin + start * step, begin + (start + max(_takes(shaping), 0.4)) * step
    said = f"{shaping.stitches} {SIGNS[shaping.act]}"
    ink = Ink(PENCIL, 0.45)
    bracket = polyline(((a, 9.2), (a, 8.2), (b, 8.2), (b, 9.2)))
    middle = (a + b) / 2
    align = Align.MIDDLE
    if abs(start) * abs(step) < 12:
        align = Align.END if step < 0 else Align.START
    elif (row.before - start) * abs(step) < 14:
        align = Align.START if step < 0 else Align.END
    words = Words((middle, 7.4), manner.say(said), Style(6.5, Face.ITALIC, PENCIL), align)
    return [Stroke((bracket,), ink), words]


def _said(row: WorkedRow, manner: Manner) -> str:
    parts = [f"{one.stitches} {SIGNS[one.act]} after {spots(row, one, manner.hand):g} stitches" for one in row.shapings]
    work = "; ".join(parts) or "no shaping"
    return manner.say(f"{row.before} stitches on the needle, {row.after} after the row: {work}.")
