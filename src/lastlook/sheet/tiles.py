"""Paper pieces at their true size, on pages of home paper that are joined again.

First come the squares to measure and the map; then each large piece on tiles of its own, so that it alone is
printed again when it changes. What fits on one page shares a page.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.paper import PaperPiece
from lastlook.quantity import Units
from lastlook.sheet.layout.flow import BODY, TITLE, heading, paragraph, stacked
from lastlook.sheet.layout.frame import Framing, framed
from lastlook.sheet.layout.page import Page, Sheet
from lastlook.sheet.manner import Manner
from lastlook.sheet.mark import Group, Item
from lastlook.sheet.tile import Field, Window, fields, join_tapes, map_of, squares, tile_page, window_of


@dataclass(frozen=True)
class Pattern:
    """The pieces of one garment for one wearer."""

    title: str
    size: str
    """Printed on every page and piece: 'for Ada, waist 71 cm', or a size."""
    pieces: tuple[PaperPiece, ...]


def tiles(pattern: Pattern, manner: Manner) -> Sheet:
    """Return the true-size pages of a pattern: squares and map first, then tile by tile."""
    window = window_of(manner.paper)
    all_fields = fields(pattern.pieces, window)
    total = 2 + sum(len(field.tiles) for field in all_fields)
    framing = Framing(f"{pattern.title}: paper pieces", pattern.size, manner)
    out = [_squares(framing, total), _map(framing, all_fields, window, total)]
    foot = f"{pattern.title} · {pattern.size}"
    for spot, field in enumerate(all_fields):
        inside: tuple[Item, ...] = (*field.items((pattern.size,), window), *join_tapes(field, window, manner.units))
        drawn = Group(inside, shared=f"field-{spot}")
        for tile in field.tiles:
            place = f"page {len(out) + 1} of {total}"
            out.append(tile_page(field, tile, drawn, window, (foot, place, manner)))
    return Sheet(framing.title, tuple(out))


def _squares(framing: Framing, total: int) -> Page:
    wide, high = framing.room_mm
    said = [
        heading("Measure before you cut", wide, TITLE),
        paragraph(
            "Print this page first, at its full size: 100 %, nothing fitted to the page. Lay a ruler, not a tape, "
            "along both squares, across and down. If a side is off by as much as half a millimetre, the printer has "
            "changed the size; set that right before printing the rest. Every page carries a short tape at its "
            "foot for the same look.",
            wide,
            BODY,
        ),
    ]
    top = stacked(said)
    y = top.height_mm + 3
    step = (wide - 101.6 - 4, min(103.0, high - y - 101.6))
    return framed(framing, (*top.items, *squares(2, y, step)), (1, total), "Measure before you cut")


def _map(framing: Framing, all_fields: tuple[Field, ...], window: Window, total: int) -> Page:
    wide, high = framing.room_mm
    top = stacked([heading("The map", wide, TITLE), *(paragraph(text, wide, BODY) for text in _how(framing.manner))])
    items, _ = map_of(all_fields, window, (wide, high - top.height_mm - 4))
    below = Group(items, (1, 0, 0, 1, 0, top.height_mm + 2))
    return framed(framing, (*top.items, below), (2, total), "The map")


def _how(manner: Manner) -> tuple[str, ...]:
    long = "60 mm" if manner.units is Units.CM else "2½ inches"
    return (
        "Lay the pages of one piece out as the map shows them. Cut each along its red broken lines, lay it over "
        "its neighbour up to the dotted line, and glue it.",
        f"A short tape crosses every join. Where it runs on unbroken and measures {long}, the join is true. "
        "The last look comes here: paper is joined again, cloth is not.",
    )
