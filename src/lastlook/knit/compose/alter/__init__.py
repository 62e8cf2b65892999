"""A worked piece altered: another gauge, longer, wider."""

from lastlook.knit.compose.alter.altered import alter
from lastlook.knit.compose.alter.changes import LONGER, WIDER, Changes, read_changes

__all__ = ["LONGER", "WIDER", "Changes", "alter", "read_changes"]
