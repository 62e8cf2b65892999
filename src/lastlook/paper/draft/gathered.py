"""The gathered skirt: straight breadths, drawn up into the band.

Fullness is cloth over finished waist, 1.5 to 2.5 by the weight of the cloth (common practice, no source); the hip
has to fit as well.
"""

from __future__ import annotations

from collections.abc import Mapping

from lastlook.geometry import polyline
from lastlook.paper.draft.ask import Ask, read_ask
from lastlook.paper.draft.fitted import band_for
from lastlook.paper.draft.parts.waistband import waistband
from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use
from lastlook.paper.seams import Counted, Fullness, Join
from lastlook.piece import EdgeName

FULLNESS = 1.8


def gathered(measures: Mapping[str, float], options: Mapping[str, float]) -> Drafted:
    """Return two breadths on the fold and a band."""
    ask = read_ask("gathered", measures, options, ("waist_girth",))
    if isinstance(ask, tuple):
        return Drafted("gathered", (), measures=measures, options=options, findings=ask)
    least = ask.around_hip_mm if "hip_girth" in measures else 0.0
    cloth = ask.options.get("hem_mm", max(ask.top_mm * ask.options.get("fullness", FULLNESS), least))
    return breadths(ask, cloth)


def breadths(ask: Ask, cloth_mm: float, marks: tuple[Notch, ...] = ()) -> Drafted:
    """Return a straight front and back, together so wide, gathered or pleated into a band."""
    pieces = tuple(_breadth(ask, name, cloth_mm / 4, marks) for name in ("Front", "Back"))
    band = waistband(band_for(ask, pieces[::-1]))
    tops = tuple(EdgeName(piece.name, "waist") for piece in pieces)
    joins = (
        Join((EdgeName("Front", "side"),), (EdgeName("Back", "side"),)),
        Join(tops, (EdgeName(band.name, "waist"),), Counted.WHOLE, Fullness.GATHERED),
    )
    return Drafted(ask.kind, (*pieces, band), joins, ask.measures, ask.options, findings=ask.findings)


def _breadth(ask: Ask, name: str, width: float, marks: tuple[Notch, ...]) -> PaperPiece:
    low, seam = -ask.length_mm, ask.option("seam_allowance_mm")
    sides = (
        SeamEdge("centre", (polyline(((0.0, 0.0), (0.0, low))),), (), 0.0, Use.FOLD),
        SeamEdge("hem", (polyline(((0.0, low), (width, low))),), (), ask.option("hem_allowance_mm"), Use.HEM),
        SeamEdge("side", (polyline(((width, low), (width, 0.0))),), (), ask.options.get("side_allowance_mm", seam)),
        SeamEdge("waist", (polyline(((width, 0.0), (0.0, 0.0))),), (), seam),
    )
    hip = (Notch("hip", "side", (width, -ask.hip_depth_mm)),) if ask.hip_depth_mm < ask.length_mm else ()
    grain = ((width / 2, low / 4), (width / 2, low * 3 / 4))
    return PaperPiece(name, sides, notches=hip, levels=ask.levels, grain=grain, marks=marks)
