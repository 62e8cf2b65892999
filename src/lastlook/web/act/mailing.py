"""An outfit as the one file that is mailed: given out, and taken in."""

from __future__ import annotations

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook import keep, outfit
from lastlook.finding import Finding
from lastlook.web.page import bare, number_of, room_of

SEE_OTHER = 303


async def receive(request: Request) -> Response:
    """Take in a mailed outfit."""
    room = room_of(request)
    async with request.form() as form:
        mailed = form.get("mailed")
        if not isinstance(mailed, UploadFile) or not mailed.filename:
            return RedirectResponse("/shelf", SEE_OTHER)
        name, data = mailed.filename.rsplit("/")[-1].removesuffix(".zip"), await mailed.read()
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
