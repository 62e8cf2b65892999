"""What lies behind a band, and where its buttons go: a ribbon or facing, cut to the front, never stretching it.

Where no source is named: common practice, no source.
"""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.bands.edges import BandEdges
from lastlook.knit.compose.bands.holes import Holes
from lastlook.knit.compose.craft.buttons import across_mm

TURNING_MM = 10.0
NARROWER_MM = 5.0


def backing_notes(edges: BandEdges, asked: Asked, holes: Holes) -> tuple[str, ...]:
    """Return where the buttons go, and how to back the bands."""
    per_mm = holes.stitches / edges.front_mm
    heights = [(start + holes.wide / 2) / per_mm / 10.0 for start in holes.starts]
    told = ", ".join(f"{one:.1f}" for one in heights)
    bust = "" if holes.at_bust is None else f" Number {holes.at_bust + 1} lies at the fullest bust."
    ribbon = max(10.0, asked.band_mm - NARROWER_MM)
    cut = edges.front_mm + 2 * TURNING_MM
    out = [
        f"Buttons at {told} cm from the hem.{bust}",
        f"To back the bands: two lengths of {ribbon:.0f} mm ribbon, {cut / 10:.1f} cm each, washed first, 1 cm turned"
        f" in at both ends; sew it along both its edges to the relaxed band, and work its holes at the same heights. A"
        f" facing of cloth is cut {(ribbon + 2 * TURNING_MM) / 10:.1f} cm wide on the straight grain.",
    ]
    if asked.buttons is not None:
        start, end = across_mm(asked.buttons)
        out.append(
            f"Holes in a ribbon or facing are {end - start:.0f} mm long: across it they begin {-start:.0f} mm beyond"
            " the middle line towards the edge, along it they lie on the line."
        )
    if edges.bust_mm is not None and holes.at_bust is None:
        out.append(
            f"None of so many buttons lies at the fullest bust, {edges.bust_mm / 10:.1f} cm from the hem: sew a press"
            " stud behind the band there."
        )
    if edges.bust_mm is None:
        out.append("Where the fullest bust lies is not known: measure neck to bust point, and a button is put there.")
    return tuple(out)
