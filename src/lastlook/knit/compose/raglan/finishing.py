"""What a raglan has to be edged: its neck, and the fronts of a cardigan."""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.bands import BandEdges, PickUp, along
from lastlook.knit.compose.raglan.counts import WHOLE_FRONT_KEEPS, RaglanCounts

LEADS = {
    ("in pieces", "pullover"): "Sew raglan seams, leaving left back raglan seam open. ",
    ("in pieces", "cardigan"): "Sew raglan seams. ",
}


def raglan_edges(counts: RaglanCounts, asked: Asked, bust_mm: float | None) -> BandEdges:
    """Return the edges of a raglan that a band or border goes round."""
    flat = asked.opening == "cardigan"
    rows = counts.side_rows + 2 + counts.raglan_rows - counts.neck_rows if flat else 0
    return BandEdges(
        _neck(counts, asked),
        front_rows=rows,
        lead=LEADS.get((asked.construction, asked.opening), ""),
        joined=asked.construction != "in pieces" and not flat,
        bust_mm=bust_mm,
        front_mm=rows / asked.rows_per_mm,
    )


def _neck(counts: RaglanCounts, asked: Asked) -> tuple[PickUp, ...]:
    """Return the stitches round a neck, from the right front edge or the left back seam on."""
    side = along(counts.neck_rows, asked)
    keeps, where = 0, "sleeve"
    if asked.construction != "in pieces":
        keeps, where = WHOLE_FRONT_KEEPS, "sleeve and front"
    first, second = (PickUp(f"top of {hand} {where}", counts.sleeve_top + keeps, None) for hand in ("left", "right"))
    back = PickUp("back neck", counts.back_neck, None)
    left = PickUp("left side of neck", side, counts.neck_rows)
    right = PickUp("right side of neck", side, counts.neck_rows)
    if asked.opening == "cardigan":
        center = (PickUp("bound-off sts", counts.neck_center, None),) if counts.neck_center else ()
        return (*center, right, second, back, first, left, *center)
    center = (PickUp("center front", counts.neck_center, None),) if counts.neck_center else ()
    return (back, first, left, *center, right, second)
