"""A shaped band: an arc that lies on the body below the waist, longer at its lower edge than at its upper.

Its arc opens by the difference of the edges over its width. There is one for outside and one for inside; the lap is
at one end.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from lastlook.geometry import Point, arc, polyline
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use


@dataclass(frozen=True)
class Contour:
    """A finished shaped band, in mm."""

    upper_mm: float
    lower_mm: float
    width_mm: float
    lap_mm: float
    seam_mm: float


def contour_band(band: Contour, name: str = "Waistband") -> PaperPiece:
    """Return a shaped band drawn whole; its lower edge is as long as the skirt top it meets.

    >>> whole = contour_band(Contour(700, 730, 40, 25, 15))
    >>> round(whole.side("waist").sewn_mm, 3), round(whole.side("upper edge").sewn_mm, 3)
    (730.0, 700.0)
    """
    opens = math.degrees((band.lower_mm - band.upper_mm) / band.width_mm)
    radius = band.upper_mm / math.radians(opens)
    ends = (-90.0 - opens / 2, -90.0 + opens / 2)
    low = arc((0.0, radius), radius + band.width_mm, *ends)
    high = arc((0.0, radius), radius, ends[1], ends[0])
    slant = math.radians(opens / 2)
    lap_low, lap_high = _on(low.end, slant, band.lap_mm), _on(high.start, slant, band.lap_mm)
    runs = {
        "waist": low,
        "lap": polyline((low.end, lap_low)),
        "end": polyline((lap_low, lap_high)),
        "lap above": polyline((lap_high, high.start)),
        "upper edge": high,
        "far end": polyline((high.end, low.start)),
    }
    sides = tuple(
        SeamEdge(edge, (run,), (), band.seam_mm, Use.SEAM if edge in ("waist", "upper edge") else Use.OPEN)
        for edge, run in runs.items()
        if run.length_mm() > 1e-9
    )
    grain = ((0.0, -band.width_mm * 0.2), (0.0, -band.width_mm * 0.8))
    return PaperPiece(name, sides, grain=grain, role="band")


def _on(spot: Point, slant: float, by_mm: float) -> Point:
    return (spot[0] + math.cos(slant) * by_mm, spot[1] + math.sin(slant) * by_mm)
