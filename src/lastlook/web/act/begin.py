"""An outfit begun, and things added to it: a leaflet pasted, a garment to be sewn, yarn and cloth."""

from __future__ import annotations

import re
import unicodedata

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook.finding import Edit
from lastlook.outfit import MAIN, change, document
from lastlook.web.page import number_of, room_of

SEE_OTHER = 303
LONGEST_NAME = 80
LONGEST_LEAFLET = 200_000
"""Characters; the longest printed leaflet of four sizes is a tenth of it."""
FLAW = ("what", "across", "along", "width", "length")
STOCK = {
    "yarn": ("grams", "balls", "ball", "fibre", "state"),
    "cloth": ("width", "length", "fibre", "washed"),
    "notion": ("kind", "count", "length"),
}


async def begin(request: Request) -> Response:
    """Begin an outfit with its name, its tape and its English."""
    async with request.form() as form:
        name = _typed(form, "name") or "An outfit"
        facts = [("name", name)] + [(key, _typed(form, key)) for key in ("units", "english", "hand")]
    room = room_of(request)
    empty = document({MAIN: b"# An outfit of Last Look.\n"})
    holding = change(empty, [Edit(f"outfit.{key}", value) for key, value in facts if value])
    kept = await run_in_threadpool(room.shelf.start, name, None, holding, room.clock())
    return RedirectResponse(f"/outfit/{kept.id}/add", SEE_OTHER)


async def add_leaflet(request: Request) -> Response:
    """Keep a pasted leaflet as it is, and plan a garment from it."""
    async with request.form() as form:
        name, text = plain(_typed(form, "name")), str(form.get("text") or "").replace("\r\n", "\n")
    return await run_in_threadpool(_leaflet, request, name or "pullover", text)


async def add_sewing(request: Request) -> Response:
    """Plan a garment to be drafted."""
    async with request.form() as form:
        name, kind, cloth = plain(_typed(form, "name")) or "skirt", _typed(form, "kind"), _typed(form, "cloth")
    edits = [Edit(f"sewing.{name}.kind", kind or "a-line")]
    edits += [Edit(f"sewing.{name}.cloth", cloth)] if cloth else []
    return await run_in_threadpool(_added, request, edits, f"The {name} is to be sewn.", f"/paper/{name}")


async def add_stock(request: Request) -> Response:
    """Put something into the cupboard."""
    kind = str(request.path_params["kind"])
    if kind not in STOCK:
        raise LookupError(f"The cupboard has no place for a {kind}.")
    async with request.form() as form:
        name = plain(_typed(form, "name")) or kind
        facts = [(key, _typed(form, key)) for key in STOCK[kind]]
    edits = [Edit(f"stock.{kind}.{name}.{key}", value) for key, value in facts if value]
    if not edits:
        return RedirectResponse(f"/outfit/{number_of(request)}/add", SEE_OTHER)
    return await run_in_threadpool(_added, request, edits, f"{name.capitalize()} lies in the cupboard.", "/cupboard")


async def mark_flaw(request: Request) -> Response:
    """Mark a flaw on a cloth."""
    async with request.form() as form:
        cloth = _typed(form, "cloth")
        facts = tuple((key, _typed(form, key)) for key in FLAW)
    known = {one.name for one in room_of(request).desk(number_of(request)).outfit.cloths}
    if cloth not in known:
        raise LookupError(f"The cupboard has no cloth called {cloth}.")
    edits = [Edit(f"stock.cloth.{cloth}.flaws.+", tuple((key, value) for key, value in facts if value))]
    return await run_in_threadpool(_added, request, edits, f"A flaw was marked on the {cloth}.", "/cupboard")


def plain(name: str) -> str:
    """Return a name as a file and a key can carry it.

    >>> plain("Bottle Green (attic)")
    'bottle-green-attic'
    """
    letters = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", letters).strip("-")


def _typed(form: FormData, key: str) -> str:
    return str(form.get(key) or "").strip()[:LONGEST_NAME]


def _leaflet(request: Request, name: str, text: str) -> Response:
    room, number = room_of(request), number_of(request)
    if not text.strip() or len(text) > LONGEST_LEAFLET:
        return RedirectResponse(f"/outfit/{number}/add", SEE_OTHER)
    desk, file = room.desk(number), f"leaflets/{name}.txt"
    said = f"The leaflet of the {name} was pasted in."
    holding = desk.document.with_file(file, text.encode())
    room.keep(number, change(holding, [Edit(f"knitting.{name}.leaflet", file)]), said)
    return RedirectResponse(f"/outfit/{number}/leaflet/{name}", SEE_OTHER)


def _added(request: Request, edits: list[Edit], said: str, then: str) -> Response:
    room, number = room_of(request), number_of(request)
    unread = room.change(number, edits, said)
    if unread:
        room.slips[number] = unread
    return RedirectResponse(f"/outfit/{number}{then}", SEE_OTHER)
