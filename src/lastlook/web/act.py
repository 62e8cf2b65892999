"""What a maker does on any screen: a fact changed, an offered remedy taken, undo, redo, an outfit taken in or mailed.

Every change comes back as the screen it was made on, with the answers as they are now.
"""

from __future__ import annotations

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook import keep, outfit
from lastlook.finding import Finding
from lastlook.web.as_form import LONGEST_FACT, edits_of
from lastlook.web.page import bare, number_of, room_of

SEE_OTHER = 303


async def change(request: Request) -> Response:
    """Take the edits of a form: `edits` as JSON, or one `fact` with what was typed as `value`."""
    form = await request.form()
    edits = edits_of(form)
    said = str(form.get("said") or "Changed on the screen.")[:LONGEST_FACT]
    room, number = room_of(request), number_of(request)
    if edits:
        said = said.replace("{value}", str(form.get("value") or ""))
        await run_in_threadpool(room.change, number, edits, said)
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


async def receive(request: Request) -> Response:
    """Take in a mailed outfit."""
    form = await request.form()
    mailed = form.get("mailed")
    room = room_of(request)
    if not isinstance(mailed, UploadFile) or not mailed.filename:
        return RedirectResponse("/", SEE_OTHER)
    name = mailed.filename.rsplit("/")[-1].removesuffix(".zip")
    data = await mailed.read()
    kept = await run_in_threadpool(keep.receive, room.shelf, name, data, room.clock())
    if isinstance(kept, Finding):
        return bare("shelf/page.html", 422, outfits=room.shelf.outfits(), refusal=kept)
    return RedirectResponse(f"/outfit/{kept.id}", SEE_OTHER)


def mail(request: Request) -> Response:
    """Give the outfit out as the one file that is mailed."""
    room, number = room_of(request), number_of(request)
    data = outfit.pack(room.shelf.document(number))
    name = "".join(sign if sign.isascii() and sign.isalnum() else "-" for sign in room.kept(number).name)
    disposition = f'attachment; filename="{name or "outfit"}.zip"'
    return Response(data, media_type="application/zip", headers={"content-disposition": disposition})


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
