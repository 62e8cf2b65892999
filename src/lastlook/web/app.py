"""The application: addresses and what answers them."""

from __future__ import annotations

import contextlib
from collections.abc import AsyncIterator, Callable
from importlib import resources
from pathlib import Path

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles

from lastlook.web import act
from lastlook.web.behind import Laying, Scanning
from lastlook.web.guard import Guard
from lastlook.web.page import bare, room_of
from lastlook.web.room import Room
from lastlook.web.screen import ACTS, SCREENS

LOOK = Path(__file__).parent / "look"


def make(room: Room, ready: Callable[[], object] = lambda: None) -> Starlette:
    """Return the application that serves this room; `ready` is called once it answers."""

    @contextlib.asynccontextmanager
    async def life(_: Starlette) -> AsyncIterator[None]:
        ready()
        yield
        app.state.laying.close()
        room.close()

    app = Starlette(
        routes=_routes(),
        middleware=[Middleware(Guard)],
        exception_handlers={HTTPException: _nowhere, LookupError: _nowhere, Exception: _our_mistake},
        lifespan=life,
    )
    app.state.room = room
    app.state.laying = Laying(room)
    app.state.scanning = Scanning()
    return app


def _routes() -> list[Route | Mount]:
    at = "/outfit/{number:int}"
    return [
        Route("/", _door),
        Route("/shelf", _shelf),
        Route("/shelf", act.receive, methods=["POST"]),
        Route("/begin", act.begin, methods=["POST"]),
        *(Route(f"{at}{path}", screen) for path, screen in SCREENS),
        *(Route(f"{at}{path}", screen, methods=["POST"]) for path, screen in ACTS),
        Route(f"{at}/mail", act.mail),
        Route(f"{at}/paper/{{garment}}/strip", act.lay_on, methods=["POST"]),
        Route(f"{at}/needles/{{garment}}/made", act.off_the_needles, methods=["POST"]),
        Route(f"{at}/needles/{{garment}}/note", act.pin, methods=["POST"]),
        Route(f"{at}/needles/{{garment}}/sitting", act.sat, methods=["POST"]),
        Route(f"{at}/toile/{{garment}}/put-on", act.put_on, methods=["POST"]),
        Route(f"{at}/toile/{{garment}}/seen", act.seen, methods=["POST"]),
        Route(f"{at}/cupboard/flaw", act.mark_flaw, methods=["POST"]),
        Route(f"{at}/add/leaflet", act.add_leaflet, methods=["POST"]),
        Route(f"{at}/add/sewing", act.add_sewing, methods=["POST"]),
        Route(f"{at}/add/stock/{{kind}}", act.add_stock, methods=["POST"]),
        Route(f"{at}/change", act.change, methods=["POST"]),
        Route(f"{at}/undo", act.undo, methods=["POST"]),
        Route(f"{at}/redo", act.redo, methods=["POST"]),
        Mount("/look/founts", StaticFiles(directory=str(resources.files("lastlook.sheet") / "fonts"))),
        Mount("/look", StaticFiles(directory=LOOK)),
    ]


def _door(request: Request) -> Response:
    """Open on the outfit that was asked for, or the one that came last; on the shelf where there is none."""
    room = room_of(request)
    last = room.opens_on or max((one.id for one in room.shelf.outfits()), default=None)
    return RedirectResponse("/shelf" if last is None else f"/outfit/{last}")


def _shelf(request: Request) -> Response:
    return bare("shelf/page.html", outfits=room_of(request).shelf.outfits(), refusal=None)


def _nowhere(request: Request, trouble: Exception) -> Response:
    return bare("frame/nowhere.html", getattr(trouble, "status_code", 404))


def _our_mistake(request: Request, trouble: Exception) -> Response:
    return bare("frame/our_mistake.html", 500)
