"""Figures that stand in columns, one under each size: `cast on sts 94 98 102`, `times | 10 | 11 | 12`.

A leaflet set as a table prints the unit first and then one bare number for each size.
In the canonical text the figure comes before its unit, as it does everywhere else.
"""

from __future__ import annotations

from dataclasses import replace

from lastlook.leaflet.trade.lexeme import Lexeme
from lastlook.leaflet.trade.sizelist import write_values

UNITS = frozenset({"st", "inch", "in", "cm", "x", "row", "rnd", "sc", "dc"})
SKIPPED = frozenset({"bar", "."})
"""What may stand between the columns: the rule of a table, the stop of an abbreviation."""
NEAREST = 6
"""Bare numbers that are no further apart than this many signs belong to one line of the table."""


def columns(stream: list[Lexeme], sizes: int) -> list[Lexeme]:
    """Join a unit and the columns after it into one figure with its unit; anything else stays as it is."""
    if sizes < 2:
        return stream
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        one = stream[spot]
        found = _row_of(stream, spot + 1, sizes) if one.canon in UNITS else None
        if found is None:
            out.append(one)
            spot += 1
            continue
        values, last, spot = found
        if out and out[-1].figures:
            out.append(replace(one, canon="--", end=one.start))
        canon = write_values(values)
        out.append(replace(one, canon=canon, end=stream[last].end, figures=values))
        unit = "inch" if one.canon == "in" else one.canon
        out.append(replace(one, canon=unit, end=stream[last].end, figures=()))
        if spot < len(stream) and stream[spot].capital:
            out.append(replace(stream[last], canon=".", start=stream[last].end, figures=()))
    return out


def _row_of(stream: list[Lexeme], spot: int, sizes: int) -> tuple[tuple[float, ...], int, int] | None:
    """Return the values from here if there is exactly one for each size, the last one's place, and where to go on."""
    values: list[float] = []
    last = spot - 1
    while spot < len(stream):
        one = stream[spot]
        if one.canon in SKIPPED:
            spot += 1
            continue
        if len(one.figures) != 1 or len(values) > sizes or (values and one.start - stream[last].end > NEAREST):
            break
        values.append(one.figures[0])
        last, spot = spot, spot + 1
    return (tuple(values), last, spot) if len(values) == sizes else None
