"""Skirts cut from a circle: a quarter, a half, three quarters or the whole of it.

Waist radius = (waist + ease) / (2 pi f), hem = 2 pi f (radius + length); formula from memory, the worked example of
41 1/4 in read on a project page. The radius is that of the seam line.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from lastlook.finding import Certainty, Finding, Where
from lastlook.geometry import Path, arc, polyline
from lastlook.paper.draft.ask import Ask, read_ask
from lastlook.paper.draft.fitted import band_for
from lastlook.paper.draft.parts.waistband import waistband
from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use
from lastlook.paper.seams import Counted, Fullness, Join
from lastlook.piece import EdgeName

FRACTIONS = {"quarter-circle": 0.25, "half-circle": 0.5, "three-quarter-circle": 0.75, "circle": 1.0}
HEM_MM = 6.35
"""1/4 in, or rolled, on a circle (T. Johnson, read): a deeper hem would be too full to turn up."""


def waist_radius_mm(waist_mm: float, fraction: float) -> float:
    """Return the radius of the waist seam, for a finished waist and a part of the circle.

    >>> round(waist_radius_mm(725, 1), 1)
    115.4
    """
    return waist_mm / (2 * math.pi * fraction)


def hem_girth_mm(radius_mm: float, length_mm: float, fraction: float) -> float:
    """Return the girth of the hem.

    >>> round(hem_girth_mm(115.4, 600, 1))
    4495
    """
    return 2 * math.pi * fraction * (radius_mm + length_mm)


def circle(kind: str) -> Callable[[Mapping[str, float], Mapping[str, float]], Drafted]:
    """Return the draft of one part of a circle."""

    def draft(measures: Mapping[str, float], options: Mapping[str, float]) -> Drafted:
        ask = read_ask(kind, measures, {"hem_allowance_mm": HEM_MM, **options}, ("waist_girth",))
        if isinstance(ask, tuple):
            return Drafted(kind, (), measures=measures, options=options, findings=ask)
        return _drafted(ask, FRACTIONS[kind])

    return draft


def _drafted(ask: Ask, fraction: float) -> Drafted:
    names = ("Front", "Back") if fraction > 0.5 else ("Skirt",)
    radius = waist_radius_mm(ask.top_mm + ask.option("ease_in_mm"), fraction)
    pieces = tuple(_sector(ask, name, radius, 360 * fraction / len(names)) for name in names)
    band = waistband(band_for(ask, pieces[::-1]))
    joins = (
        Join((EdgeName(names[0], "side"),), (EdgeName(names[-1], "side"),)),
        Join(
            tuple(EdgeName(name, "waist") for name in names),
            (EdgeName(band.name, "waist"),),
            Counted.WHOLE,
            Fullness.EASED,
        ),
    )
    return Drafted(ask.kind, (*pieces, band), joins, ask.measures, ask.options, findings=(*ask.findings, _bias()))


def _sector(ask: Ask, name: str, radius: float, degrees: float) -> PaperPiece:
    """Return half a sector, its middle on the fold; the waist at the fold lies at the origin."""
    centre, outer = (0.0, radius), radius + ask.length_mm
    reach = degrees / 2 - 90.0
    hem, waist = arc(centre, outer, -90.0, reach), arc(centre, radius, reach, -90.0)
    seam = ask.option("seam_allowance_mm")
    sides = (
        SeamEdge("centre", (polyline((waist.end, hem.start)),), (), 0.0, Use.FOLD),
        SeamEdge("hem", (hem,), (), ask.option("hem_allowance_mm"), Use.HEM),
        SeamEdge("side", (polyline((hem.end, waist.start)),), (), ask.options.get("side_allowance_mm", seam)),
        SeamEdge("waist", (Path(waist.segments),), (), seam),
    )
    halfway = (waist.start[0] + (hem.end[0] - waist.start[0]) / 2, waist.start[1] + (hem.end[1] - waist.start[1]) / 2)
    grain = ((ask.length_mm / 8, -ask.length_mm / 4), (ask.length_mm / 8, -ask.length_mm * 3 / 4))
    return PaperPiece(
        name, sides, notches=(Notch("half", "side", halfway),), levels=ask.levels, grain=grain, centre=centre
    )


def _bias() -> Finding:
    return Finding(
        "waist-on-bias",
        Certainty.NOTE,
        "The waist of a circle runs over the bias in places and stretches by 1 to 3 cm; the hem drops there too.",
        "Between the two grains cloth gives under its own weight (common practice, no source).",
        "Stay-stitch the waist once it is cut, and let the skirt hang one to three days before levelling the hem.",
        where=Where(edge="waist"),
    )
