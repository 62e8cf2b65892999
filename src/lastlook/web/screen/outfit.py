"""The outfit: the three answers, the last looks, and what lies on the bench."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from lastlook import sheet
from lastlook.web import drawings, places
from lastlook.web.page import framed, number_of, room_of
from lastlook.web.room import Desk


def show(request: Request) -> Response:
    """Show the outfit as it stands."""
    desk = room_of(request).desk(number_of(request))
    return framed(request, "outfit/page.html", desk, drawings=_bench(desk, f"/outfit/{number_of(request)}"))


def _bench(desk: Desk, at: str) -> list[tuple[str, str, str]]:
    """Return one drawing of each thing in hand: its picture, where it is at home, what it is."""
    manner = sheet.manner_of(desk.outfit)
    out: list[tuple[str, str, str]] = []
    for one in desk.derived.knitted:
        pieces = drawings.knitted(one, manner)[:2]
        out += [(drawn, places.leaflet(at, one.plan.name), label) for drawn, label in pieces]
    for sewn in desk.derived.sewn:
        paper, table = drawings.paper(sewn, manner), drawings.table(sewn, manner)
        out += [(paper, places.sewing(at, sewn.plan.name), f"The {sewn.plan.name} on paper")] if paper else []
        out += [(table, places.table(at, sewn.plan.name), f"The {sewn.plan.name} on its cloth")] if table else []
    return out
