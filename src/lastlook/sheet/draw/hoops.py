"""Assembled girths against the body, as hoops round her at the heights where they lie.

Each level is a body hoop on tissue and the garment's hoop round it in ink, drawn to one scale as circles seen
from above the shoulder; the words beside it say the ease. A garment that is smaller than the body there has its
hoop in broken red.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from lastlook.geometry import Cubic, Path, Point
from lastlook.quantity import write_length
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import INK, PENCIL, SOFT, TISSUE, Drawing, Face, Ink, Item, Stroke, Style, Words, line
from lastlook.sheet.mark.shape import ROUND

SQUASH = 0.34
"""How flat a hoop looks from above the shoulder."""
STEP_MM = 5.0
"""Air between one hoop and the next."""
WORDS_MM = 62.0
NAME = Style(9, Face.HEAD)
SAID = Style(7.5)


@dataclass(frozen=True)
class Hoop:
    """One level: the body's girth, the garment's, in mm; None where a figure is not known."""

    name: str
    body_mm: float | None
    garment_mm: float | None
    give_mm: float = 0.0
    """How much the garment's figure may be off."""
    because: str = ""
    """What is said of it, in words, where a figure is missing."""


def draw_hoops(hoops: tuple[Hoop, ...], times: float, manner: Manner) -> Drawing:
    """Return the hoops one under the other, the topmost level first."""
    widest = max((max(one.body_mm or 0.0, one.garment_mm or 0.0) for one in hoops), default=0.0)
    half = max(widest / math.pi * times / 2, 8.0)
    y, items = 2.0, list[Item]()
    for one in hoops:
        radius = max(one.body_mm or 0.0, one.garment_mm or 0.0) / math.pi * times / 2
        tall = max(radius * SQUASH, 4.5)
        y += tall
        items += _hoop(one, (half + 2, y), times)
        items += _words(one, (2 * half + 8, y), manner)
        y += tall + STEP_MM
    said = "; ".join(f"{one.name}: {_ease(one, manner)}" for one in hoops)
    return Drawing("Round the body", said + ".", 2 * half + 8 + WORDS_MM, y, tuple(items))


def _hoop(one: Hoop, centre: Point, times: float) -> list[Item]:
    items: list[Item] = []
    if one.body_mm:
        items.append(Stroke((_ellipse(centre, one.body_mm / math.pi * times / 2),), Ink(SOFT, 0.2, TISSUE)))
    if one.garment_mm:
        small = one.body_mm is not None and one.garment_mm < one.body_mm
        ink = Ink(PENCIL, 0.5, dash=(1.6, 1.0)) if small else Ink(INK, 0.5)
        items.append(Stroke((_ellipse(centre, one.garment_mm / math.pi * times / 2),), ink))
    reach = (max(one.body_mm or 0, one.garment_mm or 0)) / math.pi * times / 2
    items.append(line((centre[0] + reach + 1, centre[1]), (centre[0] + reach + 4, centre[1]), Ink(SOFT, 0.15)))
    return items


def _ellipse(centre: Point, radius: float) -> Path:
    x, y = centre
    r, s = radius, radius * SQUASH
    h, k = r * ROUND, s * ROUND
    return Path(
        (
            Cubic((x + r, y), (x + r, y + k), (x + h, y + s), (x, y + s)),
            Cubic((x, y + s), (x - h, y + s), (x - r, y + k), (x - r, y)),
            Cubic((x - r, y), (x - r, y - k), (x - h, y - s), (x, y - s)),
            Cubic((x, y - s), (x + h, y - s), (x + r, y - k), (x + r, y)),
        )
    )


def _words(one: Hoop, at: Point, manner: Manner) -> list[Item]:
    x, y = at
    small = one.body_mm is not None and one.garment_mm is not None and one.garment_mm < one.body_mm
    items: list[Item] = [Words((x, y - 0.6), one.name, NAME)]
    items.append(Words((x, y + 3.2), _ease(one, manner), Style(7.5, Face.TEXT, PENCIL if small else INK)))
    if one.body_mm and one.garment_mm:
        give = f" ± {write_length(one.give_mm, manner.units)}" if one.give_mm else ""
        both = f"{write_length(one.garment_mm, manner.units)}{give} round {write_length(one.body_mm, manner.units)}"
        items.append(Words((x, y + 6.4), both, Style(7, Face.ITALIC, SOFT)))
    return items


def _ease(one: Hoop, manner: Manner) -> str:
    """Say the ease: '4 cm more than you'."""
    if one.body_mm is None or one.garment_mm is None:
        return one.because or "not known yet"
    over = one.garment_mm - one.body_mm
    if abs(over) < 0.5:
        return "as much as you"
    return f"{write_length(abs(over), manner.units)} {'more' if over > 0 else 'less'} than you"
