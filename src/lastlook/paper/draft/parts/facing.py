"""Facings for a waist without a band, one for every piece of the skirt."""

from __future__ import annotations

from lastlook.paper.draft.ask import Ask
from lastlook.paper.follow import DEPTH_MM, facing
from lastlook.paper.paper_piece import PaperPiece


def facings(ask: Ask, pieces: tuple[PaperPiece, ...]) -> tuple[PaperPiece, ...]:
    """Return a facing for every piece that has a waist."""
    depth, seam = ask.options.get("facing_depth_mm", DEPTH_MM), ask.option("seam_allowance_mm")
    return tuple(
        facing(piece, waist, depth, seam)
        for piece in pieces
        if piece.role == "skirt" and (waist := piece.side("waist"))
    )
