"""What goes round the body at each level, measured on the assembled pieces."""

from __future__ import annotations

import math
from collections.abc import Sequence

from lastlook.paper.paper_piece import PaperPiece

LEVELS = ("waist", "high hip", "hip", "knee", "hem")
"""From the top down; JSON writes them with an underscore."""


def girths(pieces: Sequence[PaperPiece]) -> dict[str, float | None]:
    """Return the assembled girth at every level, darts closed; None where no piece has that level."""
    shell = [piece for piece in pieces if piece.role == "skirt"]
    return {level: _girth(level, shell) for level in LEVELS}


def hem_depth_mm(pieces: Sequence[PaperPiece]) -> float | None:
    """Return how far below the waist the hem hangs at the centre; None where no piece has both."""
    for piece in pieces:
        waist, hem = piece.side("waist"), piece.side("hem")
        if piece.role != "skirt" or waist is None or hem is None:
            continue
        if piece.centre is not None:
            return math.dist(hem.start, piece.centre) - math.dist(waist.start, piece.centre)
        return min(waist.start[1], waist.end[1]) - min(hem.start[1], hem.end[1])
    return None


def top_mm(pieces: Sequence[PaperPiece]) -> float | None:
    """Return how long the skirt top is as it is cut, darts closed, before it is drawn in."""
    return _girth("waist", [piece for piece in pieces if piece.role == "skirt"])


def _girth(level: str, shell: Sequence[PaperPiece]) -> float | None:
    if not shell:
        return None
    if level in ("waist", "hem"):
        return sum(side.sewn_mm * piece.times for piece in shell for side in piece.sides if side.name == level)
    heights = [piece.level(level) for piece in shell]
    widths = [None if y is None else _across(piece, y) for piece, y in zip(shell, heights, strict=True)]
    return _round(widths, shell)


def girth_near(pieces: Sequence[PaperPiece], level: str, lower_mm: float) -> float | None:
    """Return the assembled girth so far below a level, above it if less than nothing."""
    shell = [piece for piece in pieces if piece.role == "skirt"]
    heights = [piece.level(level) for piece in shell]
    if not shell:
        return None
    return _round(
        [None if y is None else _across(piece, y - lower_mm) for piece, y in zip(shell, heights, strict=True)], shell
    )


def _round(widths: Sequence[float | None], shell: Sequence[PaperPiece]) -> float | None:
    if any(width is None for width in widths):
        return None
    return sum((width or 0.0) * piece.times for width, piece in zip(widths, shell, strict=True))


def _across(piece: PaperPiece, y: float) -> float | None:
    """Return a piece's width at a height: straight across, or round the circle that it is a part of."""
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
