"""Drawings of an outfit's garments, as SVG for a page."""

from __future__ import annotations

from lastlook import knit, outfit, sheet
from lastlook.paper import PaperPiece
from lastlook.quantity import Gauge, Missing

KNITTED_TIMES = 0.14
PAPER_TIMES = 0.11
HOOP_TIMES = 0.12
OVERLAY_TIMES = 0.16
TABLE_MM = 150.0


def knitted(one: outfit.Knitted, manner: sheet.Manner) -> list[tuple[str, str]]:
    """Return each worked piece with its drawing; those that no gauge gives a shape are left out."""
    return worked(one.pieces, one.working_gauge, manner)


def worked(pieces: tuple[knit.WorkedPiece, ...], gauge: Gauge | None, manner: sheet.Manner) -> list[tuple[str, str]]:
    """Return pieces with their drawings at a gauge."""
    out: list[tuple[str, str]] = []
    if gauge is None or isinstance(gauge.rows, Missing):
        return []
    for piece in pieces:
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


def hoops(derived: outfit.Derived, manner: sheet.Manner) -> list[tuple[str, str]]:
    """Return the girths of each garment round the body, with the garment's name."""
    levels: dict[str, list[sheet.Hoop]] = {}
    for level in outfit.fit_table(derived):
        if level.measure.endswith("_girth"):
            levels.setdefault(level.garment, []).append(_hoop(level))
    return [(sheet.svg(sheet.draw_hoops(tuple(some), HOOP_TIMES, manner)), garment) for garment, some in levels.items()]


def _hoop(level: outfit.Level) -> sheet.Hoop:
    body, gets = level.body, level.gets
    return sheet.Hoop(
        level.name,
        None if isinstance(body, Missing) else body.mm.best,
        None if isinstance(gets, Missing) else gets.best,
        0.0 if isinstance(gets, Missing) else gets.plus_minus,
        "not known yet" if isinstance(body, Missing) or isinstance(gets, Missing) else "",
    )


def overlays(
    before: tuple[PaperPiece, ...], after: tuple[PaperPiece, ...], manner: sheet.Manner
) -> list[tuple[str, str]]:
    """Return every piece that differs, one version over the other, with its name."""
    known = {piece.name: piece for piece in before}
    pairs = [(known[piece.name], piece) for piece in after if piece.name in known]
    return [
        (sheet.svg(sheet.draw_overlay(old, new, OVERLAY_TIMES, manner)), new.name)
        for old, new in pairs
        if sheet.changes(old, new)
    ]


def table(one: outfit.Sewn, manner: sheet.Manner) -> str | None:
    """Return the cutting table, None where nothing is laid."""
    found = None if isinstance(one.placements, Missing) else sheet.table_of(one, one.placements)
    return sheet.svg(sheet.draw_table(found, TABLE_MM / found.length_mm, manner)) if found else None
