"""What comes after the pieces: seams in their order, stitches picked up for bands, buttonholes, pressing.

Picked-up counts follow the edge's length at the band's own gauge; along row ends some rows are skipped, evenly.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import even, skips, times_words
from lastlook.knit.compose.raglan.counts import WHOLE_FRONT_KEEPS, RaglanCounts
from lastlook.knit.compose.raglan.shape import BAND_MM

NECKBAND_MM = 25.0
BUTTON_EVERY_MM = 75.0
"""6-9 cm apart: common practice, no source."""
HOLE_STITCHES = 2
HOLE_END = 3


@dataclass(frozen=True)
class PickUp:
    """Stitches picked up along one edge."""

    where: str
    stitches: int
    rows: int | None
    """Row ends along the edge; None along stitches that are taken one for one."""

    @property
    def how(self) -> str:
        """Return how to spread it, as a sentence; empty where it is one for one."""
        if self.rows is None or self.rows == self.stitches:
            return ""
        table = _first(self)
        ends_bare = sum(times for _, times in table) > self.rows - self.stitches
        parts = [f"pick up {pick}, skip 1, {times_words(times)}" for pick, times in table]
        if ends_bare:
            parts[-1] = f"pick up {table[-1][0]}"
        told = ", then ".join(parts)
        return f"{self.where}: {self.stitches} sts over {self.rows} rows; {told}."


def _first(one: PickUp) -> tuple[tuple[int, int], ...]:
    return skips(one.rows or 0, one.stitches)


def neck_pick_ups(counts: RaglanCounts, asked: Asked) -> tuple[PickUp, ...]:
    """Return the stitches round a neck, from the right front edge or the left back seam on."""
    side = _along(counts.neck_rows, asked)
    keeps, where = 0, "sleeve"
    if asked.construction != "in pieces":
        keeps, where = WHOLE_FRONT_KEEPS, "sleeve and front"
    first, second = (PickUp(f"top of {hand} {where}", counts.sleeve_top + keeps, None) for hand in ("left", "right"))
    back = PickUp("back neck", counts.back_neck, None)
    if asked.opening == "cardigan":
        center = (PickUp("bound-off sts", counts.neck_center, None),) if counts.neck_center else ()
        right = PickUp("right side of neck", side, counts.neck_rows)
        left = PickUp("left side of neck", side, counts.neck_rows)
        return (*center, right, second, back, first, left, *center)
    center = (PickUp("center front", counts.neck_center, None),) if counts.neck_center else ()
    left = PickUp("left side of neck", side, counts.neck_rows)
    right = PickUp("right side of neck", side, counts.neck_rows)
    return (back, first, left, *center, right, second)


def front_pick_up(counts: RaglanCounts, asked: Asked, hand: str) -> PickUp:
    """Return the stitches along one front edge, hem to neck."""
    rows = counts.side_rows + 2 + counts.raglan_rows - counts.neck_rows
    return PickUp(f"{hand} front edge", _along(rows, asked), rows)


def _along(rows: int, asked: Asked) -> int:
    """Return an even count for row ends, at the ratio of stitch to row gauge (R30: band gauge over row gauge)."""
    return max(2, even(rows * asked.stitches_per_mm / asked.rows_per_mm))


def band_rows(asked: Asked, mm: float = BAND_MM) -> int:
    """Return the rows of a band, even."""
    return max(4, even(mm * asked.rows_per_mm))


@dataclass(frozen=True)
class Buttonholes:
    """Holes along a band, told from the neck end; what the division leaves lies at the hem."""

    holes: int
    between: int
    neck_end: int
    hem_end: int


def buttonholes(stitches: int, asked: Asked, at_hand: int | None = None) -> Buttonholes:
    """Return equal gaps for about one button every 75 mm, or for the buttons at hand."""
    length = stitches / asked.stitches_per_mm
    holes = at_hand or max(2, round(length / BUTTON_EVERY_MM) + 1)
    free = stitches - 2 * HOLE_END - holes * HOLE_STITCHES
    between, rest = divmod(free, max(1, holes - 1))
    return Buttonholes(holes, between, HOLE_END, HOLE_END + rest)
