"""Paper pieces from elsewhere: a file taken in, and everything that can be said of a piece on one form, no wizard."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from lastlook import outfit, sheet
from lastlook.finding import Certainty, Edit, Finding
from lastlook.finding.finding import Plain
from lastlook.outfit import Sewn, TakenPiece
from lastlook.paper import Outline
from lastlook.web.act import plain
from lastlook.web.page import number_of, room_of

SEE_OTHER = 303
MOST_FILES, MOST_PIECES = 12, 24
MOST_BYTES = 20 * 1024 * 1024
LONGEST = 80
NAMES = ("waist", "side", "centre", "hem", "left side", "right side", "end", "top", "seam")
"""What an edge may be; any other name may be written into the outfit's own file."""
PLAIN_FACTS = ("name", "line", "allowance", "quantity", "fold", "grain", "hip", "lengthen")


@dataclass(frozen=True)
class Foreign:
    """One piece as the form shows it."""

    spot: int
    said: TakenPiece
    drawing: str
    runs: tuple[tuple[int, str, float], ...]
    """Each edge of the outline: its number, its name, its length in mm."""
    told: frozenset[int]
    """The numbers of those that the maker named."""
    names: tuple[str, ...]
    """The names of its edges once they are joined."""
    is_own: bool
    """Whether the file is one of ours, which says everything already."""


def foreign(one: Sewn, folder: outfit.Document) -> list[Foreign]:
    """Return the pieces of a garment that were taken in."""
    return [_foreign(spot, said, one, folder) for spot, said in enumerate(one.plan.taken)]


def _foreign(spot: int, said: TakenPiece, one: Sewn, folder: outfit.Document) -> Foreign:
    outline = outfit.outline_of(folder, said)
    if not isinstance(outline, Outline):
        return Foreign(spot, said, "", (), frozenset(), (), not isinstance(outline, Finding))
    runs = outfit.runs_named(outline.path, dict(said.edges))
    made = one.drafted.piece(said.name)
    return Foreign(
        spot,
        said,
        sheet.svg(sheet.draw_runs(said.name, runs)).replace('role="img"', 'role="group"', 1),
        tuple((number, name, run.length_mm()) for number, (run, name) in enumerate(runs, 1)),
        frozenset(number for number, _ in said.edges),
        tuple(side.name for side in made.sides) if made else (),
        False,
    )


async def receive(request: Request) -> Response:
    """Take files of pieces in, each closed outline a piece; edges are named as they lie until the maker says."""
    async with request.form(max_files=MOST_FILES + 1) as form:
        garment = plain(str(form.get("name") or "")[:LONGEST]) or "skirt"
        cloth = str(form.get("cloth") or "")[:LONGEST]
        sent = [one for one in form.getlist("files") if isinstance(one, UploadFile) and one.filename]
        large = len(sent) > MOST_FILES or any((one.size or 0) > MOST_BYTES for one in sent)
        files = [] if large else [(one.filename or "", await one.read()) for one in sent]
    return await run_in_threadpool(_received, request, garment, cloth, files)


def _received(request: Request, garment: str, cloth: str, files: Sequence[tuple[str, bytes]]) -> Response:
    room, number = room_of(request), number_of(request)
    holding, edits = room.desk(number).document, [Edit(f"sewing.{garment}.cloth", cloth)] if cloth else []
    count = 0
    slip = None if files else _unread("No file of pieces was taken in.", "There is none, or it is very large.")
    for name, data in files:
        stem, dot, ending = name.replace("\\", "/").rsplit("/", 1)[-1].rpartition(".")
        file, kind = f"taken/{garment}-{plain(stem) or 'piece'}{dot}{ending.lower()}", f".{ending.lower()}"
        pieces = _pieces(file, stem, kind, data)
        if isinstance(pieces, Finding):
            slip = pieces
            continue
        holding = holding.with_file(file, data)
        edits += [Edit(f"sewing.{garment}.taken.+", piece) for piece in pieces[: MOST_PIECES - count]]
        count += len(pieces)
    if slip:
        room.slips[number] = slip
    if not count:
        return RedirectResponse(f"/outfit/{number}/add", SEE_OTHER)
    room.keep(number, outfit.change(holding, edits), f"Pieces were taken in for the {garment}.")
    return RedirectResponse(f"/outfit/{number}/paper/{garment}", SEE_OTHER)


def _pieces(file: str, stem: str, ending: str, data: bytes) -> list[tuple[tuple[str, Plain], ...]] | Finding:
    """Return a file's pieces as the outfit's document lists them, or why there are none."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = ""
    if ending not in outfit.FILES or not text:
        said = f"{stem}{ending} can't be taken in as pieces."
        return _unread(said, f"{', '.join(outfit.FILES)} are read, as text.")
    found = outfit.shapes(text, ending)
    if found.pieces:
        names = [piece.name for piece in found.pieces]
    else:
        held = found.closed or found.outlines[:1]
        names = [one.name or _numbered(stem, spot, len(held)) for spot, one in enumerate(held)]
    if not names:
        return next(iter(found.findings), _unread(f"{stem}{ending} holds no outline.", "A piece is a closed line."))
    return [(("file", file), ("outline", spot), ("name", name)) for spot, name in enumerate(names, 1)]


def _numbered(stem: str, spot: int, many: int) -> str:
    name = stem[:LONGEST].replace("_", " ").replace("-", " ").strip().capitalize() or "Piece"
    return name if many < 2 else f"{name} {spot + 1}"


async def say(request: Request) -> Response:
    """Take what the maker says of one piece: every field that the form has, in one change."""
    async with request.form() as form:
        edits = _said(form, f"sewing.{request.path_params['garment']}.taken.{int(request.path_params['spot'])}.")
        name = str(form.get("name") or "A piece")[:LONGEST]
    await run_in_threadpool(_keep, request, edits, f"{name}: its edges and marks were named.")
    return RedirectResponse(request.url.path.rsplit("/taken/", 1)[0], SEE_OTHER)


def _said(form: FormData, at: str) -> list[Edit]:
    edits = []
    for key in PLAIN_FACTS:
        if key in form:
            edits.append(Edit(at + key, str(form[key]).strip()[:LONGEST]))
    edits.append(Edit(at + "pair", "yes" if form.get("pair") else ""))
    for key, value in form.items():
        group, _, rest = key.partition(":")
        if group in ("edges", "allowances") and rest:
            edits.append(Edit(f"{at}{group}.{rest[:LONGEST]}", str(value).strip()[:LONGEST]))
    for kind, keys in (("darts", ("edge", "from", "wide", "deep")), ("notches", ("edge", "at"))):
        typed = [(key, str(form.get(f"{kind}-{key}") or "").strip()[:LONGEST]) for key in keys]
        if all(value for _, value in typed):
            edits.append(Edit(f"{at}{kind}.+", tuple(typed)))
    return edits


async def unmark(request: Request) -> Response:
    """Take all darts, or all notches, off a piece again."""
    async with request.form() as form:
        what = str(form.get("what"))
    if what not in ("darts", "notches"):
        raise LookupError(f"Nothing called {what} can be taken off.")
    at = f"sewing.{request.path_params['garment']}.taken.{int(request.path_params['spot'])}."
    await run_in_threadpool(_keep, request, [Edit(at + what, "")], f"The {what} were taken off again.")
    return RedirectResponse(request.url.path.rsplit("/taken/", 1)[0], SEE_OTHER)


def _keep(request: Request, edits: Sequence[Edit], said: str) -> None:
    room, number = room_of(request), number_of(request)
    one, spot = room.desk(number).sewn(str(request.path_params["garment"])), int(request.path_params["spot"])
    if spot >= len(one.plan.taken):
        raise LookupError(f"No piece {spot} was taken in.")
    unread = room.change(number, edits, said)
    if unread:
        room.slips[number] = unread
    else:
        request.app.state.laying.start_behind(number)


def _unread(say: str, why: str) -> Finding:
    return Finding("pieces-unread", Certainty.PROVEN, say, why, "Save the pieces as SVG, DXF or a table of points.")
