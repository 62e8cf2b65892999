"""Yarn in knitting: what a stitch takes, what the pieces take, whether it suffices."""

from lastlook.knit.yarn.concede import Concession, concessions
from lastlook.knit.yarn.counts import STRUCTURES, PieceStitches, order_of_work, stitches_of, stitches_of_all
from lastlook.knit.yarn.enough import rows_left
from lastlook.knit.yarn.forecast import Forecast, Weighed, forecast, is_named, stitch_g
from lastlook.knit.yarn.loop import (
    DRY,
    FULL,
    WET,
    diameter_mm,
    grams_per_m2,
    grams_per_stitch,
    loop_from_mark_mm,
    loop_mm,
    loop_of,
    peirce_loop_mm,
    shrinkage_percent,
    tightness,
)

__all__ = [
    "DRY",
    "FULL",
    "STRUCTURES",
    "WET",
    "Concession",
    "Forecast",
    "PieceStitches",
    "Weighed",
    "concessions",
    "diameter_mm",
    "forecast",
    "grams_per_m2",
    "grams_per_stitch",
    "is_named",
    "loop_from_mark_mm",
    "loop_mm",
    "loop_of",
    "order_of_work",
    "peirce_loop_mm",
    "rows_left",
    "shrinkage_percent",
    "stitch_g",
    "stitches_of",
    "stitches_of_all",
    "tightness",
]
