"""Pages: a template filled, in the frame that every screen of an outfit has.

Templates speak US English where the two differ; `said` puts a sentence of ours into the maker's own.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import jinja2
from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from lastlook.quantity import Units
from lastlook.web import places, words
from lastlook.web.as_form import as_form, typed_in
from lastlook.web.room import Desk, Room

_SHELF = jinja2.Environment(
    loader=jinja2.FileSystemLoader(Path(__file__).parent / "templates"),
    autoescape=True,
    undefined=jinja2.StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
)
_SHELF.filters["as_form"] = as_form
_SHELF.filters["pair"] = lambda name: (name, name)


def room_of(request: Request) -> Room:
    """Return the room that the application works in."""
    room: Room = request.app.state.room
    return room


def number_of(request: Request) -> int:
    """Return which outfit is asked for."""
    return int(request.path_params["number"])


def bare(template: str, status: int = 200, **facts: Any) -> HTMLResponse:
    """Return a page outside any outfit."""
    return HTMLResponse(_SHELF.get_template(template).render(facts), status)


def framed(request: Request, template: str, desk: Desk, **facts: Any) -> Response:
    """Return a screen of an outfit: the frame with its answers, undo and redo, and the screen inside."""
    room, number = room_of(request), number_of(request)
    manner = desk.outfit.manner
    frame = {
        "number": number,
        "at": f"/outfit/{number}",
        "path": request.url.path,
        "here": request.url.path + (f"?{request.url.query}" if request.url.query else ""),
        "places": places.of(desk.outfit, f"/outfit/{number}"),
        "desk": desk,
        "leads_to": lambda finding: places.leads_to(finding, desk.derived, f"/outfit/{number}"),
        "verdict": desk.verdict,
        "undo": room.shelf.may_undo(number),
        "redo": room.shelf.may_redo(number),
        "inches": manner.units is Units.INCHES,
        "said": words.said_by(manner),
        "length": words.lengths(manner),
        "typed": typed_in(desk.document),
        "apart": words.apart(manner),
        "exact": words.exact_lengths(manner),
        "chance": words.chance,
        "counted": words.counted,
        "drawn": Markup,
        "refusal": room.slips.pop(number, None),
    }
    return HTMLResponse(_SHELF.get_template(template).render({**frame, **facts}))
