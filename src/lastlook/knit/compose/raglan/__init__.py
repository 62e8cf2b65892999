"""The raglan: its shape from measures, its counts, its pieces row by row, its page."""

from lastlook.knit.compose.raglan.counts import RaglanCounts, raglan_counts
from lastlook.knit.compose.raglan.finishing import raglan_edges
from lastlook.knit.compose.raglan.leaflet import write_raglan
from lastlook.knit.compose.raglan.measures import raglan_measures
from lastlook.knit.compose.raglan.pieces import raglan_mates, raglan_pieces
from lastlook.knit.compose.raglan.shape import RaglanShape, raglan_shape

__all__ = [
    "RaglanCounts",
    "RaglanShape",
    "raglan_counts",
    "raglan_edges",
    "raglan_mates",
    "raglan_measures",
    "raglan_pieces",
    "raglan_shape",
    "write_raglan",
]
