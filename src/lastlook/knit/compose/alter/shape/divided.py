"""A piece that divides, set out alike whoever worked it: the whole up to the dividing row, then each side
from it on.

A leaflet's reading counts the dividing row to the piece, where the first side is worked off; here both sides begin
with it, so that they can be spread and mirrored alike.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lastlook.knit.compose.alter.shape.plain import plain
from lastlook.knit.compose.alter.shape.profile import signed
from lastlook.knit.worked import Act, Ended, Shaping, WorkedPiece, WorkedRow

START = "starts after row"
PARTING = (Act.HOLD, Act.BIND_OFF)


def set_out(pieces: Sequence[WorkedPiece]) -> list[WorkedPiece]:
    """Return the pieces that have rows, every divided one with both its sides from the dividing row on."""
    out: list[WorkedPiece] = []
    pieces = [plain(piece) for piece in pieces]
    for piece in pieces:
        parts = [one for one in pieces if one.part_of == piece.name and one.rows]
        if not piece.rows or piece.part_of is not None:
            continue
        row = piece.rows[-1]
        short = replace(piece, rows=piece.rows[:-1], end_stitches=row.before, ended=Ended.OPEN, landmarks=_kept(piece))
        if len(parts) == 2 and _parts_at_center(piece, parts[0]):
            out += [short, *(_with_row(part, row, ()) for part in parts)]
        elif len(parts) == 2 and _worked_off(piece, parts[0]):
            out += [short, _with_row(parts[0], row, row.shapings), parts[1]]
        else:
            out += [piece, *parts]
    return out


def _parts_at_center(piece: WorkedPiece, first: WorkedPiece) -> bool:
    """Whether the last row takes stitches off at the center and nothing else, so that both sides have it plain."""
    shapings = piece.rows[-1].shapings
    taking = bool(shapings) and all(one.edge == "inside" and one.act in PARTING for one in shapings)
    return taking and dict(first.landmarks).get(START) == len(piece.rows)


def _worked_off(piece: WorkedPiece, first: WorkedPiece) -> bool:
    """Whether the first side was worked off in the piece's own last row."""
    return dict(first.landmarks).get(START) == len(piece.rows) and first.rows[0].before < piece.rows[-1].after


def _with_row(part: WorkedPiece, row: WorkedRow, shapings: tuple[Shaping, ...]) -> WorkedPiece:
    """Return a side with the dividing row before its own, on its own stitches."""
    after = part.rows[0].before
    if part.rows[0].side is row.side:
        return part
    before = after + sum(signed(one) for one in shapings)
    first = replace(row, number=1, before=before, used=before, gives=after, after=after, shapings=shapings)
    rows = tuple(replace(one, number=number) for number, one in enumerate((first, *part.rows), 1))
    return replace(part, rows=rows, landmarks=())


def _kept(piece: WorkedPiece) -> tuple[tuple[str, int], ...]:
    return tuple((name, row) for name, row in piece.landmarks if row < len(piece.rows))
