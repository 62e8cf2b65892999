"""A mock-up put on, and what was seen on the body: kept as it was seen, before anything is made of it."""

from __future__ import annotations

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook.finding import Certainty, Edit, Finding
from lastlook.finding.finding import Plain
from lastlook.paper.toile import Seen, read_toile
from lastlook.web.page import number_of, room_of

SEE_OTHER = 303
LONGEST = 200
Rows = tuple[tuple[str, Plain], ...]


async def put_on(request: Request) -> Response:
    """Begin a new toile: of which cloth, and how far down it is sewn."""
    async with request.form() as form:
        rows = _filled(form, ("cloth", "sewn_to"))
        same: Rows = (("same_cloth", True),) if form.get("same_cloth") else ()
    await run_in_threadpool(_add, request, "+", (*rows, *same), "A toile was put on.")
    return _back(request)


async def seen(request: Request) -> Response:
    """Note what was seen on the newest toile, or say why it can't be read."""
    async with request.form() as form:
        what = str(form.get("what") or "")
        key = "pinned" if what == Seen.PINCHED.value else "amount"
        amount = str(form.get("amount") or "").strip()[:LONGEST]
        rows: Rows = (*_filled(form, ("what", "at", "part")), *(((key, amount),) if amount else ()))
        if form.get("on_purpose"):
            rows = (*rows, ("on_purpose", True))
    await run_in_threadpool(_note, request, rows)
    return _back(request)


def _note(request: Request, rows: Rows) -> None:
    room, number = room_of(request), number_of(request)
    one = room.desk(number).sewn(str(request.path_params["garment"]))
    _, slips = read_toile({"seen": [dict(rows)]}, 1)
    if slips:
        room.slips[number] = slips[0]
    elif not one.plan.toiles:
        room.slips[number] = Finding(
            "toile-unread",
            Certainty.PROVEN,
            "No toile was put on yet.",
            "What was seen belongs to one.",
            "Put one on first.",
        )
    else:
        facts = dict(rows)
        said = f"Toile {len(one.plan.toiles)}: {facts['what']} at the {facts['at']}."
        _add(request, f"{len(one.plan.toiles) - 1}.seen.+", rows, said)


def _add(request: Request, spot: str, rows: Rows, said: str) -> None:
    room, number = room_of(request), number_of(request)
    fact = f"sewing.{request.path_params['garment']}.toiles.{spot}"
    unread = room.change(number, [Edit(fact, rows)], said)
    if unread:
        room.slips[number] = unread


def _filled(form: FormData, keys: tuple[str, ...]) -> Rows:
    typed = [(key, str(form.get(key) or "").strip()[:LONGEST]) for key in keys]
    return tuple((key, text) for key, text in typed if text)


def _back(request: Request) -> Response:
    return RedirectResponse(request.url.path.rsplit("/", 1)[0], SEE_OTHER)
