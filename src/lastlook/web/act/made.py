"""What hands did: a piece that came off the needles with its real rows and weight, a sitting with its minutes."""

from __future__ import annotations

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook.finding import Certainty, Edit, Finding
from lastlook.finding.finding import Plain
from lastlook.outfit import MadePiece, minutes_of
from lastlook.web.page import number_of, room_of

SEE_OTHER = 303
COUNTED = ("rows", "rows_to_underarm", "stitches")
MEASURED = ("width", "length", "grams")
LONGEST = 80


async def off_the_needles(request: Request) -> Response:
    """Note what a piece came to; a piece that was noted before is noted anew."""
    async with request.form() as form:
        piece, facts = str(form.get("piece") or "")[:LONGEST], _facts(form)
    if piece and facts:
        await run_in_threadpool(_note, request, piece, facts)
    path = request.url.path.removesuffix("/made")
    return RedirectResponse(str(request.url.replace(path=path, query="").include_query_params(piece=piece)), SEE_OTHER)


async def sat(request: Request) -> Response:
    """Note how long some rows took."""
    async with request.form() as form:
        piece, typed = str(form.get("piece") or "")[:LONGEST], str(form.get("minutes") or "")[:LONGEST]
        rows = [str(form.get(key) or "") for key in ("first", "last")]
    room, number = room_of(request), number_of(request)
    garment, minutes = str(request.path_params["garment"]), minutes_of(typed)
    if minutes is None:
        room.slips[number] = Finding(
            "fact-unread",
            Certainty.PROVEN,
            f"“{typed}” is no span of time.",
            "Nothing was noted.",
            "Write it like 40 min or 1 h 20 min.",
        )
    elif all(text.isascii() and text.isdigit() and len(text) < 6 for text in rows):
        first, last = (int(text) for text in rows)
        facts = (("piece", piece), ("first", first), ("last", last), ("minutes", typed), ("day", room.clock()[:10]))
        said = f"{piece}: rows {first} to {last} took {typed}."
        unread = await run_in_threadpool(room.change, number, [Edit(f"knitting.{garment}.log.+", facts)], said)
        if unread:
            room.slips[number] = unread
    path = request.url.path.removesuffix("/sitting")
    return RedirectResponse(str(request.url.replace(path=path, query="").include_query_params(piece=piece)), SEE_OTHER)


async def pin(request: Request) -> Response:
    """Pin a note to a row."""
    async with request.form() as form:
        piece, row, note = (str(form.get(key) or "").strip()[:LONGEST] for key in ("piece", "row", "note"))
    if note and row.isascii() and row.isdigit() and len(row) < 6:
        facts = (("piece", piece), ("row", int(row)), ("note", note))
        room, number = room_of(request), number_of(request)
        edit = Edit(f"knitting.{request.path_params['garment']}.notes.+", facts)
        said = f"{piece}, row {row}: {note}"
        unread = await run_in_threadpool(room.change, number, [edit], said)
        if unread:
            room.slips[number] = unread
    path = request.url.path.removesuffix("/note")
    return RedirectResponse(str(request.url.replace(path=path, query="").include_query_params(piece=piece)), SEE_OTHER)


def _facts(form: FormData) -> list[tuple[str, Plain]]:
    """Return what was filled in; a count that is a whole number as one, anything else as it was typed."""
    out: list[tuple[str, Plain]] = []
    for key in (*COUNTED, *MEASURED):
        typed = str(form.get(key) or "").strip()[:LONGEST]
        if typed:
            out.append((key, int(typed) if key in COUNTED and typed.isascii() and typed.isdigit() else typed))
    return out


def _note(request: Request, piece: str, facts: list[tuple[str, Plain]]) -> None:
    room, number = room_of(request), number_of(request)
    garment = str(request.path_params["garment"])
    spot = _known(room.desk(number).outfit.made, garment, piece)
    if spot is None:
        edits = [Edit("made.+", (("garment", garment), ("piece", piece), *facts))]
    else:
        edits = [Edit(f"made.{spot}.{key}", value) for key, value in facts]
    unread = room.change(number, edits, f"{piece} is off the needles.")
    if unread:
        room.slips[number] = unread


def _known(made: tuple[MadePiece, ...], garment: str, piece: str) -> int | None:
    pairs = enumerate(made)
    return next((spot for spot, one in pairs if one.garment == garment and one.piece.lower() == piece.lower()), None)
