"""A set made of single pieces: which edges meet is told by their names.

Front meets back at the side, all waists meet the band; a piece with two sides alone meets itself.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from lastlook.paper.drafted import Drafted
from lastlook.paper.easing import UNKNOWN, Easing
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seams import Counted, Fullness, Join
from lastlook.piece import EdgeName


def set_of(
    pieces: Sequence[PaperPiece], measures: Mapping[str, float] | None = None, easing: Easing = UNKNOWN
) -> Drafted:
    """Return the pieces as one garment."""
    pieces = sorted(pieces, key=_place)
    shell = [piece for piece in pieces if piece.role == "skirt" and piece.side("waist")]
    band = next((piece for piece in pieces if piece.role == "band" or "band" in piece.name.lower()), None)
    joins = list(_sides(shell))
    tops = tuple(EdgeName(piece.name, "waist") for piece in shell if piece is not band)
    if band is not None and band.side("waist") and tops:
        joins.append(Join(tops, (EdgeName(band.name, "waist"),), Counted.WHOLE, Fullness.EASED))
    return Drafted("taken in", tuple(pieces), tuple(joins), measures or {}, {}, easing)


def _place(piece: PaperPiece) -> int:
    """Return where a piece stands in a set: front, back, other pieces of the skirt, band, small parts."""
    name = piece.name.lower()
    if piece.role != "skirt":
        return 3 if piece.role == "band" else 4
    return 0 if "front" in name else 1 if "back" in name else 2


def _sides(shell: Sequence[PaperPiece]) -> list[Join]:
    """Return the side seams: front to back, or a piece's own two sides."""
    front = next((piece for piece in shell if "front" in piece.name.lower()), None)
    back = next((piece for piece in shell if "back" in piece.name.lower()), None)
    if front is None or back is None:
        return [_join(piece, piece, "left side", "right side") for piece in shell if piece.side("left side")]
    pairs = [("side", "side"), ("left side", "left side"), ("right side", "right side")]
    pairs += [("left side", "side"), ("right side", "side"), ("side", "left side"), ("side", "right side")]
    return [_join(front, back, a, b) for a, b in pairs if front.side(a) and back.side(b)]


def _join(a: PaperPiece, b: PaperPiece, edge_a: str, edge_b: str) -> Join:
    return Join((EdgeName(a.name, edge_a),), (EdgeName(b.name, edge_b),))
