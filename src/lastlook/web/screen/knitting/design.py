"""Designed from measures alone: what is asked for in words, its drawing, its measures and its leaflet, then kept."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook import outfit, sheet
from lastlook.finding import Edit, Finding
from lastlook.knit import compose
from lastlook.outfit import Outfit
from lastlook.quantity import Gauge, Unread, write_length
from lastlook.web import drawings, words
from lastlook.web.act import plain
from lastlook.web.page import framed, number_of, room_of
from lastlook.web.screen.knitting.wished import EDGINGS, NECKS, SLEEVES, wish_of

SEE_OTHER = 303
LONGEST = 80
LONGEST_TEXTURE = 4000


@dataclass(frozen=True)
class Designed:
    """What was asked for, and what it came to."""

    made: compose.Composed | None
    gauge: Gauge | None
    findings: tuple[Finding, ...]


def show(request: Request) -> Response:
    """Show the form, and what was designed if anything was asked for."""
    desk = room_of(request).desk(number_of(request))
    asked = {key: _cut(key, value) for key, value in request.query_params.items()}
    found = _designed(desk.outfit, asked) if "garment" in asked else None
    made = found.made if found else None
    manner = sheet.manner_of(desk.outfit)
    pictures = drawings.worked(made.pieces, found.gauge, manner) if made and found and found.gauge else []
    return framed(
        request,
        "design/page.html",
        desk,
        asked=defaultdict(str, asked),
        found=found,
        made=made,
        pictures=pictures,
        garments=tuple(compose.GARMENTS),
        eases=[(one.name, _ease_words(one, desk.outfit)) for one in compose.EASE.values()],
        necks=NECKS,
        sleeves=SLEEVES,
        edgings=EDGINGS,
        lengths=compose.LENGTHS,
        swatches=[(one.name, _gauge_words(one.gauge, desk.outfit)) for one in desk.outfit.swatches],
        yarns=desk.outfit.yarns,
    )


async def keep(request: Request) -> Response:
    """Put what was designed into the outfit: its leaflet, and a garment to be knitted from it."""
    async with request.form() as form:
        asked = {key: _cut(key, str(value)) for key, value in form.items()}
    return await run_in_threadpool(_kept, request, asked)


def _kept(request: Request, asked: Mapping[str, str]) -> Response:
    room, number = room_of(request), number_of(request)
    desk = room.desk(number)
    found = _designed(desk.outfit, asked)
    if found.made is None or not found.made.leaflet:
        room.slips[number] = found.findings[0] if found.findings else _nothing()
        return RedirectResponse(request.url.path, SEE_OTHER)
    name = _free(plain(asked.get("name", "")) or asked["garment"].rpartition("-")[2], desk.outfit)
    file = f"leaflets/{name}.txt"
    edits = [Edit(f"knitting.{name}.leaflet", file)]
    edits += [Edit(f"knitting.{name}.{key}", asked[key]) for key in ("swatch", "yarn") if asked.get(key)]
    holding = desk.document.with_file(file, found.made.leaflet.encode())
    room.keep(number, outfit.change(holding, edits), f"The {name} was designed from the measures.")
    return RedirectResponse(f"/outfit/{number}/leaflet/{name}", SEE_OTHER)


def _cut(key: str, value: str) -> str:
    return value[: LONGEST_TEXTURE if key == "texture" else LONGEST]


def _free(name: str, whole: Outfit) -> str:
    """Return a name that no garment has yet."""
    taken = {one.name for one in whole.knittings} | {one.name for one in whole.sewings}
    tries = (name, *(f"{name}-{number}" for number in range(2, len(taken) + 3)))
    return next(one for one in tries if one not in taken)


def _designed(whole: Outfit, asked: Mapping[str, str]) -> Designed:
    """Compose what was asked for, or say why it can't be."""
    design = compose.GARMENTS.get(asked.get("garment", ""))
    wish = wish_of(whole, asked)
    if isinstance(wish, Unread):
        return Designed(None, None, (compose.unread(wish),))
    if design is None:
        return Designed(None, None, (_nothing(),))
    made = compose.proven(design(whole.wearer, wish))
    return Designed(made, wish.gauge, made.findings)


def _ease_words(one: compose.EaseClass, whole: Outfit) -> str:
    """Return a class of ease with its numbers.

    The numbers are what the garment measures more than the body at the bust.
    """
    low, high = (write_length(abs(mm), whole.manner.units) for mm in (one.low_mm, one.high_mm))
    if one.high_mm <= 0:
        return f"{one.name}: up to {low} less than you"
    return f"{one.name}: {low} to {high} more than you"


def _gauge_words(gauge: Gauge, whole: Outfit) -> str:
    return words.said_by(whole.manner)(sheet.gauge_words(gauge, sheet.manner_of(whole)))


def _nothing() -> Finding:
    return compose.unread(Unread("", "No such garment is known here.", "Choose one of those that are listed."))
