"""An altered leaflet as a page: every piece row by row in one size, in the trade's notation."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.knit.compose.alter.profile import underarm_row
from lastlook.knit.compose.craft.write import edging_words, ending, upper_heading, write_rows
from lastlook.knit.compose.raglan.leaflet import heading, two_sides, wrapped
from lastlook.knit.worked import Act, WorkedPiece, WorkedRow
from lastlook.quantity import Gauge, Missing

EDGINGS = ("rib", "garter")
PLAIN = ("stockinette", "reverse stockinette")


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
    underarm = underarm_row(piece)
    while spot < len(piece.rows):
        end = spot
        while end < len(piece.rows) and _goes_on(piece, spot, end, underarm):
            end += 1
        if spot == underarm and upper_heading(piece):
            rows = write_rows(piece.rows[spot:end])
            lines += [f"{upper_heading(piece)} {rows[0]}", *rows[1:]]
        else:
            lines += _run(piece.rows[spot:end], spot)
        spot = end
    lines += ending(piece)
    sides = [one for one in pieces if one.part_of == piece.name]
    if len(sides) == 2:
        lines += two_sides(piece, sides[0], sides[1])
    return lines


def _goes_on(piece: WorkedPiece, spot: int, row: int, underarm: int) -> bool:
    """Whether a row belongs to the run that begins at `spot`: one structure, and one side of the underarm."""
    alike = piece.rows[row].structure == piece.rows[spot].structure
    return alike and (spot >= underarm) == (row >= underarm)


def _start(piece: WorkedPiece) -> str:
    if piece.cast_on is not None:
        first = piece.rows[0].structure if piece.rows else ""
        needles = "smaller" if first.startswith(EDGINGS) else "larger"
        return f"With {needles} needles cast on {piece.cast_on} sts."
    if piece.rows and _picks_up(piece.rows[0]):
        count = piece.rows[0].after
        return f"With right side facing and smaller needles, pick up and k {count} sts along the edge."
    return f"Work on the {piece.rows[0].before if piece.rows else 0} sts of this part."


def _picks_up(row: WorkedRow) -> bool:
    return any(one.act is Act.PICK_UP for one in row.shapings)


def _run(rows: Sequence[WorkedRow], spot: int) -> list[str]:
    """Tell a run of rows of one structure; an edging that is shaped ends with its shaped rows in words."""
    structure = rows[0].structure
    if structure.startswith(EDGINGS):
        plain = [row for row in rows if not row.shapings]
        lines = [edging_words(structure, len(plain))] if plain else []
        return lines + write_rows([row for row in rows if row.shapings])
    if structure not in PLAIN and not any(row.shapings for row in rows):
        return [f"Work in {structure} for {len(rows)} rows."]
    change = "Change to larger needles. " if spot else ""
    named = "stockinette st" if structure == "stockinette" else structure
    lead = f"{change}Work in {named} as follows:"
    return [lead, *write_rows(rows)]
