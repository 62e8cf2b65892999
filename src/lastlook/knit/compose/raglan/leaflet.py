"""A composed raglan as a leaflet: the whole page in the trade's notation, one size, every count printed."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.row_words import row_words
from lastlook.knit.compose.craft.write import ending, write_piece, write_rows
from lastlook.knit.worked import WorkedPiece, WorkedRow
from lastlook.quantity import Missing, Units, write_length

WIDTH = 78


def write_raglan(title: str, pieces: Sequence[WorkedPiece], bands: Sequence[str], asked: Asked, size: str) -> str:
    """Return the leaflet."""
    parts = [title.upper(), *page_head(asked, size)]
    for piece in pieces:
        if piece.part_of is None:
            parts.append("\n".join([heading(piece), *body_of(piece, pieces)]))
    parts += bands
    parts.append(_sewing(asked))
    return "\n\n".join(wrapped(part) for part in parts) + "\n"


def page_head(asked: Asked, size: str) -> list[str]:
    """Return size, gauge and materials."""
    rows = asked.gauge.rows
    row_words_ = "" if isinstance(rows, Missing) else f" and {rows.best:g} rows"
    fabric = "pattern" if asked.texture else "stockinette st"
    head = [
        f"SIZE: {size}.",
        f"GAUGE: {asked.gauge.stitches.best:g} sts{row_words_} = 10 cm in {fabric} on larger needles.",
        "MATERIALS: Smaller needles for edgings, larger needles for the rest. Stitch holders.",
    ]
    return [*head, "\n".join([asked.texture.heading, *asked.texture.lines()])] if asked.texture else head


def heading(piece: WorkedPiece) -> str:
    """Return the heading of a piece, with how many to make."""
    return piece.name.upper() + (f" (make {piece.make})" if piece.make > 1 else "")


def body_of(piece: WorkedPiece, pieces: Sequence[WorkedPiece]) -> list[str]:
    """Return the lines of a piece, the parts it divides into told after it."""
    lines = write_piece(piece)
    sides = [one for one in pieces if one.part_of == piece.name]
    if len(sides) == 2:
        lines += two_sides(piece, sides[0], sides[1])
    return lines


def two_sides(piece: WorkedPiece, first: WorkedPiece, second: WorkedPiece) -> list[str]:
    """Tell how the work divides at the neck, and both sides in full."""
    row = first.rows[0]
    center = piece.end_stitches - 2 * row.before
    rest = piece.end_stitches - row.before
    lead = _counted(row)
    lines = [f"SHAPE NECK: Next row: {lead}, turn, leaving remaining {rest} sts on a stitch holder -- {row.after} sts."]
    lines += [*write_rows(first.rows[1:]), *ending(first)]
    held = f"Slip center {center} sts on to a stitch holder. " if center else ""
    again = second.rows[0]
    lines.append(f"{held}With right side facing, join yarn to remaining {again.before} sts.")
    return [*lines, *write_rows(second.rows), *ending(second)]


def _counted(row: WorkedRow) -> str:
    """Return a row that turns before the end of the needle: its last 'k to end' as a number."""
    words = row_words(row)
    if words in ("Knit", "Pattern across"):
        return f"{'K' if words == 'Knit' else 'Pattern'} {row.before}"
    edge = re.match(r"K (\d+), ", words)
    used = sum(one.stitches + 1 for one in row.shapings) + (int(edge.group(1)) if edge else 0)
    verb = "pattern" if words.endswith("pattern to end") else "k"
    return words.removesuffix(f"{verb} to end") + f"{verb} {row.before - used}"


def _sewing(asked: Asked) -> str:
    block = "Block the pieces to measurements before sewing, but not the ribbing."
    order = "Sew side and sleeve seams in one line." if asked.sleeve != "none" else "Sew side seams."
    return f"FINISHING\n{block} {order} {turned(asked)}Press seams lightly on the wrong side."


def turned(asked: Asked) -> str:
    """Return what is done with hems, as a sentence; nothing where there are none."""
    return "Turn hems to wrong side and sew in place. " if asked.edging.structure == "hem" else ""


def wrapped(part: str) -> str:
    """Return a part with its lines wrapped as a page prints them."""
    return "\n".join(textwrap.fill(line, WIDTH, break_long_words=False) for line in part.splitlines())


def size_words(bust_mm: float) -> str:
    """Return the size a composed leaflet names: the bust it is for."""
    return f"{write_length(bust_mm, Units.CM)} bust"
