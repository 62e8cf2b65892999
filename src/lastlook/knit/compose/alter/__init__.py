"""A worked piece altered: another gauge, longer, wider."""

from lastlook.knit.compose.alter.altered import alter
from lastlook.knit.compose.alter.changes import LONGER, WIDER, Changes, Made, read_changes
from lastlook.knit.compose.alter.made import gauge_drift, read_made
from lastlook.knit.compose.alter.sizes import with_sleeves
from lastlook.knit.compose.alter.sure import sure

__all__ = [
    "LONGER",
    "WIDER",
    "Changes",
    "Made",
    "alter",
    "gauge_drift",
    "read_changes",
    "read_made",
    "sure",
    "with_sleeves",
]
