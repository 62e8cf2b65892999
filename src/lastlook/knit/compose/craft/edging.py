"""How a piece begins: its edging on the needle, and the row that brings its count to what the fabric above wants."""

from __future__ import annotations

from dataclasses import replace

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import to_repeat
from lastlook.knit.compose.craft.needle import Needle
from lastlook.knit.compose.craft.row_words import TEXTURED
from lastlook.knit.compose.craft.write import EVENED
from lastlook.knit.worked import Act, Shaping, WorkedPiece

FOLD_ROWS = 2
"""A hem's turning ridge, and the row after it."""


def edged(asked: Asked, stitches: int, rows: int) -> Needle:
    """Return a needle with the edging worked and so many stitches on it.

    `rows` are those that are seen; a hem's facing comes before them.
    """
    edging = asked.edging
    cast_on = stitches if asked.texture is None else to_repeat(stitches, edging.repeat, edging.extra)
    needle = Needle(cast_on)
    change = stitches - cast_on
    needle.even(edging.structure, asked.facing_rows + rows - (1 if change else 0))
    if change:
        act = Act.INCREASE if change > 0 else Act.DECREASE
        needle.row(EVENED, (Shaping(act, "inside", abs(change)),))
    needle.mark("edging")
    return needle


def edging_mm(asked: Asked, wanted_mm: float) -> float:
    """Return how high an edging stands: of a hem only its fold shows, the rest is the fabric's."""
    return 0.0 if asked.edging.structure == "hem" else wanted_mm


def in_fabric(piece: WorkedPiece, asked: Asked) -> WorkedPiece:
    """Return a piece in the garment's own stitch pattern, where it has one; what no repeat goes across stays plain."""
    if asked.texture is None:
        return piece
    least = asked.texture.multiple + asked.texture.extra + 2
    rows = tuple(
        replace(row, structure=TEXTURED) if row.structure == "stockinette" and row.before >= least else row
        for row in piece.rows
    )
    return replace(piece, rows=rows)
