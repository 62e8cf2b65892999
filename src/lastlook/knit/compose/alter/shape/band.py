"""Bands and borders of an altered leaflet: picked up anew at the new gauge, or left out and said so.

A band is as long as the edge it lies on, so its count follows the stitch gauge and its height the row gauge.
Shapings inside it (buttonholes, mitred corners) keep their place only where nothing changes.
"""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.compose.alter.shape.scale import Scale
from lastlook.knit.compose.craft.needle import Needle
from lastlook.knit.worked import Act, Shaping, WorkedPiece

CROCHET = ("crochet", "sc", "shell")


def is_picked_up(piece: WorkedPiece) -> bool:
    """Whether a piece begins with stitches taken up from an edge."""
    return bool(piece.rows) and any(one.act is Act.PICK_UP for one in piece.rows[0].shapings)


def is_told_of_another(piece: WorkedPiece) -> bool:
    """Whether a band is only what changes in another one, like the holes of a buttonhole band."""
    bands = any(word in piece.name.lower() for word in ("band", "border"))
    return bands and bool(piece.rows) and piece.cast_on is None and piece.part_of is None and not is_picked_up(piece)


def is_crochet(piece: WorkedPiece) -> bool:
    """Whether a piece is crocheted, by its name or by what its rows are called."""
    return "crochet" in piece.name.lower() or any(row.structure.lower().startswith("crochet") for row in piece.rows)


def band(piece: WorkedPiece, scale: Scale) -> WorkedPiece:
    """Return a picked-up band at the new gauge."""
    count = 2 * round(piece.rows[0].after * scale.stitches / 2)
    structure = piece.rows[1].structure if len(piece.rows) > 1 else "rib 1x1"
    structure = "garter" if structure in ("plain", "knit") else structure
    needle = Needle(0, piece.rows[0].side)
    needle.row(structure, (Shaping(Act.PICK_UP, "inside", count),))
    needle.even(structure, max(2, scale.height(len(piece.rows) - 1)))
    return replace(piece, cast_on=None, rows=tuple(needle.rows), end_stitches=count, stated=(), edges=(), landmarks=())


def shaped_inside(piece: WorkedPiece) -> bool:
    """Whether a band has shapings after its pick-up."""
    return any(row.shapings for row in piece.rows[1:-1])


def left_out(piece: WorkedPiece) -> Finding:
    """Return that a crocheted edging is not rewritten."""
    return Finding(
        "edging-left-out",
        Certainty.DOUBTFUL,
        f"{piece.name} is not rewritten for the new counts.",
        "A crocheted edging follows the length of its edge at its own gauge, which is not the knitting's.",
        "Crochet a strip, measure how many stitches lie in 10 cm, and multiply by the edge's length.",
        where=Where(piece=piece.name),
    )


def plain_band(piece: WorkedPiece) -> Finding:
    """Return that a band's buttonholes or corners have to be placed anew."""
    return Finding(
        "band-plain",
        Certainty.NOTE,
        f"{piece.name} is written plain; its buttonholes or corners have to be placed anew.",
        "Holes that were spaced over one count do not divide another.",
        "Space the holes evenly between 1 cm from hem and neck, one at the fullest bust.",
        where=Where(piece=piece.name),
    )
