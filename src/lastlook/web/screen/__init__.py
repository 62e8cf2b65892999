"""The screens of an outfit, one a file: what is shown, put together from what the core says."""

from collections.abc import Callable

from starlette.requests import Request
from starlette.responses import Response

from lastlook.web.screen import last_look, leaflet, outfit, stock, wearer

Screen = Callable[[Request], Response]

SCREENS: tuple[tuple[str, Screen], ...] = (
    ("", outfit.show),
    ("/leaflet/{garment}", leaflet.show),
    ("/wearer", wearer.show),
    ("/cupboard", stock.show),
    ("/last-look", last_look.show),
)

__all__ = ["SCREENS", "Screen"]
