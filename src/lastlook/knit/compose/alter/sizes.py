"""The body of one size with the sleeves of another: the sleeves keep their width and get the body's rows above."""

from __future__ import annotations

from dataclasses import replace

from lastlook.knit.compose.alter.changes import is_body, is_sleeve
from lastlook.knit.compose.alter.shape.divided import set_out
from lastlook.knit.compose.alter.shape.profile import underarm_row
from lastlook.knit.compose.alter.shape.recompose import Stretching, recompose
from lastlook.knit.compose.alter.shape.scale import Scale
from lastlook.knit.compose.craft.needle import Needle, dec
from lastlook.knit.reading import SizeReading
from lastlook.knit.worked import Act, Side, WorkedPiece


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
        longer = recompose(plain, Scale(), Stretching(above_rows=2 * round(more / 2)))
        pieces.append(_bound_off_like(longer, _underarm(body)))
    name = f"{body.size} with the sleeves of {sleeves.size}"
    return replace(body, size=name, pieces=tuple(pieces))


def _underarm(body: SizeReading) -> int:
    """Return what is bound off at one underarm of the body; nothing where it is not."""
    for piece in (one for one in body.pieces if is_body(one)):
        for row in piece.rows[underarm_row(piece) :]:
            off = next((one for one in row.shapings if one.act is Act.BIND_OFF), None)
            if off is not None:
                return off.stitches
    return 0


def _bound_off_like(piece: WorkedPiece, underarm: int) -> WorkedPiece:
    """Return a sleeve that binds off as the body does, the difference taken off, or kept, at the first chance
    above."""
    foot = underarm_row(piece)
    needle = Needle(piece.cast_on or 0, piece.rows[0].side)
    owing: dict[str, int | None] = {"left": None, "right": None}
    for spot, row in enumerate(piece.rows):
        shapings = list(row.shapings)
        for edge, owed in owing.items():
            at = next((number for number, one in enumerate(shapings) if one.edge == edge), None)
            if spot >= foot and owed is None and at is not None and shapings[at].act is Act.BIND_OFF and underarm:
                owing[edge] = shapings[at].stitches - underarm
                shapings[at] = replace(shapings[at], stitches=underarm)
            elif owed and owed > 0 and at is None and row.side is Side.RIGHT:
                shapings.append(dec(edge))
                owing[edge] = owed - 1
            elif owed and owed < 0 and at is not None and shapings[at].act is Act.DECREASE:
                del shapings[at]
                owing[edge] = owed + 1
        needle.row(row.structure, shapings)
    edges = tuple(
        replace(edge, stitches=underarm) if "underarm" in edge.name.edge and underarm else edge for edge in piece.edges
    )
    return replace(piece, rows=tuple(needle.rows), end_stitches=needle.stitches, edges=edges)


def _rows_above(body: SizeReading) -> int:
    """Return the rows from underarm to top of the back, or of the first body piece that is bound off."""
    for piece in sorted((one for one in body.pieces if is_body(one)), key=lambda one: one.name.lower() != "back"):
        above = len(piece.rows) - underarm_row(piece)
        if above:
            return above
    return 0
