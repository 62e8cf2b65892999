"""An altered leaflet as a page: every piece row by row in one size, in the trade's notation."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.knit.compose.alter.shape.profile import underarm_row
from lastlook.knit.compose.alter.written.sides import two_sides
from lastlook.knit.compose.alter.written.words import run
from lastlook.knit.compose.craft.write import ending, upper_heading
from lastlook.knit.compose.raglan.leaflet import heading, wrapped
from lastlook.knit.worked import Act, Ended, Side, WorkedPiece, WorkedRow
from lastlook.quantity import Gauge, Missing

EDGINGS = ("rib", "garter")


def write_altered(title: str, pieces: Sequence[WorkedPiece], gauge: Gauge, size: str) -> str:
    """Return the leaflet."""
    rows = "" if isinstance(gauge.rows, Missing) else f" and {round(gauge.rows.best, 1):g} rows"
    parts = [
        title.upper(),
        f"SIZE: {size}.",
        f"GAUGE: {round(gauge.stitches.best, 1):g} sts{rows} = 10 cm in stockinette st on larger needles.",
    ]
    for piece in pieces:
        if piece.part_of is None:
            parts.append("\n".join([heading(piece), *_body(piece, pieces)]))
    parts.append("FINISHING\nBlock the pieces to measurements and sew the seams row for row.")
    return "\n\n".join(wrapped(part) for part in parts) + "\n"


def _body(piece: WorkedPiece, pieces: Sequence[WorkedPiece]) -> list[str]:
    lines = [_start(piece)]
    spot = 1 if piece.cast_on is None and piece.rows and _picks_up(piece.rows[0]) else 0
    underarm, smaller = underarm_row(piece), _begins_smaller(piece)
    while spot < len(piece.rows):
        end = spot
        while end < len(piece.rows) and _goes_on(piece, spot, end, underarm):
            end += 1
        told = run(piece.rows[spot:end])
        if spot and _turns(piece.rows[spot - 1], piece.rows[spot]):
            lines.append("Now work back and forth in rows.")
        if spot == underarm and upper_heading(piece):
            told[0] = f"{upper_heading(piece)} {told[0]}"
        elif smaller and not piece.rows[spot].structure.startswith(EDGINGS):
            told[0] = f"Change to larger needles. {told[0]}"
            smaller = False
        lines += told
        spot = end
    lines += _end(piece)
    sides = [one for one in pieces if one.part_of == piece.name]
    if len(sides) == 2:
        lines += two_sides(piece, sides[0], sides[1])
    return lines


def _goes_on(piece: WorkedPiece, spot: int, row: int, underarm: int) -> bool:
    """Whether a row belongs to the run that begins at `spot`: one fabric, and one side of the underarm."""
    alike = piece.rows[row].structure == piece.rows[spot].structure
    return alike and (spot >= underarm) == (row >= underarm)


def _turns(below: WorkedRow, row: WorkedRow) -> bool:
    return below.side is Side.ROUND and row.side is not Side.ROUND


def _begins_smaller(piece: WorkedPiece) -> bool:
    return piece.cast_on is not None and bool(piece.rows) and piece.rows[0].structure.startswith(EDGINGS)


def _start(piece: WorkedPiece) -> str:
    if piece.cast_on is not None:
        needles = "smaller" if _begins_smaller(piece) else "larger"
        joined = " Join in a round." if piece.rows and piece.rows[0].side is Side.ROUND else ""
        return f"With {needles} needles cast on {piece.cast_on} sts.{joined}"
    if piece.rows and _picks_up(piece.rows[0]):
        count = piece.rows[0].after
        return f"With right side facing and smaller needles, pick up and k {count} sts along the edge."
    return f"Slip {piece.rows[0].before if piece.rows else 0} sts from holder to needle."


def _end(piece: WorkedPiece) -> list[str]:
    if piece.ended is Ended.ON_HOLDER and piece.rows and piece.rows[-1].side is Side.ROUND:
        return ["Place all sts on a stitch holder."]
    if piece.ended is Ended.DRAWN_UP:
        return [f"Break yarn, draw through remaining {piece.end_stitches} sts and fasten off."]
    return ending(piece)


def _picks_up(row: WorkedRow) -> bool:
    return any(one.act is Act.PICK_UP for one in row.shapings)
