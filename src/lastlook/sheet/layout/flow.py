"""Blocks, one under the other, filled into pages.

A *block* is a strip of the page with a height; one that is *kept* stays on the same page as the next.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from lastlook.sheet.layout.frame import SIDE_MM, Framing, framed
from lastlook.sheet.layout.page import Page
from lastlook.sheet.mark import INK, PENCIL, Face, Group, Ink, Item, Style, Words, line, shift
from lastlook.sheet.type import MM_PER_PT, wrap

HARDLY_BEGUN = 0.08
"""A page that is filled no further than this is not left for a new one."""
LEADING = 1.42
"""Line height over type size."""
BODY = Style(9.0)
SMALL = Style(7.5)
TITLE = Style(24, Face.HEAD)
CHAPTER = Style(16, Face.HEAD)
SECTION = Style(11.5, Face.HEAD)


@dataclass(frozen=True)
class Block:
    """A strip of a page."""

    height_mm: float
    items: tuple[Item, ...]
    kept: bool = False
    new_page: bool = False
    label: str = ""
    """What the page it opens is called."""


def paragraph(text: str, room_mm: float, style: Style = BODY, indent_mm: float = 0.0) -> Block:
    """Return a paragraph with a little air under it."""
    step = style.size_pt * LEADING * MM_PER_PT
    lines = wrap(text, style, room_mm - indent_mm)
    items = tuple(Words((indent_mm, step * (n + 0.78)), one, style) for n, one in enumerate(lines) if one)
    return Block(step * len(lines) + 1.2, items)


def heading(text: str, room_mm: float, style: Style = SECTION) -> Block:
    """Return a heading that stays with what follows."""
    body = paragraph(text, room_mm, style)
    air = style.size_pt * 0.22
    return Block(body.height_mm + air, (Group(body.items, shift(0, air)),), kept=True)


def rule(room_mm: float) -> Block:
    """Return a thin line across."""
    return Block(2.4, (line((0, 1.2), (room_mm, 1.2), Ink(INK, 0.15)),))


def space(height_mm: float) -> Block:
    """Return nothing, that high."""
    return Block(height_mm, ())


def beside(blocks: Iterable[tuple[float, Block]]) -> Block:
    """Return blocks side by side, each at its x."""
    placed = tuple(blocks)
    items = tuple(Group(block.items, shift(x, 0)) for x, block in placed)
    return Block(max(block.height_mm for _, block in placed), items)


def stacked(blocks: Iterable[Block]) -> Block:
    """Return blocks under each other as one that is never parted."""
    y, items = 0.0, []
    for block in blocks:
        items.append(Group(block.items, shift(0, y)))
        y += block.height_mm
    return Block(y, tuple(items))


def pencilled(block: Block) -> Block:
    """Return a block with a red pencil line down its left margin, as a proof-reader draws it."""
    down = line((-3.2, 0.6), (-3.2, block.height_mm - 1.6), Ink(PENCIL, 0.5))
    return Block(block.height_mm, (down, *block.items), block.kept, block.new_page, block.label)


def pages(blocks: Iterable[Block], framing: Framing) -> tuple[Page, ...]:
    """Fill the blocks into pages of that frame."""
    wide, high = framing.room_mm
    filled = _filled([part for block in blocks for part in _slices(block, wide, high)], high)
    return tuple(
        framed(framing, items, (number, len(filled)), label) for number, (items, label) in enumerate(filled, 1)
    )


def _slices(block: Block, wide: float, high: float) -> list[Block]:
    """Cut a block that is taller than a page into page-high strips, so that nothing of it is lost."""
    if block.height_mm <= high:
        return [block]
    out = []
    for number in range(math.ceil(block.height_mm / high)):
        window = (-SIDE_MM, number * high, wide + 2 * SIDE_MM, min(high, block.height_mm - number * high))
        strip = Group(block.items, shift(0, -number * high), clip=window)
        out.append(Block(window[3], (strip,), False, block.new_page and not number, "" if number else block.label))
    return out


def _filled(blocks: list[Block], room: float) -> list[tuple[tuple[Item, ...], str]]:
    out: list[tuple[tuple[Item, ...], str]] = []
    items: list[Item] = []
    y, label = 0.0, ""
    for spot, block in enumerate(blocks):
        if items and ((block.new_page and y > HARDLY_BEGUN * room) or y + _reach(blocks, spot) > room):
            out.append((tuple(items), label))
            items, y, label = [], 0.0, ""
        label = label or block.label
        items.append(Group(block.items, shift(0, y)))
        y += block.height_mm
    out.append((tuple(items), label))
    return out


def _reach(blocks: list[Block], spot: int) -> float:
    """Return the height that has to fit: the block, and as far as each is kept with the next."""
    height = blocks[spot].height_mm
    while blocks[spot].kept and spot + 1 < len(blocks):
        spot += 1
        height += blocks[spot].height_mm
    return height
