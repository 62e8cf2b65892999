"""A composed raglan as a leaflet: the whole page in the trade's notation, one size, every count printed."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.row_words import row_words
from lastlook.knit.compose.craft.write import edging_words, ending, write_piece, write_rows
from lastlook.knit.compose.raglan.border import crochet_border
from lastlook.knit.compose.raglan.counts import RaglanCounts
from lastlook.knit.compose.raglan.finishing import (
    HOLE_STITCHES,
    NECKBAND_MM,
    PickUp,
    band_rows,
    buttonholes,
    front_pick_up,
    neck_pick_ups,
)
from lastlook.knit.worked import WorkedPiece
from lastlook.quantity import Missing, Units, write_length

WIDTH = 78


def write_raglan(title: str, pieces: Sequence[WorkedPiece], counts: RaglanCounts, asked: Asked, size: str) -> str:
    """Return the leaflet."""
    parts = [title.upper(), *page_head(asked, size)]
    for piece in pieces:
        if piece.part_of is None:
            parts.append("\n".join([heading(piece), *body_of(piece, pieces)]))
    parts += bands(counts, asked)
    parts.append(_sewing(asked))
    return "\n\n".join(wrapped(part) for part in parts) + "\n"


def page_head(asked: Asked, size: str) -> list[str]:
    """Return size, gauge and materials."""
    rows = asked.gauge.rows
    row_words_ = "" if isinstance(rows, Missing) else f" and {rows.best:g} rows"
    return [
        f"SIZE: {size}.",
        f"GAUGE: {asked.gauge.stitches.best:g} sts{row_words_} = 10 cm in stockinette st on larger needles.",
        "MATERIALS: Smaller needles for edgings, larger needles for the rest. Stitch holders.",
    ]


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
    lead = _counted(row_words(row), row.before)
    lines = [f"SHAPE NECK: Next row: {lead}, turn, leaving remaining {rest} sts on a stitch holder -- {row.after} sts."]
    lines += [*write_rows(first.rows[1:]), *ending(first)]
    held = f"Slip center {center} sts on to a stitch holder. " if center else ""
    again = second.rows[0]
    lines.append(f"{held}With right side facing, join yarn to remaining {again.before} sts.")
    return [*lines, *write_rows(second.rows), *ending(second)]


def _counted(words: str, stitches: int) -> str:
    """Return a row that turns before the end of the needle: its last 'k to end' as a number."""
    if words == "Knit":
        return f"K {stitches}"
    edge = re.match(r"K (\d+), ", words)
    used = 2 + (int(edge.group(1)) if edge else 0)
    return words.removesuffix("k to end") + f"k {stitches - used}"


def bands(counts: RaglanCounts, asked: Asked) -> list[str]:
    """Return neckband and front bands, or the crocheted border in their place."""
    if asked.crochet_per_10cm and asked.opening == "cardigan":
        return [crochet_border(counts, asked, asked.crochet_per_10cm)]
    neck = neck_pick_ups(counts, asked)
    total = sum(one.stitches for one in neck)
    rows = band_rows(asked, NECKBAND_MM)
    told = ", pick up and k ".join(f"{one.stitches} sts along {one.where}" for one in neck)
    edge = edging_words("rib 1x1", rows)
    seams = "Sew raglan seams. "
    if asked.construction != "in pieces":
        seams = ""
        edge = edge if asked.opening == "cardigan" else f"Join in a round. {edge.replace(' rows', ' rounds')}"
    elif asked.opening == "pullover":
        seams = "Sew raglan seams, leaving left back raglan seam open. "
    out = [
        f"NECKBAND\n{seams}With right side facing and smaller needles, pick up and k {told}"
        f" -- {total} sts. {edge} Bind off loosely in ribbing."
    ]
    if asked.opening == "cardigan":
        out += _front_bands(counts, asked)
    return out


def _front_bands(counts: RaglanCounts, asked: Asked) -> list[str]:
    left, right = front_pick_up(counts, asked, "left"), front_pick_up(counts, asked, "right")
    rows = band_rows(asked)
    start = "With right side facing and smaller needles, pick up and k"
    plain = f"LEFT FRONT BAND\n{start} {left.stitches} sts along left front edge."
    plain += f" {edging_words('rib 1x1', rows)} Bind off in ribbing."
    holes = buttonholes(right.stitches, asked)
    first = rows // 2 - 1
    hole = "yo, k 2 tog"
    row = (
        f"Next row (buttonhole row): Rib {holes.hem_end}, * {hole}, rib {holes.between}; repeat from *"
        f" {_more(holes.holes - 2)}, {hole}, rib {holes.neck_end} -- {right.stitches} sts."
    )
    if holes.holes == 2:
        row = (
            f"Next row (buttonhole row): Rib {holes.hem_end}, {hole}, rib {holes.between}, {hole},"
            f" rib {holes.neck_end} -- {right.stitches} sts."
        )
    assert (
        holes.hem_end + holes.neck_end + holes.holes * HOLE_STITCHES + (holes.holes - 1) * holes.between
        == right.stitches
    )
    return [
        plain,
        f"RIGHT FRONT BAND\n{start} {right.stitches} sts along right front edge. {edging_words('rib 1x1', first)}"
        f"\n{row}\n{edging_words('rib 1x1', rows - first - 1)} Bind off in ribbing. Sew on {holes.holes} buttons.",
    ]


def _more(times: int) -> str:
    return {0: "", 1: "once more", 2: "twice more"}.get(times, f"{times} times more")


def _sewing(asked: Asked) -> str:
    block = "Block the pieces to measurements before sewing, but not the ribbing."
    order = "Sew side and sleeve seams in one line." if asked.sleeve != "none" else "Sew side seams."
    return f"FINISHING\n{block} {order} Press seams lightly on the wrong side."


def pick_up_notes(picks: Sequence[PickUp]) -> list[str]:
    """Return how each pick-up along row ends is spread."""
    return [one.how for one in picks if one.how]


def wrapped(part: str) -> str:
    """Return a part with its lines wrapped as a page prints them."""
    return "\n".join(textwrap.fill(line, WIDTH, break_long_words=False) for line in part.splitlines())


def size_words(bust_mm: float) -> str:
    """Return the size a composed leaflet names: the bust it is for."""
    return f"{write_length(bust_mm, Units.CM)} bust"
