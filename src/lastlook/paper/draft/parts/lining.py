"""A simple lining: the skirt's pieces once more, shorter, their darts laid as pleats.

It ends 2.5 cm above the finished hem (common practice, no source), so that it never shows.
"""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Finding
from lastlook.paper.alter.length import Lengthen
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import Use

SHORTER_MM = 25.0
HEM_MM = 30.0


def linings(pieces: tuple[PaperPiece, ...]) -> tuple[PaperPiece, ...]:
    """Return the lining of every piece that goes round the body."""
    return tuple(_lining(piece) for piece in pieces if piece.role == "skirt")


def _lining(piece: PaperPiece) -> PaperPiece:
    shorter = Lengthen(piece.name, -SHORTER_MM).apply(piece)
    base = piece if isinstance(shorter, Finding) else shorter
    sides = tuple(replace(side, allowance_mm=HEM_MM) if side.use is Use.HEM else side for side in base.sides)
    return replace(base, name=f"{piece.name} lining", sides=sides, role="part")
