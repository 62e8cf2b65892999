"""What a garment with shoulders has to be edged: its neck, the fronts of a cardigan, armholes without sleeves."""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.bands import BandEdges, PickUp, along
from lastlook.knit.compose.craft.evenly import even
from lastlook.knit.compose.shoulder.counts import ShoulderCounts


def shoulder_edges(counts: ShoulderCounts, asked: Asked, bust_mm: float | None) -> BandEdges:
    """Return the edges of a shouldered garment that a band or border goes round."""
    flat = asked.opening == "cardigan"
    rows = counts.side_rows + counts.armhole_rows - counts.neck_rows if flat else 0
    arm = 0
    if asked.sleeve == "none":
        arm = 2 * even(counts.armhole_rows * asked.band_stitches_per_mm / asked.rows_per_mm + counts.underarm)
    lead = "Sew shoulders. " if flat else "Sew one shoulder. "
    return BandEdges(_neck(counts, asked), rows, arm, lead, False, bust_mm, rows / asked.rows_per_mm)


def _neck(counts: ShoulderCounts, asked: Asked) -> tuple[PickUp, ...]:
    side = along(counts.neck_rows, asked)
    back = PickUp("back neck", counts.neck + counts.neck % 2, None)
    left = PickUp("left side of neck", side, counts.neck_rows)
    right = PickUp("right side of neck", side, counts.neck_rows)
    if asked.opening == "cardigan":
        center = (PickUp("bound-off sts", counts.front_center, None),) if counts.front_center else ()
        return (*center, right, back, left, *center)
    held = counts.neck_center + counts.neck_center % 2
    center = (PickUp("center front", held, None),) if held else ()
    return (back, left, *center, right)
