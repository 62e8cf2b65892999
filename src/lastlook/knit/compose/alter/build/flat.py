"""What is worked in the round, worked in rows instead, with a stitch more at each edge for the seam."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.compose.composed import cant_hold
from lastlook.knit.worked import Side, WorkedPiece, WorkedRow

SEAM = 2
"""Stitches of a seam, one at each edge (common practice, no source)."""


def in_pieces(pieces: Sequence[WorkedPiece]) -> tuple[tuple[WorkedPiece, ...], Finding] | Finding:
    """Return the pieces with every round a row, and what that changes."""
    turned = [piece.name for piece in pieces if any(row.side is Side.ROUND for row in piece.rows)]
    if not turned:
        return cant_hold("Nothing here is worked in the round.", "Every piece is worked in rows.", "Leave it so.")
    out = tuple(_rows(piece) if piece.name in turned else piece for piece in pieces)
    return out, _seamed(turned)


def _rows(piece: WorkedPiece) -> WorkedPiece:
    """Return a piece whose rounds are rows; those that were rows already keep their counts."""
    rows = tuple(_row(row, spot) for spot, row in enumerate(piece.rows))
    in_round = all(row.side is Side.ROUND for row in piece.rows)
    end = piece.end_stitches + (SEAM if in_round else 0)
    cast_on = None if piece.cast_on is None else piece.cast_on + SEAM
    return replace(piece, cast_on=cast_on, rows=rows, end_stitches=end)


def _row(row: WorkedRow, spot: int) -> WorkedRow:
    if row.side is not Side.ROUND:
        return row
    counts = {name: getattr(row, name) + SEAM for name in ("before", "used", "gives", "after")}
    return replace(row, side=Side.WRONG if spot % 2 else Side.RIGHT, **counts)


def _seamed(names: Sequence[str]) -> Finding:
    return Finding(
        "rounds-as-rows",
        Certainty.NOTE,
        f"{', '.join(dict.fromkeys(names))}: worked in rows, with one stitch more at each edge for the seam.",
        "A seam takes a stitch of each edge, and wrong-side rows are purled where rounds were knitted.",
        where=Where(piece=names[0]),
    )
