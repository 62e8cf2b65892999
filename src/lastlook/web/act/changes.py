"""What a maker does on any screen: a fact changed, an offered remedy taken, undo, redo.

Every change comes back as the screen it was made on, with the answers as they are now.
"""

from __future__ import annotations

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook.web.as_form import LONGEST_FACT, edits_of
from lastlook.web.page import number_of, room_of

SEE_OTHER = 303


async def change(request: Request) -> Response:
    """Take the edits of a form: `edits` as JSON, or one `fact` with what was typed as `value`."""
    form = await request.form()
    edits = edits_of(form)
    said = str(form.get("said") or "Changed on the screen.")[:LONGEST_FACT]
    room, number = room_of(request), number_of(request)
    if edits:
        said = said.replace("{value}", str(form.get("value") or ""))
        unread = await run_in_threadpool(room.change, number, edits, said)
        if unread:
            room.slips[number] = unread
        await run_in_threadpool(request.app.state.laying.start_behind, number)
    return _back(request, form)


async def undo(request: Request) -> Response:
    """Take the last change back."""
    form = await request.form()
    await run_in_threadpool(_move, request, "undo")
    return _back(request, form)


async def redo(request: Request) -> Response:
    """Bring back what undo took away."""
    form = await request.form()
    await run_in_threadpool(_move, request, "redo")
    return _back(request, form)


def _move(request: Request, way: str) -> None:
    room, number = room_of(request), number_of(request)
    room.follow(number)
    (room.shelf.undo if way == "undo" else room.shelf.redo)(number, room.clock())
    room.follow(number)


def _back(request: Request, form: FormData) -> Response:
    """Send the maker back to where she was, which is always a screen of this outfit."""
    at = f"/outfit/{number_of(request)}"
    back = str(form.get("back") or at)
    own = back == at or back.startswith(at + "/")
    return RedirectResponse(back if own and "\\" not in back and "\n" not in back else at, SEE_OTHER)
