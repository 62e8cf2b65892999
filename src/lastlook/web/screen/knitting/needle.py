"""Beside the needles: the row lies across the screen as it hangs on the needle, and is marked when it is done.

Two pieces that mirror each other, or one that is made twice, may be worked at once from one screen.
"""

from __future__ import annotations

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from lastlook import outfit, sheet
from lastlook.knit import WorkedPiece, WorkedRow
from lastlook.knit import outline as outline_of
from lastlook.outfit import Knitted, MadePiece, Outfit
from lastlook.sheet.knitting.handed import name_in, piece_in, row_in
from lastlook.sheet.pair import edge_words
from lastlook.web import words
from lastlook.web.page import framed, number_of, room_of
from lastlook.web.screen.knitting.astray import astray
from lastlook.web.screen.knitting.in_work import counted

WIDE_MM = 240.0
LATELY = 6
"""Rows that are still shown once they are done."""


@dataclass(frozen=True)
class Needle:
    """One piece with the row that is worked next."""

    piece: WorkedPiece
    called: str
    """Its name as it comes out in this maker's hand."""
    done: int
    row: WorkedRow | None
    drawing: str
    edges: tuple[str, ...]
    """Where each shaping comes, and which edge it is as worn."""
    key: str
    """The name under which the outfit keeps its place."""


def show(request: Request) -> Response:
    """Show the row of one piece that is worked next, or of two at once."""
    desk = room_of(request).desk(number_of(request))
    one = desk.knitted(request.path_params["garment"])
    manner = sheet.manner_of(desk.outfit)
    pairs = sheet.pairs_of(one.pieces)
    both = next((pair for pair in pairs if pair[0].name == request.query_params.get("both")), None)
    chosen = _chosen(one.pieces, request.query_params.get("piece"))
    needles = [_needle(one, piece, manner) for piece in both or ((chosen,) if chosen else ())]
    first = needles[0] if needles else None
    return framed(
        request,
        "needle/page.html",
        desk,
        one=one,
        needles=needles,
        first=first,
        both=both,
        pairs=[(a.name, f"{name_in(a.name, manner.hand)} and {name_in(b.name, manner.hand)}") for a, b in pairs],
        made=_made(desk.outfit, one, first.piece if first else None),
        called=lambda name: name_in(name, manner.hand),
        left_handed=desk.outfit.manner.hand == "left",
        lately=_lately(first),
        ahead=_ahead(first),
        astray=astray(request, one, first.piece) if first else None,
        counted_now=counted(request, one, first.called) if first else None,
        notes=_notes(one, first),
        to_note=_to_note(one, first),
        pace=outfit.pace(one),
        still=outfit.left(one),
        hours=words.hours,
        is_missing=words.is_missing,
    )


def _chosen(pieces: tuple[WorkedPiece, ...], name: str | None) -> WorkedPiece | None:
    """Return the piece asked for, else the first one."""
    return next((piece for piece in pieces if piece.name == name), pieces[0] if pieces else None)


def _needle(one: Knitted, piece: WorkedPiece, manner: sheet.Manner) -> Needle:
    key = next((known.name for known in one.pieces if known.name == piece.name or known.rows is piece.rows), piece.name)
    said = _in_words(one, piece)
    done = min(one.plan.rows_done(key), len(said.rows))
    row = said.rows[done] if done < len(said.rows) else None
    drawing = _drawing(one, said, row, manner) if row else ""
    return Needle(said, name_in(piece.name, manner.hand), done, row, drawing, _edges(said, row, manner), key)


def _in_words(one: Knitted, piece: WorkedPiece) -> WorkedPiece:
    """Return the piece with every row in the words of the chosen size."""
    if one.size is None:
        return piece
    sizes = one.reading.sizes
    spot = sizes.index(one.size.size) if one.size.size in sizes else 0
    return sheet.written(piece, len(sizes), spot, one.reading.source.text)


def _drawing(one: Knitted, piece: WorkedPiece, row: WorkedRow, manner: sheet.Manner) -> str:
    """Return the row on the needle, with the fabric worked so far below it where a gauge is known."""
    gauge = one.working_gauge
    outline = outline_of(piece, gauge) if gauge and row.number > 1 else None
    fabric = sheet.Knitted(piece, outline, gauge) if gauge and outline else None
    return sheet.svg(sheet.draw_row(row, WIDE_MM, manner, fabric))


def _edges(piece: WorkedPiece, row: WorkedRow | None, manner: sheet.Manner) -> tuple[str, ...]:
    if row is None:
        return ()
    name, seen = piece_in(piece, manner.hand).name, row_in(row, manner.hand)
    return tuple(f"{one.act.value} {one.stitches} {edge_words(name, seen, one, manner)}" for one in seen.shapings)


def _made(whole: Outfit, one: Knitted, piece: WorkedPiece | None) -> MadePiece | None:
    """Return what is noted of a piece that came off the needles."""
    mine = (made for made in whole.made if made.garment in (one.plan.name, ""))
    return next((made for made in mine if piece and made.piece.lower() == piece.name.lower()), None)


def _lately(needle: Needle | None) -> tuple[WorkedRow, ...]:
    """Return the rows done last, the newest first, as the fabric grows below the needle."""
    return tuple(reversed(needle.piece.rows[max(0, needle.done - LATELY) : needle.done])) if needle else ()


def _ahead(needle: Needle | None) -> WorkedRow | None:
    rows = needle.piece.rows if needle else ()
    return rows[needle.done + 1] if needle and needle.done + 1 < len(rows) else None


def _notes(one: Knitted, needle: Needle | None) -> dict[int, list[str]]:
    """Return the notes pinned to the piece's rows."""
    out: dict[int, list[str]] = {}
    for pinned in one.plan.notes if needle else ():
        if needle and pinned.piece == needle.key:
            out.setdefault(pinned.row, []).append(pinned.note)
    return out


def _to_note(one: Knitted, needle: Needle | None) -> tuple[int, int] | None:
    """Return the rows that were done since the last sitting was noted."""
    if needle is None:
        return None
    noted = max((sitting.last for sitting in one.plan.log if sitting.piece == needle.key), default=0)
    return (noted + 1, needle.done) if needle.done > noted else None
