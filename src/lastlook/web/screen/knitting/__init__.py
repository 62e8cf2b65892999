"""The screens of a garment to be knitted."""

from lastlook.web.screen.knitting import leaflet, needle

__all__ = ["leaflet", "needle"]
