"""A leaflet altered: another gauge, longer, wider, another neck, opened or closed, in the round or in pieces."""

from lastlook.knit.compose.alter.altered import alter, measures_of
from lastlook.knit.compose.alter.build import BUILDS
from lastlook.knit.compose.alter.changed import Change, Figure, changed
from lastlook.knit.compose.alter.changes import LONGER, WIDER, Changes, Made, read_changes
from lastlook.knit.compose.alter.front import NECKS, OPENINGS, Style, restyled
from lastlook.knit.compose.alter.made import gauge_drift, read_made
from lastlook.knit.compose.alter.sizes import with_sleeves
from lastlook.knit.compose.alter.sure import sure

__all__ = [
    "BUILDS",
    "LONGER",
    "NECKS",
    "OPENINGS",
    "WIDER",
    "Change",
    "Changes",
    "Figure",
    "Made",
    "Style",
    "alter",
    "changed",
    "gauge_drift",
    "measures_of",
    "read_changes",
    "read_made",
    "restyled",
    "sure",
    "with_sleeves",
]
