"""Pieces that are not made yet follow those that are: the same rows along every edge that is sewn to a fact.

Only rows are followed, and only in steps of two, so that a right-side row stays one; what can't follow is left
as it is planned, and the seam then says so.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit import SizeReading, WorkedPiece
from lastlook.knit.compose.alter.shape.recompose import Stretching, recompose
from lastlook.knit.compose.alter.shape.scale import Scale
from lastlook.knit.compose.composed import walk_all
from lastlook.outfit.garment.knitted_shape import heights
from lastlook.outfit.outfit import MadePiece, made_of
from lastlook.piece import Unit


@dataclass(frozen=True)
class Off:
    """By how many rows a made piece differs from its plan, below the underarm and above it."""

    name: str
    below: int
    above: int


def follow(size: SizeReading, made: tuple[MadePiece, ...]) -> tuple[SizeReading, tuple[Finding, ...]]:
    """Return the size with its unmade pieces following the made ones, and a note for each that does."""
    facts = {piece.name: off for piece in size.pieces if (off := _off(piece, made_of(made, piece.name))) is not None}
    if not any(off.below or off.above for off in facts.values()):
        return size, ()
    pieces, notes = [], []
    for piece in size.pieces:
        below, above, after = _asked(size, piece, facts)
        if piece.name in facts or piece.part_of is not None or not (below or above):
            pieces.append(piece)
            continue
        if any(one.part_of == piece.name for one in size.pieces):
            above = 0
        pieces.append(recompose(piece, Scale(), Stretching(below_rows=below, above_rows=above)))
        notes.append(_note(piece, below, above, after))
    mates = tuple(seam.mate for seam in size.seams)
    return replace(size, pieces=tuple(pieces), seams=walk_all(pieces, mates)), tuple(notes)


def _off(piece: WorkedPiece, made: MadePiece | None) -> Off | None:
    plan, fact = heights(piece), heights(piece, made)
    if made is None or plan is None or fact is None:
        return None
    below = fact.rows_to_underarm - plan.rows_to_underarm
    return Off(piece.name, below, fact.rows - plan.rows - below)


def _asked(size: SizeReading, piece: WorkedPiece, facts: dict[str, Off]) -> tuple[int, int, str]:
    """Return the rows more that a piece is to have below and above the underarm, and whom it follows."""
    below = above = 0
    whom = ""
    for seam in size.seams:
        ends = {seam.mate.a.piece: seam.mate.a.edge, seam.mate.b.piece: seam.mate.b.edge}
        if seam.mate.unit is not Unit.ROWS or piece.name not in ends:
            continue
        for name in ends:
            off = facts.get(name)
            if off is None or name == piece.name:
                continue
            if "side" in ends[piece.name]:
                below, whom = _even(off.below), name
            elif "raglan" in ends[piece.name] or "armhole" in ends[piece.name]:
                above, whom = _even(off.above), name
    return below, above, whom


def _even(rows: int) -> int:
    return 2 * round(rows / 2)


def _note(piece: WorkedPiece, below: int, above: int, whom: str) -> Finding:
    parts = [
        f"{abs(rows)} rows {'more' if rows > 0 else 'fewer'} {where} the underarm"
        for rows, where in ((below, "below"), (above, "above"))
        if rows
    ]
    return Finding(
        "mate-follows",
        Certainty.NOTE,
        f"{piece.name} follows {whom}, which is made: {' and '.join(parts)} than the leaflet says.",
        "The two are sewn together, and what is made is a fact.",
        "Knit it as it is written out here.",
        where=Where(piece=piece.name),
    )
