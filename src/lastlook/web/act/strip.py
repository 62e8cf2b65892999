"""A strip of tape laid on a paper piece: one alteration, chosen in words, added to the garment's list."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook import paper
from lastlook.finding import Edit, Finding
from lastlook.web.page import number_of, room_of
from lastlook.web.room import Room

SEE_OTHER = 303


@dataclass(frozen=True)
class Way:
    """One way to alter a piece, as a maker asks for it."""

    words: str
    kind: str
    more: tuple[tuple[str, str], ...] = ()


WAYS: Mapping[str, Way] = {
    "in-waist": Way("take in at the waist, each side edge, by", "narrow", (("at", "waist"),)),
    "out-waist": Way("let out at the waist, each side edge, by", "widen", (("at", "waist"),)),
    "in-hip": Way("take in at the hip, each side edge, by", "narrow", (("at", "hip"),)),
    "out-hip": Way("let out at the hip, each side edge, by", "widen", (("at", "hip"),)),
    "in-all": Way("take in from waist to hem, each side edge, by", "narrow", (("at", "all"),)),
    "out-all": Way("let out from waist to hem, each side edge, by", "widen", (("at", "all"),)),
    "dart-wider": Way("make the first dart wider, both legs together, by", "dart-width"),
    "longer": Way("lengthen at the hem by", "lengthen", (("at", "hem"),)),
    "shorter": Way("shorten at the hem by", "shorten", (("at", "hem"),)),
    "longer-line": Way("lengthen at the line by", "lengthen", (("at", "line"),)),
    "shorter-line": Way("shorten at the line by", "shorten", (("at", "line"),)),
    "raise": Way("raise the waist edge by", "raise-waist"),
    "drop": Way("drop the waist edge by", "drop-waist"),
    "flare": Way("add flare at the hem of each side edge, by", "flare"),
    "band": Way("cut the band longer by", "band-length"),
}


async def lay_on(request: Request) -> Response:
    """Lay a strip on a piece, or say why it can't be read."""
    async with request.form() as form:
        way = WAYS.get(str(form.get("way")))
        piece, by = str(form.get("piece") or "")[:80], str(form.get("by") or "").strip()[:80]
    if way is None:
        raise LookupError("There is no such alteration.")
    table = (("kind", way.kind), ("piece", piece), ("by", by), *way.more)
    return await run_in_threadpool(_laid, request, table, f"{piece}: {way.words} {by}.")


def _laid(request: Request, table: tuple[tuple[str, str], ...], said: str) -> Response:
    garment = str(request.path_params["garment"])
    read = paper.read_alteration(dict(table))
    room, number = room_of(request), number_of(request)
    if isinstance(read, Finding):
        room.slips[number] = read
    else:
        _keep(room, number, Edit(f"sewing.{garment}.alterations.+", table), said)
        request.app.state.laying.start_behind(number)
    return RedirectResponse(request.url.path.removesuffix("/strip"), SEE_OTHER)


def _keep(room: Room, number: int, edit: Edit, said: str) -> None:
    unread = room.change(number, [edit], said)
    if unread:
        room.slips[number] = unread
