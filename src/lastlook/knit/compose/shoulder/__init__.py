"""Garments that hang from the shoulder: set-in sleeves, dropped shoulders, slipovers."""

from lastlook.knit.compose.shoulder.counts import ShoulderCounts, shoulder_counts
from lastlook.knit.compose.shoulder.edges import shoulder_edges
from lastlook.knit.compose.shoulder.page import write_shouldered
from lastlook.knit.compose.shoulder.pieces import shoulder_mates, shoulder_measures, shoulder_pieces
from lastlook.knit.compose.shoulder.setting_in import setting_in
from lastlook.knit.compose.shoulder.shape import ShoulderShape, shoulder_shape

__all__ = [
    "ShoulderCounts",
    "ShoulderShape",
    "setting_in",
    "shoulder_counts",
    "shoulder_edges",
    "shoulder_mates",
    "shoulder_measures",
    "shoulder_pieces",
    "shoulder_shape",
    "write_shouldered",
]
