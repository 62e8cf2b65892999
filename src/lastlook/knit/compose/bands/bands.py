"""The bands of a garment, knitted or crocheted, whichever was asked for; or why the buttons do not go on them."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.bands.crocheted import crochet_border, crochet_rounds
from lastlook.knit.compose.bands.edges import BandEdges
from lastlook.knit.compose.bands.holes import Holes
from lastlook.knit.compose.bands.knitted import knitted_bands
from lastlook.knit.compose.composed import cant_hold

MOST_BAND_MM = 50.0
"""A wider band is a facing of its own: common practice, no source."""


@dataclass(frozen=True)
class Bands:
    """Bands as parts of the leaflet, and the buttonholes in them."""

    parts: tuple[str, ...]
    holes: Holes | None


def bands_for(edges: BandEdges, asked: Asked) -> Bands | Finding:
    """Return the bands that go round these edges."""
    if edges.front_rows and asked.band_mm > MOST_BAND_MM:
        return _too_large(asked)
    per_10cm = asked.crochet_per_10cm
    if per_10cm and not edges.front_rows:
        return Bands(tuple(crochet_rounds(edges, asked, per_10cm)), None)
    found = crochet_border(edges, asked, per_10cm) if per_10cm else knitted_bands(edges, asked)
    return found if isinstance(found, Finding) else Bands(tuple(found[0]), found[1])


def _too_large(asked: Asked) -> Finding:
    diameter = asked.buttons.diameter_mm if asked.buttons else 0.0
    return cant_hold(
        f"A button of {diameter:g} mm wants a band {asked.band_mm / 10:.1f} cm wide; bands go up to"
        f" {MOST_BAND_MM / 10:.0f} cm.",
        "Three quarters of a button lie beyond the middle of its band, on both sides.",
        "Use smaller buttons, or close the front with hooks behind a narrow band.",
    )
