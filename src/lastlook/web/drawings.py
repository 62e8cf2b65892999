"""Drawings of an outfit's garments, as SVG for a page."""

from __future__ import annotations

from lastlook import knit, outfit, sheet
from lastlook.quantity import Missing

KNITTED_TIMES = 0.14
PAPER_TIMES = 0.11
TABLE_MM = 150.0


def knitted(one: outfit.Knitted, manner: sheet.Manner) -> list[tuple[str, str]]:
    """Return each worked piece with its drawing; those that no gauge gives a shape are left out."""
    gauge, out = one.working_gauge, []
    if gauge is None or isinstance(gauge.rows, Missing):
        return []
    for piece in one.pieces:
        shape = knit.outline(piece, gauge)
        if shape is not None:
            drawing = sheet.draw_knitted(sheet.Knitted(piece, shape, gauge), KNITTED_TIMES, manner)
            make = f", make {piece.make}" if piece.make > 1 else ""
            out.append((sheet.svg(drawing), f"{piece.name}{make}"))
    return out


def paper(one: outfit.Sewn, manner: sheet.Manner) -> str | None:
    """Return the paper pieces side by side, None where there are none."""
    pieces = one.drafted.pieces
    return sheet.svg(sheet.picture(pieces, PAPER_TIMES, manner)) if pieces else None


def table(one: outfit.Sewn, manner: sheet.Manner) -> str | None:
    """Return the cutting table, None where nothing is laid."""
    found = None if isinstance(one.placements, Missing) else sheet.table_of(one, one.placements)
    return sheet.svg(sheet.draw_table(found, TABLE_MM / found.length_mm, manner)) if found else None
