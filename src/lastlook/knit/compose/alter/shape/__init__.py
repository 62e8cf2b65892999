"""The shape of a worked piece: taken apart, and put together again in other stitches and rows."""

from lastlook.knit.compose.alter.shape.divided import set_out
from lastlook.knit.compose.alter.shape.holes import is_eyelet, is_hole, pocket
from lastlook.knit.compose.alter.shape.profile import signed, underarm_row
from lastlook.knit.compose.alter.shape.recompose import Foot, Stretching, is_above, recompose
from lastlook.knit.compose.alter.shape.scale import Scale, spread

__all__ = [
    "Foot",
    "Scale",
    "Stretching",
    "is_above",
    "is_eyelet",
    "is_hole",
    "pocket",
    "recompose",
    "set_out",
    "signed",
    "spread",
    "underarm_row",
]
