"""A straight waistband with a lap: twice its finished width, folded lengthwise.

Length is waist, ease and lap (24 + 1 + 3/4 in: retroglam, 2013, read). Front laps over back at a side opening, so
the lap is cut on to the back end. The seams and centres of the skirt are marked on it.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.geometry import polyline
from lastlook.paper.follow import band_notches
from lastlook.paper.paper_piece import Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use


@dataclass(frozen=True)
class Band:
    """A finished band, in mm."""

    length_mm: float
    """Round the waist, without the lap."""
    width_mm: float
    lap_mm: float
    seam_mm: float
    shares: tuple[tuple[str, float], ...] = ()
    """The pieces that meet it, from the lap on, with the length that each takes up."""


def waistband(band: Band, name: str = "Waistband") -> PaperPiece:
    """Return the band, its waist edge as long as the finished waist.

    >>> waistband(Band(711.2, 30, 25.4, 15)).side("waist").sewn_mm
    711.2
    """
    length, height = band.length_mm, 2 * band.width_mm
    corners = {"lap": ((-band.lap_mm, 0.0), (0.0, 0.0)), "waist": ((0.0, 0.0), (length, 0.0))}
    corners |= {"end": ((length, 0.0), (length, height)), "inside": ((length, height), (-band.lap_mm, height))}
    corners |= {"lap end": ((-band.lap_mm, height), (-band.lap_mm, 0.0))}
    sides = tuple(
        SeamEdge(edge, (polyline(ends),), (), band.seam_mm, Use.SEAM if edge == "waist" else Use.OPEN)
        for edge, ends in corners.items()
        if ends[0] != ends[1]
    )
    fold = (
        Notch("fold line", "end", (length, band.width_mm)),
        Notch("fold line", "lap end", (-band.lap_mm, band.width_mm)),
    )
    shares = [(f"centre {name.lower()}", mm) for name, mm in band.shares]
    grain = ((length * 0.3, band.width_mm), (length * 0.7, band.width_mm))
    return PaperPiece(name, sides, notches=(*band_notches((0.0, 0.0), length, shares), *fold), grain=grain, role="band")
