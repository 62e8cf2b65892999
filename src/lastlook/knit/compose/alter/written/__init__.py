"""An altered leaflet written down in the trade's notation."""

from lastlook.knit.compose.alter.written.page import write_altered

__all__ = ["write_altered"]
