"""Pieces whose underarms lie a row or two apart on purpose keep just that distance at another gauge."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from lastlook.knit.compose.alter.changes import is_body
from lastlook.knit.compose.alter.shape.profile import underarm_row
from lastlook.knit.compose.alter.shape.recompose import Stretching
from lastlook.knit.compose.alter.shape.scale import Scale
from lastlook.knit.compose.alter.shape.shoulder import shoulder_row
from lastlook.knit.worked import WorkedPiece

APART = 2
"""Rows by which mirrored pieces may lie apart, since a bind-off falls at the beginning of a row."""


def settled(pieces: Sequence[WorkedPiece], scale: Scale, asked: Mapping[int, Stretching]) -> dict[int, Stretching]:
    """Return what each piece gets, with the rows that rounding would push mates further apart given back."""
    out = dict(asked)
    body = [piece for piece in pieces if is_body(piece) and piece.part_of is None and underarm_row(piece)]
    divided = {piece.part_of for piece in pieces}
    for piece, rows in _given(body, [underarm_row(piece) for piece in body], scale):
        out[id(piece)] = replace(out[id(piece)], below_rows=out[id(piece)].below_rows + rows)
    whole = [piece for piece in body if piece.name not in divided and "shoulder" in dict(piece.landmarks)]
    for piece, rows in _given(whole, [_above(piece) for piece in whole], scale):
        out[id(piece)] = replace(out[id(piece)], above_rows=out[id(piece)].above_rows + rows)
    return out


def _given(pieces: Sequence[WorkedPiece], rows: Sequence[int], scale: Scale) -> list[tuple[WorkedPiece, int]]:
    """Return the rows that a piece gets beyond scaling, to lie as far from the highest one as it did."""
    highest = max(rows, default=0)
    return [
        (piece, scale.height(highest) - (highest - one) - scale.height(one))
        for piece, one in zip(pieces, rows, strict=True)
        if 0 < highest - one <= APART
    ]


def _above(piece: WorkedPiece) -> int:
    return shoulder_row(piece) - underarm_row(piece)
