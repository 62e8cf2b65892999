"""The cutting table: the lay from the cutter's side, what is left over in words, and the pieces moved by hand."""

from __future__ import annotations

from typing import Any

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import JSONResponse, RedirectResponse, Response

from lastlook import lay, outfit, sheet
from lastlook.finding import Certainty, Edit, Finding
from lastlook.quantity import Missing
from lastlook.sheet.cutting import in_words, use_of
from lastlook.web import words
from lastlook.web.behind import Laying
from lastlook.web.page import framed, number_of, room_of
from lastlook.web.table import for_hands, on_table, times_of

SEE_OTHER = 303
MOST_PLACEMENTS = 500


def show(request: Request) -> Response:
    """Show a garment's cutting table."""
    number = number_of(request)
    desk = room_of(request).desk(number)
    one = desk.sewn(request.path_params["garment"])
    manner = sheet.manner_of(desk.outfit)
    placements = () if isinstance(one.placements, Missing) else one.placements
    table = on_table(one, placements)
    proven = one.judgement is not None and one.judgement.proven
    search = laying_of(request).of(number, one.plan.name)
    return framed(
        request,
        "lay/page.html",
        desk,
        one=one,
        table=table,
        drawing=sheet.svg(sheet.draw_table(table, times_of(table), manner)).replace('role="img"', 'role="group"', 1)
        if table
        else "",
        hands=for_hands(one, table, manner) if table else {},
        rests=[(in_words(rest, manner), use_of(rest)) for rest in table.left_over] if table and proven else [],
        proven=proven,
        searching=search is not None and not search.ended,
        choices=search.choices if search and search.problem == one.problem and not proven else (),
        last_search=search.say if search and search.revision == room_of(request).shelf.stands_at(number).id else "",
    )


async def judge(request: Request) -> Response:
    """Say, while a piece is held, whether it may lie where it is."""
    asked = await request.json()
    return JSONResponse(await run_in_threadpool(_judged, request, asked))


async def put(request: Request) -> Response:
    """Keep the pieces where hands have laid them."""
    asked = await request.json()
    await run_in_threadpool(_put, request, asked)
    return RedirectResponse(request.url.path.removesuffix("/put"), SEE_OTHER)


async def search(request: Request) -> Response:
    """Start a search; pieces that are held fast stay where they are."""
    asked = await request.json()
    return JSONResponse(await run_in_threadpool(_start, request, asked))


async def choose(request: Request) -> Response:
    """Take one of the changes that would make it fit."""
    async with request.form() as form:
        spot = str(form.get("spot"))
    if spot.isascii() and spot.isdigit():
        garment = str(request.path_params["garment"])
        await run_in_threadpool(laying_of(request).choose, number_of(request), garment, int(spot))
    return RedirectResponse(request.url.path.removesuffix("/choose"), SEE_OTHER)


def watch(request: Request) -> Response:
    """Say how far the search is."""
    going = laying_of(request).of(number_of(request), request.path_params["garment"])
    return JSONResponse(_told(going))


def stop(request: Request) -> Response:
    """Let the search end with the best it has."""
    going = laying_of(request).of(number_of(request), request.path_params["garment"])
    if going:
        going.stop()
    return JSONResponse(_told(going))


def laying_of(request: Request) -> Laying:
    """Return the searches of the application."""
    laying: Laying = request.app.state.laying
    return laying


def _told(going: Any) -> dict[str, Any]:
    if going is None:
        return {"going": False, "say": ""}
    if going.ended:
        return {"going": False, "say": going.say}
    if going.conceding:
        return {
            "going": True,
            "say": "It does not all come out as it is. Looking for the least that would make it fit.",
        }
    if going.best is not None and going.best.fits:
        return {"going": True, "say": f"Everything lies. Saving cloth: {going.passes} tries so far."}
    return {
        "going": True,
        "say": f"Looking: {going.passes} tries, {words.counted(going.overlapping, 'piece')} still in the way.",
    }


def _asked(request: Request, asked: Any) -> tuple[outfit.Sewn, tuple[lay.Placement, ...]]:
    """Return the garment and the placements a page sent; raises LookupError for what is no lay."""
    desk = room_of(request).desk(number_of(request))
    one = desk.sewn(request.path_params["garment"])
    sent = asked.get("placements") if isinstance(asked, dict) else None
    if not isinstance(sent, list) or len(sent) > MOST_PLACEMENTS:
        raise LookupError("no placements were sent")
    placements = lay.read_placements(sent)
    if placements is None:
        raise LookupError("a placement can't be read")
    return one, placements


def _judged(request: Request, asked: Any) -> dict[str, Any]:
    one, placements = _asked(request, asked)
    spot = asked.get("spot")
    if one.problem is None or not isinstance(spot, int) or not 0 <= spot < len(placements):
        return {"good": False, "say": []}
    found = lay.judge_one(one.problem, placements, spot)
    say = words.said_by(room_of(request).desk(number_of(request)).outfit.manner)
    return {"good": found.proven, "say": [say(finding.say) for finding in found.findings[:3]]}


def _put(request: Request, asked: Any) -> None:
    one, placements = _asked(request, asked)
    room, number = room_of(request), number_of(request)
    if one.problem is None or not placements:
        return
    if not set(one.cut) <= set(placements):
        room.slips[number] = _cut_already()
        return
    proven = lay.judge(one.problem, placements, one.cut).proven
    found = lay.Lay(proven, proven, placements)
    name = str(asked.get("moved") or "A piece")[:80]
    room.keep(number, outfit.with_lay(room.desk(number).document, one, found), f"{name} was moved on the cloth.")


async def cut(request: Request) -> Response:
    """Note that a piece was cut out, where it lies; only a lay that is proven is cut by."""
    async with request.form() as form:
        key = tuple(str(form.get(name)) for name in ("cut", "copy", "part"))
    await run_in_threadpool(_cut, request, key)
    return RedirectResponse(request.url.path.removesuffix("/cut"), SEE_OTHER)


def _cut(request: Request, key: tuple[str, ...]) -> None:
    room, number = room_of(request), number_of(request)
    one = room.desk(number).sewn(request.path_params["garment"])
    placements = () if isinstance(one.placements, Missing) else one.placements
    place = next((one for one in placements if (one.id, str(one.copy), str(one.part)) == key), None)
    if place is None or place in one.cut:
        return
    if one.judgement is None or not one.judgement.proven:
        room.slips[number] = _not_proven()
        return
    facts = (("piece", place.id), ("copy", place.copy), ("part", place.part), ("day", room.clock()[:10]))
    unread = room.change(number, [Edit(f"sewing.{one.plan.name}.cut.+", facts)], f"{place.id} was cut out.")
    if unread:
        room.slips[number] = unread


def _cut_already() -> Finding:
    return Finding(
        "lay-stale",
        Certainty.PROVEN,
        "That piece is cut out already; nothing was moved.",
        "A cut is a fact, and the rest is laid round it.",
        "Take the cut back if the blade has not been there.",
    )


def _not_proven() -> Finding:
    return Finding(
        "lay-stale",
        Certainty.PROVEN,
        "The lay as it is now is not proven; nothing was noted as cut.",
        "A cut can't be taken back, and something is in the way.",
        "Lay the rest again first.",
    )


def _start(request: Request, asked: Any) -> dict[str, Any]:
    room, number = room_of(request), number_of(request)
    one = room.desk(number).sewn(request.path_params["garment"])
    locked: tuple[lay.Placement, ...] = ()
    held = asked.get("locked") if isinstance(asked, dict) else None
    if isinstance(held, list) and held:
        _, placements = _asked(request, asked)
        locked = tuple(place for spot, place in enumerate(placements) if spot in held)
    return _told(laying_of(request).start(number, one, locked))
