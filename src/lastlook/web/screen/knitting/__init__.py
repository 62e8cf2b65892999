"""The screens of a garment to be knitted."""

from lastlook.web.screen.knitting import design, leaflet, needle, pages

__all__ = ["design", "leaflet", "needle", "pages"]
