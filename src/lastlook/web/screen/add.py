"""What can be added to an outfit: a leaflet to knit from, a garment to sew, yarn, cloth and small things."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from lastlook import paper, scan
from lastlook.web.page import framed, number_of, room_of


def show(request: Request) -> Response:
    """Show the forms."""
    desk = room_of(request).desk(number_of(request))
    return framed(request, "add/page.html", desk, kinds=paper.KINDS, cloths=desk.outfit.cloths, hand=scan.is_at_hand())
