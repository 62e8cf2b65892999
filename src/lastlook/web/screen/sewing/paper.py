"""The paper pieces of a garment: drawn to scale, their alterations lying on them as strips of tape, seams walked."""

from __future__ import annotations

from dataclasses import dataclass, replace

from starlette.requests import Request
from starlette.responses import Response

from lastlook import keep, outfit, paper, sheet
from lastlook.sheet.draw.paper import quantity_words
from lastlook.web import act, drawings
from lastlook.web.page import framed, number_of, room_of
from lastlook.web.screen.sewing.taken import NAMES, foreign

TIMES = 0.16
"""The scale of the pictures."""
MOST_VERSIONS = 40
FOLDS = [
    ("none", "open, one layer"),
    ("lengthwise", "folded lengthwise"),
    ("both-selvedges-to-middle", "with both selvedges folded to the middle"),
    ("crosswise", "folded crosswise"),
]
PLACES = {"waist": "top", "high hip": "upper", "hip": "middle", "hem": "foot", "line": "lower"}


@dataclass(frozen=True)
class Strip:
    """An alteration as a strip of tape on its piece."""

    fact: str
    say: str
    place: str
    """How far down the piece it acts, as the style sheet calls it."""
    on: bool


@dataclass(frozen=True)
class Shown:
    """One piece with what lies on it."""

    name: str
    drawing: str
    cut: str
    strips: tuple[Strip, ...]


def show(request: Request) -> Response:
    """Show a garment's pieces."""
    desk = room_of(request).desk(number_of(request))
    one = desk.sewn(request.path_params["garment"])
    manner = sheet.manner_of(desk.outfit)
    strips = [(alteration.piece, _strip(one, place)) for place, alteration in enumerate(one.plan.alterations)]
    pieces = [
        Shown(
            piece.name,
            sheet.svg(sheet.picture((piece,), TIMES, manner)),
            quantity_words(piece),
            tuple(strip for name, strip in strips if name == piece.name),
        )
        for piece in one.drafted.pieces
    ]
    known = {piece.name for piece in one.drafted.pieces}
    return framed(
        request,
        "paper/page.html",
        desk,
        one=one,
        pieces=pieces,
        all_over=[strip for name, strip in strips if name not in known],
        seams=one.drafted.seams,
        girths=_girths(one.drafted),
        foreign=foreign(one, desk.document),
        edge_names=NAMES,
        ways=act.WAYS,
        kinds=[(kind, kind.replace("-", " ")) for kind in paper.KINDS],
        cloths=[("", "no cloth yet"), *((cloth.name, cloth.name.replace("-", " ")) for cloth in desk.outfit.cloths)],
        folds=FOLDS,
        versions=_versions(request),
        against=_asked(request, "against"),
        over=_asked(request, "over"),
        overlays=drawings.overlays(_below(request, one), _above(request, one), manner),
        findings=(*one.drafted.findings, *one.findings),
    )


def _versions(request: Request) -> list[keep.Revision]:
    """Return the versions that lead to this one, the newest first."""
    history = room_of(request).shelf.history(number_of(request))
    return list(reversed(history[:-1]))[:MOST_VERSIONS]


def _asked(request: Request, key: str) -> int | None:
    """Return which version is asked for under a key: None for the draft below, and for the paper as it is now above."""
    asked = request.query_params.get(key, "")
    known = {one.id for one in room_of(request).shelf.history(number_of(request))}
    return int(asked) if asked.isascii() and asked.isdigit() and int(asked) in known else None


def _below(request: Request, one: outfit.Sewn) -> tuple[paper.PaperPiece, ...]:
    """Return the pieces that are compared with: of a version, else without any strip."""
    against = _asked(request, "against")
    if against is None:
        bare = replace(one.plan, alterations=())
        return outfit.draft(room_of(request).desk(number_of(request)).outfit, bare).pieces
    return _at(request, one, against)


def _above(request: Request, one: outfit.Sewn) -> tuple[paper.PaperPiece, ...]:
    """Return the pieces that lie above: of a version, else as they are now."""
    over = _asked(request, "over")
    return one.drafted.pieces if over is None else _at(request, one, over)


def _at(request: Request, one: outfit.Sewn, revision: int) -> tuple[paper.PaperPiece, ...]:
    room = room_of(request)
    old = room.lay_out(room.shelf.document_at(revision)).derived
    return next((was.drafted.pieces for was in old.sewn if was.plan.name == one.plan.name), ())


def _strip(one: outfit.Sewn, place: int) -> Strip:
    alteration = one.plan.alterations[place]
    where = PLACES.get(str(getattr(alteration, "at", "")), "upper")
    return Strip(f"sewing.{one.plan.name}.alterations.{place}", alteration.say(), where, alteration.on)


def _girths(drafted: paper.Drafted) -> list[tuple[str, float, float | None]]:
    """Return each level with the assembled girth and the ease over the body, where they are known."""
    return [
        (name.replace("_", " "), girth, drafted.ease_mm.get(name))
        for name, girth in drafted.girths_mm.items()
        if girth is not None
    ]
