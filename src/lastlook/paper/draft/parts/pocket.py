"""Pockets: a bag set into the side seam, or a patch laid on the front.

An opening of 15 cm begins 5 cm below the waist; a patch is 14 by 16 cm with a hem of 3 cm (common practice, no source).
"""

from __future__ import annotations

from dataclasses import replace

from lastlook.geometry import Cubic, Line, Path, at, polyline, split
from lastlook.paper.draft.ask import Ask
from lastlook.paper.paper_piece import Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use
from lastlook.paper.solve import solve

OPENING_MM = 150.0
BELOW_WAIST_MM = 50.0
BAG_WIDE_MM = 160.0
BAG_LONG_MM = 260.0
PATCH_MM = (140.0, 160.0)
PATCH_HEM_MM = 30.0


def inseam_pocket(ask: Ask) -> PaperPiece:
    """Return the bag of a pocket in the side seam: four of them, two mirrored pairs, for two pockets."""
    wide, long, seam = BAG_WIDE_MM, BAG_LONG_MM, ask.option("seam_allowance_mm")
    opening = Path((Line((0.0, -long), (0.0, 0.0)),)).reversed()
    low = Cubic((0.0, -long), (wide * 0.5, -long * 1.08), (wide, -long * 0.95), (wide, -long * 0.6))
    high = Cubic((wide, -long * 0.6), (wide, -long * 0.3), (wide * 0.5, 0.0), (0.0, 0.0))
    sides = (
        SeamEdge("opening", (opening,), (), seam),
        SeamEdge("bag", (Path((low, high)),), (), seam),
    )
    notches = (
        Notch("pocket top", "opening", (0.0, -(long - OPENING_MM) / 2)),
        Notch("pocket bottom", "opening", (0.0, -(long + OPENING_MM) / 2)),
    )
    grain = ((wide * 0.4, -long * 0.25), (wide * 0.4, -long * 0.75))
    return PaperPiece("Pocket bag", sides, 4, True, notches, grain=grain, role="part")


def patch_pocket(ask: Ask) -> PaperPiece:
    """Return a patch pocket with a pointed foot and its hem cut on."""
    wide, long = PATCH_MM
    seam = ask.option("seam_allowance_mm")
    foot = polyline(((0.0, -long * 0.85), (wide / 2, -long), (wide, -long * 0.85)))
    sides = (
        SeamEdge("left edge", (polyline(((0.0, 0.0), (0.0, -long * 0.85))),), (), seam),
        SeamEdge("foot", (foot,), (), seam),
        SeamEdge("right edge", (polyline(((wide, -long * 0.85), (wide, 0.0))),), (), seam),
        SeamEdge("hem", (polyline(((wide, 0.0), (0.0, 0.0))),), (), PATCH_HEM_MM, Use.HEM),
    )
    grain = ((wide / 2, -long * 0.2), (wide / 2, -long * 0.8))
    return PaperPiece("Patch pocket", sides, 2, grain=grain, role="part")


def with_opening(piece: PaperPiece) -> PaperPiece:
    """Return a skirt piece with the opening of a pocket marked on its side seam."""
    side = piece.side("side")
    if side is None or side.sewn_mm < BELOW_WAIST_MM + OPENING_MM + 20:
        return piece
    down = side.parts[0].reversed()
    marks = tuple(
        Notch(name, "side", _along(down, mm))
        for name, mm in (("pocket top", BELOW_WAIST_MM), ("pocket bottom", BELOW_WAIST_MM + OPENING_MM))
    )
    return replace(piece, notches=(*piece.notches, *marks))


def _along(path: Path, mm: float) -> tuple[float, float]:
    """Return the point of a path that lies so far along it."""
    before = 0.0
    for number, segment in enumerate(path.segments):
        length = segment.length_mm()
        if before + length >= mm:
            return at(path, number + _share(segment, mm - before))
        before += length
    return path.end


def _share(segment: Line | Cubic, mm: float) -> float:
    share = solve(lambda one: (split(segment, one)[0].length_mm() if one else 0.0) - mm, 0.0, 1.0)
    return 1.0 if share is None else share
