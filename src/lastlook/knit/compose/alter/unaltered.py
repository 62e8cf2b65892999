"""Pieces that can't be rewritten yet, each with why: what turns inside a row, joins again, or grows at markers.

Their counts hang together in ways that a change of stitches and rows alone would break.
"""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.compose.alter.changes import is_band
from lastlook.knit.worked import Act, Side, WorkedPiece, WorkedRow

MOST_PARTS = 2
PLACED = 4
"""So many shapings told each for itself in one round are placed at markers, not spread."""


def unaltered(pieces: Sequence[WorkedPiece]) -> Finding | None:
    """Return the first piece that can't be rewritten, as a finding; None where all can."""
    for piece in pieces:
        why = _why(piece, pieces)
        if why:
            whole = piece.part_of or piece.name
            return Finding(
                "piece-not-altered",
                Certainty.UNKNOWN,
                f"{whole} can't be rewritten for other counts yet: {why}.",
                "Its counts hang together at that place, and scaling them each for itself would tear them apart.",
                "Knit it as printed, or have the garment composed from measures with `lastlook design`.",
                where=Where(piece=whole),
            )
    return None


def _why(piece: WorkedPiece, pieces: Sequence[WorkedPiece]) -> str | None:
    if not piece.rows:
        return None
    parts = [one for one in pieces if one.part_of == piece.name]
    if len(parts) not in (0, MOST_PARTS) or (parts and piece.part_of is not None):
        return f"it divides into {len(parts)} parts"
    if piece.part_of is None and piece.cast_on is None and piece.rows[0].before and not is_band(piece):
        return "it goes on from stitches that another piece left"
    if any(one.act is Act.PICK_UP for row in piece.rows[1:] for one in row.shapings if not _is_pocket(row)):
        return "stitches are taken up again within it"
    last = piece.rows[-1] if parts else None
    if any(row.used != row.before for row in piece.rows if row is not last):
        return "it turns before the end of a row"
    if any(_is_placed(row) for row in piece.rows):
        return "its increases or decreases are placed round by round at markers"
    return None


def _is_placed(row: WorkedRow) -> bool:
    return row.side is Side.ROUND and len(row.shapings) >= PLACED


def _is_pocket(row: WorkedRow) -> bool:
    return {one.act for one in row.shapings} == {Act.HOLD, Act.PICK_UP}
