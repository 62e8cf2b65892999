"""A crocheted border round a cardigan's fronts and neck, row by row, from a strip's own gauge; US terms.

Along an edge there are as many single crochet as its length holds at the strip's gauge, whatever its rows; an outer
corner takes three. Buttonholes are chains over skipped stitches on the right front, equal gaps between them.
"""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.raglan.counts import RaglanCounts
from lastlook.knit.compose.raglan.finishing import BUTTON_EVERY_MM

HOLE = 3
END = 3
CORNER = 3


def crochet_border(counts: RaglanCounts, asked: Asked, per_10cm: float) -> str:
    """Return the border of a cardigan as a piece of the leaflet."""
    across, down = asked.stitches_per_mm, asked.rows_per_mm
    front_mm = (counts.side_rows + 2 + counts.raglan_rows - counts.neck_rows) / down
    sides_mm = 2 * counts.neck_rows / down
    tops = counts.back_neck + 2 * counts.sleeve_top + 2 * counts.neck_center
    neck = max(8, round((sides_mm + tops / across) * per_10cm / 100.0))
    front = round(front_mm * per_10cm / 100.0)
    holes = max(2, round(front_mm / BUTTON_EVERY_MM) + 1)
    between = (front - 2 * END - holes * HOLE) // (holes - 1)
    first = front - END - holes * HOLE - (holes - 1) * between
    total = 2 * front + neck + 2 * CORNER
    again = {1: "", 2: " once more"}.get(holes - 1, f" {holes - 2} times more")
    gap = f"* ch {HOLE}, skip {HOLE} sc, sc in next {between} sc; repeat from *{again}, "
    lines = [
        "CROCHET BORDER",
        f"Row 1: With right side facing, work {front} sc along right front edge, {CORNER} sc in corner, {neck} sc"
        f" around neck, {CORNER} sc in corner, {front} sc along left front edge -- {total} sc. Ch 1, turn.",
        f"Row 2: Sc in each sc, working {CORNER} sc in center sc at each corner -- {total + 4} sc. Ch 1, turn.",
        f"Row 3 (buttonhole row): Sc in first {first} sc, {gap if holes > 2 else gap.split(';')[0].lstrip('* ') + ', '}"
        f"ch {HOLE}, skip {HOLE} sc, sc in last {END} sc before corner; sc to end of row, working {CORNER} sc in"
        " center sc at each corner. Ch 1, turn.",
        f"Row 4: Sc in each sc, working {HOLE} sc over each ch-{HOLE}. Fasten off. Sew on {holes} buttons.",
    ]
    return "\n".join(lines)
