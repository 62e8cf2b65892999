"""The last look: what is proven, doubtful and unknown before each step that can't be taken back."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from lastlook.web.page import framed, number_of, room_of


def show(request: Request) -> Response:
    """Show every last look as a list to be gone through."""
    desk = room_of(request).desk(number_of(request))
    return framed(request, "last_look/page.html", desk)
