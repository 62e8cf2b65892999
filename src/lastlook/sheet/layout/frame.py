"""The frame of every sheet: a true tape along the top, the title, and a foot that names the size on each page."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.quantity import MM_PER_INCH, Units
from lastlook.sheet.draw.tape import tape
from lastlook.sheet.layout.page import Page
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import INK, SOFT, Align, Face, Group, Ink, Item, Style, Words, line, shift
from lastlook.sheet.type import shortened

SIDE_MM = 16.0
TOP_MM = 24.0
FOOT_MM = 17.0
TAPE_Y_MM = 14.5
FOOT = Style(7.5, Face.TEXT, SOFT)
FOOT_BOLD = Style(7.5, Face.BOLD, INK)


@dataclass(frozen=True)
class Framing:
    """What stands round every page of one sheet."""

    title: str
    size: str
    """Printed on every page: 'Size 36', or whose it is."""
    manner: Manner
    lying: bool = False
    """Whether the paper lies on its long side."""

    @property
    def page_mm(self) -> tuple[float, float]:
        """Return width and height of the paper as it lies."""
        paper = self.manner.paper
        return (paper.height_mm, paper.width_mm) if self.lying else (paper.width_mm, paper.height_mm)

    @property
    def room_mm(self) -> tuple[float, float]:
        """Return width and height of what may be filled."""
        width, height = self.page_mm
        return width - 2 * SIDE_MM, height - TOP_MM - FOOT_MM


def framed(framing: Framing, items: tuple[Item, ...], place: tuple[int, int], label: str = "") -> Page:
    """Return a page with its frame; `items` count from the top left corner of the room, `place` is (page, of)."""
    width, height = framing.page_mm
    inside = Group(items, shift(SIDE_MM, TOP_MM))
    return Page(width, height, (*_tape(framing), *_foot(framing, place), inside), label)


def _tape(framing: Framing) -> tuple[Item, ...]:
    units = framing.manner.units
    unit = 10.0 if units is Units.CM else MM_PER_INCH
    room = framing.page_mm[0] - 2 * SIDE_MM
    whole = room // unit * unit
    return (tape(whole, units, 1.0, shift(SIDE_MM, TAPE_Y_MM)),)


def _foot(framing: Framing, place: tuple[int, int]) -> tuple[Item, ...]:
    width, height = framing.page_mm
    y = height - 10.5
    number = f"{place[0]} of {place[1]}"
    return (
        line((SIDE_MM, y - 3.6), (width - SIDE_MM, y - 3.6), Ink(SOFT, 0.15)),
        Words((SIDE_MM, y), shortened(framing.title, FOOT, width / 2 - SIDE_MM - 16), FOOT),
        Words((width / 2, y), shortened(framing.size, FOOT_BOLD, width / 3), FOOT_BOLD, Align.MIDDLE),
        Words((width - SIDE_MM, y), number, FOOT, Align.END),
    )
