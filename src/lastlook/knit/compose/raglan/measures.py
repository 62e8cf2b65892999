"""What the assembled garment measures against what was wanted, with the ± that the gauge brings.

A *flat width* is a piece on the table; a *girth* is the garment sewn up, which a stitch at every seam makes
smaller.
"""

from __future__ import annotations

from collections.abc import Callable

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.composed import FinishedMeasure
from lastlook.knit.compose.raglan.counts import BAND_STITCHES, RaglanCounts
from lastlook.knit.compose.raglan.shape import RaglanShape
from lastlook.quantity import Missing


def raglan_measures(shape: RaglanShape, counts: RaglanCounts, asked: Asked) -> tuple[FinishedMeasure, ...]:
    """Return every girth and length of the garment, sewn up."""
    across, down = across_by(asked), down_by(asked)
    body = counts.back + (counts.front if asked.opening == "pullover" else 2 * counts.front)
    seam = asked.seam_stitches
    seams = 4 * seam + (2 * BAND_STITCHES if asked.opening == "cardigan" else 0)
    hems = counts.hem + (counts.front_hem if asked.opening == "pullover" else 2 * counts.front_hem)
    out = [
        across("bust girth", shape.bust, body - seams, shape.band),
        across("hem girth", shape.hem, hems - seams, shape.band),
        across("back, flat", shape.bust / 2 + 2 * seam / asked.stitches_per_mm, counts.back, 0.0),
        down("hem to underarm", shape.side, counts.side_rows),
        down("raglan depth", shape.depth, counts.raglan_rows),
        across("back neck", shape.back_neck, counts.back_neck, 0.0),
    ]
    if asked.sleeve != "none":
        out += [
            across("upper sleeve girth", shape.upper_sleeve, counts.sleeve - 2 * seam, 0.0),
            across("cuff girth", shape.cuff, counts.cuff - 2 * seam, 0.0),
            down("sleeve seam", shape.sleeve_seam, counts.sleeve_rows),
        ]
    return tuple(out)


def across_by(asked: Asked) -> Callable[[str, float, float, float], FinishedMeasure]:
    """Return a measure across, from stitches."""

    def across(name: str, target_mm: float, stitches: float, band_mm: float) -> FinishedMeasure:
        width = asked.gauge.width_mm(stitches)
        return FinishedMeasure(name, target_mm, width.best + band_mm, width.plus_minus)

    return across


def down_by(asked: Asked) -> Callable[[str, float, float], FinishedMeasure]:
    """Return a measure down, from rows."""

    def down(name: str, target_mm: float, rows: float) -> FinishedMeasure:
        length = asked.gauge.length_mm(rows)
        if isinstance(length, Missing):
            raise TypeError("a garment is composed only where the row gauge is known")
        return FinishedMeasure(name, target_mm, length.best, length.plus_minus)

    return down
