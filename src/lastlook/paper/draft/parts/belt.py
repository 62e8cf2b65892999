"""A belt with loops, or with tabs: straight strips of doubled cloth.

The belt overlaps by 12 cm (10-15 cm, common practice, no source); loops stand at every quarter of the waist and one
beside the buckle.
"""

from __future__ import annotations

from lastlook.geometry import Path, polygon
from lastlook.paper.draft.ask import Ask
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use

OVERLAP_MM = 120.0
BELT_MM = 30.0
LOOP_MM = 10.0
LOOP_SPARE_MM = 6.0
"""A loop is longer than the belt is wide, so that the belt slides."""
LOOPS = 5
TAB_MM = (30.0, 70.0)
TABS = 4


def strip(name: str, width_mm: float, height_mm: float, seam_mm: float, quantity: int = 1) -> PaperPiece:
    """Return a plain strip with its length across the paper and the grain along it."""
    corners = ((0.0, 0.0), (width_mm, 0.0), (width_mm, height_mm), (0.0, height_mm))
    edges = polygon(corners).segments
    names = ("long edge", "end", "far edge", "far end")
    sides = tuple(
        SeamEdge(edge, (Path((segment,)),), (), seam_mm, Use.OPEN) for edge, segment in zip(names, edges, strict=True)
    )
    grain = ((width_mm * 0.25, height_mm / 2), (width_mm * 0.75, height_mm / 2))
    return PaperPiece(name, sides, quantity, grain=grain, role="part")


def belt(ask: Ask) -> tuple[PaperPiece, ...]:
    """Return a belt and its loops; tabs in place of loops if they are wanted."""
    width, seam = ask.options.get("belt_width_mm", BELT_MM), ask.option("seam_allowance_mm")
    whole = strip("Belt", ask.top_mm + OVERLAP_MM, 2 * width, seam)
    if ask.option("tabs"):
        return whole, strip("Tab", TAB_MM[1], 2 * TAB_MM[0], seam, TABS)
    return whole, strip("Belt loop", width + LOOP_SPARE_MM, 2 * LOOP_MM, seam, LOOPS)
