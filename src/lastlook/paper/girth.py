"""What goes round the body at each level, measured on the assembled pieces, against the body."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from lastlook.paper.paper_piece import PaperPiece

LEVELS = ("waist", "high hip", "hip", "knee", "hem")
"""From the top down; JSON writes them with an underscore."""
BODY = {"waist": "waist_girth", "high hip": "top_hip_girth", "hip": "hip_girth", "knee": "stride_girth"}
"""The measurement each level is held against; round both knees in a walking stride for the knee."""


def girths(pieces: Sequence[PaperPiece]) -> dict[str, float | None]:
    """Return the assembled girth at every level, darts closed; None where no piece has that level."""
    shell = [piece for piece in pieces if piece.role == "skirt"]
    return {level: _girth(level, shell) for level in LEVELS}


def ease(girths_mm: Mapping[str, float | None], measures: Mapping[str, float]) -> dict[str, float | None]:
    """Return girth less body at every level; None where either is not known."""
    out: dict[str, float | None] = {}
    for level in LEVELS:
        girth, body = girths_mm.get(level), measures.get(BODY.get(level, ""))
        out[level] = girth - body if girth is not None and body is not None else None
    return out


def _girth(level: str, shell: Sequence[PaperPiece]) -> float | None:
    if not shell:
        return None
    if level in ("waist", "hem"):
        return sum(side.sewn_mm * piece.times for piece in shell for side in piece.sides if side.name == level)
    widths = [_across(piece, level) for piece in shell]
    if any(width is None for width in widths):
        return None
    return sum((width or 0.0) * piece.times for width, piece in zip(widths, shell, strict=True))


def _across(piece: PaperPiece, level: str) -> float | None:
    """Return a piece's width at a level: straight across, or round the circle that it is a part of."""
    y = piece.level(level)
    if y is None:
        return None
    if piece.centre is None:
        return piece.width_mm(y) if not _darts_reach(piece, y) else _less_darts(piece, y)
    waist = piece.side("waist")
    if waist is None:
        return None
    radius = math.dist(waist.start, piece.centre)
    return waist.sewn_mm * (radius - y) / radius


def _darts_reach(piece: PaperPiece, y_mm: float) -> bool:
    return any(dart.point[1] < y_mm < dart.middle[1] for dart in piece.darts)


def _less_darts(piece: PaperPiece, y_mm: float) -> float | None:
    """Return the width at a height less what the darts take out there."""
    width = piece.width_mm(y_mm)
    if width is None:
        return None
    taken = 0.0
    for dart in piece.darts:
        if dart.point[1] < y_mm < dart.middle[1]:
            taken += dart.intake_mm * (y_mm - dart.point[1]) / (dart.middle[1] - dart.point[1])
    return width - taken
