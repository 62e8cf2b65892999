"""The outfit: the three answers, the last looks, and what lies on the bench."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from lastlook.web.page import framed, number_of, room_of


def show(request: Request) -> Response:
    """Show the outfit as it stands."""
    desk = room_of(request).desk(number_of(request))
    return framed(request, "outfit/page.html", desk, drawings=[])
