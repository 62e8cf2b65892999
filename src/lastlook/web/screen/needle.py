"""Beside the needles: the row lies across the screen as it hangs on the needle, and is marked when it is done."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from lastlook import sheet
from lastlook.knit import WorkedPiece, WorkedRow
from lastlook.knit import outline as outline_of
from lastlook.outfit import Knitted, MadePiece, Outfit
from lastlook.sheet.knitting.handed import name_in
from lastlook.web.page import framed, number_of, room_of

WIDE_MM = 240.0
LATELY = 6
"""Rows that are still shown once they are done."""


def show(request: Request) -> Response:
    """Show the row of one piece that is worked next."""
    desk = room_of(request).desk(number_of(request))
    one = desk.knitted(request.path_params["garment"])
    piece = _in_words(one, _chosen(one.pieces, request.query_params.get("piece")))
    done = min(one.plan.rows_done(piece.name), len(piece.rows)) if piece else 0
    row = piece.rows[done] if piece and done < len(piece.rows) else None
    return framed(
        request,
        "needle/page.html",
        desk,
        one=one,
        piece=piece,
        done=done,
        row=row,
        drawing=_drawing(one, piece, row, sheet.manner_of(desk.outfit)) if piece and row else "",
        made=_made(desk.outfit, one, piece),
        called=lambda name: name_in(name, sheet.manner_of(desk.outfit).hand),
        left=desk.outfit.manner.hand == "left",
        lately=_lately(piece, done),
        ahead=piece.rows[done + 1] if piece and done + 1 < len(piece.rows) else None,
    )


def _chosen(pieces: tuple[WorkedPiece, ...], name: str | None) -> WorkedPiece | None:
    """Return the piece asked for, else the first one."""
    return next((piece for piece in pieces if piece.name == name), pieces[0] if pieces else None)


def _in_words(one: Knitted, piece: WorkedPiece | None) -> WorkedPiece | None:
    """Return the piece with every row in the words of the chosen size."""
    if piece is None or one.size is None:
        return piece
    sizes = one.reading.sizes
    return sheet.written(piece, len(sizes), sizes.index(one.size.size) if one.size.size in sizes else 0)


def _drawing(one: Knitted, piece: WorkedPiece, row: WorkedRow, manner: sheet.Manner) -> str:
    """Return the row on the needle, with the fabric worked so far below it where a gauge is known."""
    gauge = one.working_gauge
    outline = outline_of(piece, gauge) if gauge else None
    fabric = sheet.Knitted(piece, outline, gauge) if gauge and outline else None
    return sheet.svg(sheet.draw_row(row, WIDE_MM, manner, fabric))


def _made(whole: Outfit, one: Knitted, piece: WorkedPiece | None) -> MadePiece | None:
    """Return what is noted of a piece that came off the needles."""
    mine = (made for made in whole.made if made.garment in (one.plan.name, ""))
    return next((made for made in mine if piece and made.piece.lower() == piece.name.lower()), None)


def _lately(piece: WorkedPiece | None, done: int) -> tuple[WorkedRow, ...]:
    """Return the rows done last, the newest first, as the fabric grows below the needle."""
    return tuple(reversed(piece.rows[max(0, done - LATELY) : done])) if piece else ()
