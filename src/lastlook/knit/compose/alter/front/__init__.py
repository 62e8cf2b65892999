"""The front of a garment made another: its neck, and whether it opens."""

from lastlook.knit.compose.alter.front.neck import NECKS
from lastlook.knit.compose.alter.front.opening import OPENINGS
from lastlook.knit.compose.alter.front.restyle import Style, restyled

__all__ = ["NECKS", "OPENINGS", "Style", "restyled"]
