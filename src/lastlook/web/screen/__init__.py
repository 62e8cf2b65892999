"""The screens of an outfit, one a file: what is shown, put together from what the core says."""

from collections.abc import Awaitable, Callable

from starlette.requests import Request
from starlette.responses import Response

from lastlook.web.screen import add, facts, last_look, outfit, record, sheets, stock, wearer
from lastlook.web.screen.knitting import design, leaflet, needle, pages
from lastlook.web.screen.sewing import lay, paper, taken, toile

Act = Callable[[Request], Response | Awaitable[Response]]
Screen = Callable[[Request], Response]

SCREENS: tuple[tuple[str, Screen], ...] = (
    ("", outfit.show),
    ("/leaflet/{garment}", leaflet.show),
    ("/wearer", wearer.show),
    ("/cupboard", stock.show),
    ("/paper/{garment}", paper.show),
    ("/table/{garment}", lay.show),
    ("/table/{garment}/search", lay.watch),
    ("/sheets", sheets.show),
    ("/sheets/{name}", sheets.fetch),
    ("/record", record.show),
    ("/facts", facts.show),
    ("/photographs/{name}", record.picture),
    ("/needles/{garment}", needle.show),
    ("/toile/{garment}", toile.show),
    ("/add", add.show),
    ("/design", design.show),
    ("/pages", pages.show),
    ("/pages/{which:int}.jpg", pages.picture),
    ("/last-look", last_look.show),
)

ACTS: tuple[tuple[str, Act], ...] = (
    ("/table/{garment}/judge", lay.judge),
    ("/table/{garment}/put", lay.put),
    ("/table/{garment}/search", lay.search),
    ("/table/{garment}/choose", lay.choose),
    ("/table/{garment}/stop", lay.stop),
    ("/table/{garment}/cut", lay.cut),
    ("/design", design.keep),
    ("/pages", pages.keep),
    ("/photographs", record.keep),
    ("/facts", facts.keep),
    ("/add/pages", pages.read),
    ("/add/pieces", taken.receive),
    ("/paper/{garment}/taken/{spot:int}", taken.say),
    ("/paper/{garment}/taken/{spot:int}/unmark", taken.unmark),
)

__all__ = ["ACTS", "SCREENS", "Act", "Screen"]
