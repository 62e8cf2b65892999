"""A piece that divides, written down: the row that turns, one side in full, the stitches left, the other side."""

from __future__ import annotations

import re
from collections.abc import Sequence

from lastlook.knit.compose.alter.written.words import run, sentence
from lastlook.knit.compose.craft.needle import begins
from lastlook.knit.compose.craft.row_words import row_words
from lastlook.knit.compose.craft.write import ending
from lastlook.knit.worked import Act, Shaping, Side, WorkedPiece, WorkedRow


def two_sides(piece: WorkedPiece, first: WorkedPiece, second: WorkedPiece) -> list[str]:
    """Tell how the work divides, and both sides in full."""
    row, again = first.rows[0], second.rows[0]
    center = piece.end_stitches - row.before - again.before
    rest = piece.end_stitches - row.before
    turning = _turning(row)
    lead = f"SHAPE NECK: Next row: {turning[:1].upper()}{turning[1:]}, turn"
    lines = [
        f"{lead}, leaving remaining {rest} sts on a stitch holder -- {row.after} sts.",
        *fabrics(first.rows[1:]),
        *ending(first),
    ]
    held = f"Slip center {center} sts on to a stitch holder. " if center else ""
    side = "right" if again.side is Side.RIGHT else "wrong"
    lines.append(f"{held}With {side} side facing, join yarn to remaining {again.before} sts.")
    return [*lines, *fabrics(second.rows), *ending(second)]


def fabrics(rows: Sequence[WorkedRow]) -> list[str]:
    """Return the sentences for rows of one fabric after another."""
    out: list[str] = []
    spot = 0
    while spot < len(rows):
        end = spot
        while end < len(rows) and rows[end].structure == rows[spot].structure:
            end += 1
        out += run(rows[spot:end])
        spot = end
    return out


def _turning(row: WorkedRow) -> str:
    """Return a row that turns before the end of the needle: its last 'k to end' as a number."""
    verb = "Work" if row.structure != "stockinette" else "P" if row.side is Side.WRONG else "K"
    if not row.shapings:
        return f"{verb} {row.before}" + (" sts" if verb == "Work" else "")
    words = row_words(row) if row.structure == "stockinette" else sentence(row)
    first = begins(row.side)
    used = sum(_takes_up(one, row.structure) for one in row.shapings if one.edge == first)
    letter = {"K": "k", "P": "p"}.get(verb, "work")
    unit = "" if letter != "work" else " sts"
    last = re.search(rf"{letter} to last (\d+) sts", words, re.I)
    if last:
        return words[: last.start()] + f"{letter} {row.before - used - int(last.group(1))}{unit}" + words[last.end() :]
    return re.sub(rf"{letter} to end", f"{letter} {row.before - used}{unit}", words)


def _takes_up(one: Shaping, structure: str) -> int:
    """Return the stitches that a shaping and those outside it use; a fabric that is kept to has none outside."""
    inset = one.inset if structure == "stockinette" else 0
    return one.stitches + 1 + inset if one.act is Act.DECREASE else one.stitches
