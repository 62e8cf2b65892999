"""What follows an altered skirt: facings drawn again, band and belt as much longer as the top, the marks on the band.

A lining is altered alike, step by step. A band that is there already (the option `band`), or paper that was taken in,
stays as it is: whether the top still meets it is then a question for truing.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lastlook.paper.drafted import Drafted
from lastlook.paper.follow.facing import DEPTH_MM, facing
from lastlook.paper.follow.strip import band_notches, longer
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seams import Fullness, Join, length_mm

LINING, FACING = " lining", " facing"
STILL_MM = 1e-9


def lining_of(name: str) -> str:
    """Return what the lining of a piece is called."""
    return f"{name}{LINING}"


def followed(before: Drafted, pieces: Sequence[PaperPiece]) -> tuple[PaperPiece, ...]:
    """Return altered pieces with all that hangs on them brought along."""
    was = {piece.name: piece for piece in before.pieces}
    changed = {piece.name for piece in pieces if piece is not was.get(piece.name)}
    if not changed:
        return tuple(pieces)
    now = tuple(_faced(before, piece, pieces, changed) for piece in pieces)
    join = next((one for one in before.joins if _is_waist(one, before)), None)
    if join is None:
        return now
    by = 0.0 if _stays(before) else length_mm(join.a, join, now) - length_mm(join.a, join, before.pieces)
    out = tuple(longer(piece, by) if _goes_round(piece) and abs(by) > STILL_MM else piece for piece in now)
    return tuple(_marked(piece, join, out) if piece.name == join.b[0].piece else piece for piece in out)


def _is_waist(join: Join, before: Drafted) -> bool:
    band = before.piece(join.b[0].piece)
    return join.fullness is Fullness.EASED and band is not None and band.role == "band"


def _stays(before: Drafted) -> bool:
    """Whether the band is there already and can't follow."""
    return before.kind == "taken in" or "band_mm" in before.options


def _goes_round(piece: PaperPiece) -> bool:
    """Whether a piece goes once round the waist: the band, its facing, the belt."""
    return piece.role == "band" or piece.name in ("Belt", f"Waistband{FACING}")


def _faced(before: Drafted, piece: PaperPiece, pieces: Sequence[PaperPiece], changed: set[str]) -> PaperPiece:
    """Return a facing drawn again from its altered piece; any other piece as it is."""
    source = next((one for one in pieces if f"{one.name}{FACING}" == piece.name), None)
    waist, seam = (source.side("waist") if source else None), piece.side("waist")
    if source is None or waist is None or seam is None or source.name not in changed or source.role == "band":
        return piece
    return facing(source, waist, before.options.get("facing_depth_mm", DEPTH_MM), seam.allowance_mm)


def _marked(band: PaperPiece, join: Join, pieces: Sequence[PaperPiece]) -> PaperPiece:
    """Return the band with its marks where the seams and centres of the altered pieces come."""
    waist = band.side("waist")
    centres = [notch.name for notch in band.notches if notch.edge == "waist" and notch.name.startswith("centre ")]
    named = {f"centre {piece.name.lower()}": piece for piece in pieces if piece.name in {name.piece for name in join.a}}
    if waist is None or len(waist.parts[0].segments) != 1 or not centres or any(one not in named for one in centres):
        return band
    shares = [(name, _top_mm(named[name])) for name in centres]
    fresh = band_notches(waist.parts[0].start, waist.sewn_mm, shares)
    kept = tuple(notch for notch in band.notches if notch.edge != "waist")
    return replace(band, notches=(*fresh, *kept))


def _top_mm(piece: PaperPiece) -> float:
    waist = piece.side("waist")
    return waist.sewn_mm * piece.times if waist else 0.0
