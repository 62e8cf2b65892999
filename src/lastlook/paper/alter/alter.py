"""A set of pieces with its alterations made, in their order; the set itself stays as it was.

What can't be made is said and left out. Seams follow pieces that were opened from a fold.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.alter.allowance import Allowance
from lastlook.paper.alter.alteration import ALL, Alteration
from lastlook.paper.drafted import Drafted
from lastlook.paper.follow import LINING, followed, lining_of
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seams import Join
from lastlook.piece import EdgeName


def alter(drafted: Drafted, alterations: Sequence[Alteration]) -> Drafted:
    """Return the set with every alteration made that is switched on, and all that hangs on the skirt brought along.

    The skirt is altered first; what follows it is then drawn again, and altered by what names it.
    """
    in_force = [one for one in alterations if one.on]
    findings = [
        _no_piece(one, drafted.pieces) for one in in_force if not any(_is_meant(one, p) for p in drafted.pieces)
    ]
    pieces = _altered(drafted.pieces, in_force, _is_meant_for_skirt, findings)
    pieces = _altered(followed(drafted, pieces), in_force, _is_meant_for_rest, findings)
    joins = tuple(fresh for join in drafted.joins for fresh in _opened(join, pieces))
    return replace(drafted, pieces=tuple(pieces), joins=joins, findings=(*drafted.findings, *findings))


def _altered(
    pieces: Sequence[PaperPiece],
    alterations: Sequence[Alteration],
    is_meant: Callable[[Alteration, PaperPiece], bool],
    findings: list[Finding],
) -> list[PaperPiece]:
    out = list(pieces)
    for alteration in alterations:
        for number, piece in enumerate(out):
            if not is_meant(alteration, piece):
                continue
            altered = alteration.apply(piece)
            if isinstance(altered, Finding):
                findings.append(altered)
            else:
                out[number] = altered
    return out


def _is_meant(alteration: Alteration, piece: PaperPiece) -> bool:
    return piece.name == alteration.piece or (alteration.piece == ALL and piece.role == "skirt")


def _is_meant_for_skirt(alteration: Alteration, piece: PaperPiece) -> bool:
    """Whether an alteration is for this piece of the skirt, or for the lining that goes with it."""
    if piece.role == "skirt":
        return _is_meant(alteration, piece)
    meant = piece.name == lining_of(alteration.piece) or (alteration.piece == ALL and piece.name.endswith(LINING))
    return meant and not (isinstance(alteration, Allowance) and alteration.edge == "hem")


def _is_meant_for_rest(alteration: Alteration, piece: PaperPiece) -> bool:
    return piece.role != "skirt" and _is_meant(alteration, piece)


def _no_piece(alteration: Alteration, pieces: Sequence[PaperPiece]) -> Finding:
    names = ", ".join(piece.name for piece in pieces) or "none"
    return Finding(
        "alteration-impossible",
        Certainty.PROVEN,
        f"There is no piece called “{alteration.piece}” to alter.",
        f"The pieces are {names}.",
        "Name one of them, or all.",
        where=Where(piece=alteration.piece),
    )


def _opened(join: Join, pieces: Sequence[PaperPiece]) -> list[Join]:
    """Return the seams that a seam becomes once a piece was opened from its fold: one for each side."""
    names = (*join.a, *join.b)
    if not any(_is_opened(name, pieces) for name in names):
        return [join]
    return [
        replace(join, a=tuple(_at(which, n, pieces) for n in join.a), b=tuple(_at(which, n, pieces) for n in join.b))
        for which in ("left", "right")
    ]


def _is_opened(name: EdgeName, pieces: Sequence[PaperPiece]) -> bool:
    piece = next((one for one in pieces if one.name == name.piece), None)
    return piece is not None and piece.side(name.edge) is None and piece.side(f"left {name.edge}") is not None


def _at(which: str, name: EdgeName, pieces: Sequence[PaperPiece]) -> EdgeName:
    return EdgeName(name.piece, f"{which} {name.edge}") if _is_opened(name, pieces) else name
