"""The body of one size with the sleeves of another: the sleeves keep their width and get the body's rows above."""

from __future__ import annotations

from dataclasses import replace

from lastlook.knit.compose.alter.changes import is_body, is_sleeve
from lastlook.knit.compose.alter.divided import set_out
from lastlook.knit.compose.alter.profile import underarm_row
from lastlook.knit.compose.alter.recompose import Stretching, recompose
from lastlook.knit.compose.alter.scale import Scale
from lastlook.knit.reading import SizeReading
from lastlook.knit.worked import WorkedPiece


def with_sleeves(body: SizeReading, sleeves: SizeReading) -> SizeReading:
    """Return the first size with the second one's sleeves, whose lines meet the body's row for row."""
    rows = _rows_above(body)
    pieces: list[WorkedPiece] = []
    for piece in body.pieces:
        other = sleeves.piece(piece.name) if is_sleeve(piece) else None
        if other is None:
            pieces.append(piece)
            continue
        (plain,) = set_out([other])[:1]
        more = rows - (len(plain.rows) - underarm_row(plain)) if rows else 0
        pieces.append(recompose(plain, Scale(), Stretching(above_rows=2 * round(more / 2))))
    name = f"{body.size} with the sleeves of {sleeves.size}"
    return replace(body, size=name, pieces=tuple(pieces))


def _rows_above(body: SizeReading) -> int:
    """Return the rows from underarm to top of the back, or of the first body piece that is bound off."""
    for piece in sorted((one for one in body.pieces if is_body(one)), key=lambda one: one.name.lower() != "back"):
        above = len(piece.rows) - underarm_row(piece)
        if above:
            return above
    return 0
