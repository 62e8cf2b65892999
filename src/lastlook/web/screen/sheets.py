"""The sheets: everything that can be printed as the outfit stands, and what can't be printed yet."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from lastlook.web.page import framed, number_of, room_of

KINDS = {"pdf": "application/pdf", "svg": "image/svg+xml"}


def show(request: Request) -> Response:
    """Show what can be printed."""
    desk = room_of(request).desk(number_of(request))
    return framed(request, "sheets/page.html", desk, printed=desk.printed)


def fetch(request: Request) -> Response:
    """Give out one sheet."""
    desk = room_of(request).desk(number_of(request))
    name = request.path_params["name"]
    data = dict(desk.printed.files).get(name)
    if data is None:
        raise LookupError(f"There is no sheet called {name}.")
    kind = KINDS.get(name.rsplit(".", 1)[-1], "application/octet-stream")
    return Response(data, media_type=kind, headers={"content-disposition": f'inline; filename="{name}"'})
