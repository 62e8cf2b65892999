"""What was written, read again: which rows do not come out as they were worked."""

from __future__ import annotations

from lastlook import leaflet as paper
from lastlook.knit.assemble import plan
from lastlook.knit.choose import Reader
from lastlook.knit.prove import finished
from lastlook.knit.worked import WorkedPiece
from lastlook.quantity import Gauge


def read_again(text: str, gauge: Gauge | None) -> tuple[WorkedPiece, ...]:
    """Return the pieces that the text gives, in its only size."""
    leaflet = paper.read(text)
    outcome = Reader(leaflet, plan(leaflet), gauge or leaflet.gauge).work({})[0]
    return tuple(piece for hands in outcome.pieces.values() for piece in finished(hands, gauge))


def strays(pieces: tuple[WorkedPiece, ...], again: tuple[WorkedPiece, ...]) -> list[tuple[str, int]]:
    """Return piece and row where the counts first differ, piece by piece; nothing where all are the same."""
    out = []
    for number, piece in enumerate(pieces):
        twin = again[number] if number < len(again) else None
        if not any(row.after for row in piece.rows):
            continue
        mine = [row.after for row in piece.rows]
        theirs = [row.after for row in twin.rows] if twin else []
        if mine != theirs:
            same = next((n for n, (a, b) in enumerate(zip(mine, theirs, strict=False)) if a != b), len(theirs))
            row = piece.rows[min(same, len(piece.rows) - 1)].number if piece.rows else 0
            out.append((piece.name, row))
    if len(again) > len(pieces):
        out.append((again[len(pieces)].name, 0))
    return out
