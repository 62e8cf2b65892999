"""A leaflet from photographs of its pages: the paper beside what was read, each doubtful word beside its picture.

A repair is shown with what was seen, and a figure is never changed but by the maker's own hand.
"""

from __future__ import annotations

import base64
from collections.abc import Sequence
from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook import outfit, scan
from lastlook.finding import Certainty, Edit, Finding, Span
from lastlook.web.act import plain
from lastlook.web.behind import Job, Scanning
from lastlook.web.page import framed, number_of, room_of

SEE_OTHER = 303
MOST_PAGES = 12
MOST_BYTES = 40 * 1024 * 1024
"""Of one photograph; the largest that a telephone makes has a third of it."""
LONGEST_TEXT, LONGEST_WORD = 200_000, 80
AGAIN_S = "2"
"""Seconds after which a page that waits is asked for again."""
MOST_PICTURES = 6
"""Words whose pictures are shown beside one note."""


@dataclass(frozen=True)
class Beside:
    """A word of the text beside its picture on the paper."""

    pictures: tuple[str, ...]
    """As data addresses."""
    was: str
    now: str
    more: tuple[str, ...] = ()
    """What else it may be."""
    page: int = 1


def show(request: Request) -> Response:
    """Show how far the reading is, or what was read."""
    desk = room_of(request).desk(number_of(request))
    job = _scanning(request).of(number_of(request))
    found = job.scanned if job else None
    answer = framed(
        request,
        "pages/page.html",
        desk,
        job=job,
        found=found,
        hand=scan.is_at_hand(),
        doubts=_doubts(found) if found else (),
        repairs=_repairs(found) if found else (),
        proofs=[(one, _pictures(found, _words_at(found, one.where.span))) for one in job.proofs]
        if job and found
        else (),
        notes=[one for one in found.findings if one.kind not in ("words-repaired", "figure-doubtful")] if found else (),
    )
    if job and job.is_going:
        answer.headers["refresh"] = AGAIN_S
    return answer


def picture(request: Request) -> Response:
    """Give out the picture of one page, upright and level."""
    job = _scanning(request).of(number_of(request))
    pages = job.scanned.pages if job and job.scanned else ()
    which = int(request.path_params["which"])
    if not 0 <= which < len(pages):
        raise LookupError(f"There is no page {which + 1}.")
    return Response(pages[which].picture, media_type="image/jpeg")


async def read(request: Request) -> Response:
    """Take photographs of a leaflet's pages, and begin to read them."""
    async with request.form(max_files=MOST_PAGES + 1) as form:
        name = plain(str(form.get("name") or "")[:LONGEST_WORD]) or "pullover"
        sent = [one for one in form.getlist("pages") if isinstance(one, UploadFile) and one.filename]
        slip = _too_much(sent)
        pages = [] if slip else [(_title(one), await one.read()) for one in sent]
    at = f"/outfit/{number_of(request)}"
    if slip:
        room_of(request).slips[number_of(request)] = slip
    if slip or not pages:
        return RedirectResponse(f"{at}/add", SEE_OTHER)
    _scanning(request).start(number_of(request), name, pages)
    return RedirectResponse(f"{at}/pages", SEE_OTHER)


async def keep(request: Request) -> Response:
    """Keep what was read as a leaflet, with the words that the maker put right, and the pictures beside it."""
    job = _scanning(request).of(number_of(request))
    found = job.scanned if job else None
    async with request.form() as form:
        text = _corrected(found, form) if found else ""
    if job is None or found is None or not text.strip():
        return RedirectResponse(request.url.path, SEE_OTHER)
    return await run_in_threadpool(_kept, request, job, found, text)


def _kept(request: Request, job: Job, found: scan.Scanned, text: str) -> Response:
    room, number = room_of(request), number_of(request)
    holding, file = room.desk(number).document.with_file(f"leaflets/{job.name}.txt", text.encode()), job.name
    for which, page in enumerate(found.pages, 1):
        holding = holding.with_file(f"photographs/{file}-page-{which}.jpg", page.picture)
    edits = [Edit(f"knitting.{job.name}.leaflet", f"leaflets/{job.name}.txt")]
    room.keep(number, outfit.change(holding, edits), f"The leaflet of the {job.name} was read from its pages.")
    _scanning(request).put_away(number)
    return RedirectResponse(f"/outfit/{number}/leaflet/{job.name}", SEE_OTHER)


def _corrected(found: scan.Scanned, form: FormData) -> str:
    """Return the text: as it was typed over as a whole, or with single words put right."""
    whole = str(form.get("text") or "").replace("\r\n", "\n")[:LONGEST_TEXT]
    if whole:
        return whole
    text = found.text
    for which, doubt in sorted(enumerate(found.doubtful), key=lambda one: -one[1].span.start):
        typed = str(form.get(f"doubt-{which}") or "").strip()[:LONGEST_WORD]
        if typed:
            text = text[: doubt.span.start] + typed + text[doubt.span.end :]
    return text


def _doubts(found: scan.Scanned) -> list[Beside]:
    return [
        Beside(_pictures(found, [one.word]), "", one.read, one.rivals[:3], found.words[one.word].page + 1)
        for one in found.doubtful
    ]


def _repairs(found: scan.Scanned) -> list[Beside]:
    return [Beside(_pictures(found, _words_at(found, one.span)), one.was, one.now, (one.why,)) for one in found.repairs]


def _proofs(found: scan.Scanned, proofs: Sequence[Finding]) -> list[tuple[Finding, tuple[str, ...]]]:
    return [(one, _pictures(found, _words_at(found, one.where.span))) for one in proofs]


def _words_at(found: scan.Scanned, span: Span | None) -> list[int]:
    words = enumerate(found.words)
    return [which for which, word in words if span and word.span.start < span.end and span.start < word.span.end]


def _pictures(found: scan.Scanned, words: Sequence[int]) -> tuple[str, ...]:
    cut = (base64.b64encode(scan.cut_out(found, which)).decode() for which in words[:MOST_PICTURES])
    return tuple(f"data:image/png;base64,{one}" for one in cut)


def _title(sent: UploadFile) -> str:
    return (sent.filename or "page").replace("\\", "/").rsplit("/", 1)[-1][:LONGEST_WORD]


def _too_much(sent: Sequence[UploadFile]) -> Finding | None:
    large = next((one for one in sent if (one.size or 0) > MOST_BYTES), None)
    if large is None and len(sent) <= MOST_PAGES:
        return None
    said = f"{_title(large)} is larger than {MOST_BYTES // 2**20} MB." if large else f"{len(sent)} pages are many."
    return Finding(
        "picture-too-large",
        Certainty.PROVEN,
        said,
        f"Up to {MOST_PAGES} photographs of {MOST_BYTES // 2**20} MB each are read at once; nothing was read.",
        "Halve the size of the photographs, or read the leaflet in two parts.",
    )


def _scanning(request: Request) -> Scanning:
    scanning: Scanning = request.app.state.scanning
    return scanning
