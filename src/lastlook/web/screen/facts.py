"""The outfit's own file as it stands, to be read and mended by hand; what in it can't be taken is said beside it."""

from __future__ import annotations

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit import MAIN
from lastlook.web.page import framed, number_of, room_of

SEE_OTHER = 303
LONGEST = 500_000
"""Characters; an outfit of many garments has a hundredth of it."""


def show(request: Request) -> Response:
    """Show the file."""
    desk = room_of(request).desk(number_of(request))
    data = dict(desk.document.files).get(MAIN, b"")
    findings = [one for one in desk.outfit.findings if one.certainty is not Certainty.NOTE or one.asks]
    return framed(
        request, "facts/page.html", desk, text=data.decode("utf-8-sig", errors="replace"), findings=findings, main=MAIN
    )


async def keep(request: Request) -> Response:
    """Keep the file as it was typed, whatever it says; what can't be read of it is shown at once."""
    async with request.form() as form:
        text = str(form.get("text") or "").replace("\r\n", "\n")
    if text.strip() and len(text) <= LONGEST:
        await run_in_threadpool(_keep, request, text)
    else:
        room_of(request).slips[number_of(request)] = _nothing()
    return RedirectResponse(request.url.path, SEE_OTHER)


def _keep(request: Request, text: str) -> None:
    room, number = room_of(request), number_of(request)
    room.keep(number, room.desk(number).document.with_file(MAIN, text.encode()), f"{MAIN} was written over.")


def _nothing() -> Finding:
    return Finding(
        "outfit-unread",
        Certainty.PROVEN,
        f"{MAIN} was not written over.",
        f"What was typed is empty, or longer than {LONGEST} letters.",
        "Take the last text as it was.",
        where=Where(fact=MAIN),
    )
