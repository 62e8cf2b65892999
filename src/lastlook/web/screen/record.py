"""The record: what was done, so that it can be done again, with photographs that can be laid over each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook import outfit, sheet
from lastlook.finding import Certainty, Edit, Finding
from lastlook.finding.finding import Plain
from lastlook.outfit import Document, Outfit, Photograph
from lastlook.web.page import framed, number_of, room_of

SEE_OTHER = 303
FOLDER = "photographs/"
MOST_PICTURES = 12
MOST_BYTES = 10 * 1024 * 1024
"""Of one photograph."""
MOST_IN_ALL = 56 * 1024 * 1024
"""Of an outfit with its photographs; the roof of one that is mailed is a little higher."""
LONGEST = 200
MOST_STEPS = 40
BEGINS = ((b"\xff\xd8\xff", "jpg", "image/jpeg"), (b"\x89PNG\r\n\x1a\n", "png", "image/png"))
"""How a picture's file begins, the ending that it gets, and what it is served as."""


@dataclass(frozen=True)
class Sent:
    """What was sent with photographs."""

    of: str
    toile: str
    note: str
    pictures: tuple[bytes, ...]


def show(request: Request) -> Response:
    """Show the record."""
    desk = room_of(request).desk(number_of(request))
    pictures = desk.outfit.photographs
    laid = [_asked(request, key, pictures) for key in ("below", "above")]
    history = room_of(request).shelf.history(number_of(request))
    return framed(
        request,
        "record/page.html",
        desk,
        kept=sheet.record_of(desk.derived),
        pictures=pictures,
        below=laid[0] or (pictures[0] if len(pictures) > 1 else None),
        above=laid[1] or (pictures[-1] if len(pictures) > 1 else None),
        subjects=_subjects(desk.outfit),
        steps=list(reversed(history))[:MOST_STEPS],
    )


def _subjects(whole: Outfit) -> list[str]:
    """Return what a photograph may be of."""
    garments = [one.name for one in whole.knittings] + [one.name for one in whole.sewings]
    return garments + [one.name for one in whole.yarns] + [one.name for one in whole.cloths]


def picture(request: Request) -> Response:
    """Give out one photograph of the outfit."""
    name = FOLDER + str(request.path_params["name"])
    data = dict(room_of(request).desk(number_of(request)).document.files).get(name)
    kind = next((kind for begin, _, kind in BEGINS if data and data.startswith(begin)), None)
    if data is None or kind is None:
        raise LookupError(f"There is no photograph called {name}.")
    return Response(data, media_type=kind)


async def keep(request: Request) -> Response:
    """Keep photographs with what they are of."""
    async with request.form(max_files=MOST_PICTURES + 1) as form:
        files = [one for one in form.getlist("pictures") if isinstance(one, UploadFile) and one.filename]
        large = len(files) > MOST_PICTURES or any((one.size or 0) > MOST_BYTES for one in files)
        words = [str(form.get(key) or "").strip()[:LONGEST] for key in ("of", "toile", "note", "back")]
        sent = Sent(words[0], words[1], words[2], tuple([await one.read() for one in files] if not large else ()))
    await run_in_threadpool(_keep, request, sent)
    at = f"/outfit/{number_of(request)}/"
    own = words[3].startswith(at) and "\\" not in words[3] and "\n" not in words[3]
    return RedirectResponse(words[3] if own else at + "record", SEE_OTHER)


def _keep(request: Request, sent: Sent) -> None:
    room, number = room_of(request), number_of(request)
    holding, edits = room.desk(number).document, []
    for data in sent.pictures:
        ending = next((ending for begin, ending, _ in BEGINS if data.startswith(begin)), None)
        if ending is None:
            room.slips[number] = _no_picture("JPEG and PNG are kept, as a camera makes them.")
            return
        file = _free(holding, ending)
        holding = holding.with_file(file, data)
        facts: list[tuple[str, Plain]] = [("file", file), ("of", sent.of), ("note", sent.note)]
        facts += [("toile", int(sent.toile))] if sent.toile.isascii() and sent.toile.isdigit() else []
        day = ("day", room.clock()[:10])
        edits.append(Edit("photographs.+", (*((key, value) for key, value in facts if value != ""), day)))
    if not edits:
        room.slips[number] = _no_picture(f"Up to {MOST_PICTURES} of {MOST_BYTES // 2**20} MB each are kept at once.")
    elif sum(len(data) for _, data in holding.files) > MOST_IN_ALL:
        room.slips[number] = _no_picture("With it the outfit would be too large to be mailed.")
    else:
        said = f"{len(edits)} photograph{'s were' if len(edits) > 1 else ' was'} kept."
        room.keep(number, outfit.change(holding, edits), said)


def _free(holding: Document, ending: str) -> str:
    """Return a name that no photograph has yet."""
    taken = {name.rpartition(".")[0] for name, _ in holding.files}
    number = next(one for one in range(1, len(taken) + 2) if f"{FOLDER}{one:03}" not in taken)
    return f"{FOLDER}{number:03}.{ending}"


def _asked(request: Request, key: str, pictures: Sequence[Photograph]) -> Photograph | None:
    return next((one for one in pictures if one.file == request.query_params.get(key)), None)


def _no_picture(why: str) -> Finding:
    attempt = "Save it as JPEG, a little smaller, and choose it again."
    return Finding("picture-unreadable", Certainty.PROVEN, "No photograph was kept.", why, attempt)
