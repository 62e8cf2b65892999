"""The same words in the other hand: what a left-handed knitter gets when she follows them.

She works from left to right, so every piece comes out as its mirror image: what was written as the left front is
her right front, a decrease that leaned left leans right. The words of the rows stay as they are.
"""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.geometry import Path, mirrored
from lastlook.knit import WorkedPiece, WorkedRow
from lastlook.sheet.manner import Hand

OTHER = {"left": "right", "right": "left"}
_SIDES = re.compile(r"\b(left|right)\b", re.I)


def name_in(name: str, hand: Hand) -> str:
    """Return what a piece is called in that hand.

    >>> name_in("Left Front", Hand.LEFT)
    'Right Front'
    """
    return _SIDES.sub(_other, name) if hand is Hand.LEFT else name


def row_in(row: WorkedRow, hand: Hand) -> WorkedRow:
    """Return a row, written for the right hand, as it comes out in that hand."""
    if hand is Hand.RIGHT or not row.shapings:
        return row
    swapped = tuple(
        replace(one, edge=OTHER.get(one.edge, one.edge), lean=OTHER.get(one.lean or "", one.lean))
        for one in row.shapings
    )
    return replace(row, shapings=swapped)


def piece_in(piece: WorkedPiece, hand: Hand) -> WorkedPiece:
    """Return a piece, written for the right hand, as it comes out in that hand."""
    if hand is Hand.RIGHT:
        return piece
    return replace(piece, name=name_in(piece.name, hand), rows=tuple(row_in(row, hand) for row in piece.rows))


def outline_in(outline: Path | None, hand: Hand) -> Path | None:
    """Return an outline as it comes out in that hand, still walked counter-clockwise."""
    if outline is None or hand is Hand.RIGHT:
        return outline
    return mirrored(outline, 0.0)


def _other(match: re.Match[str]) -> str:
    word = OTHER[match[0].lower()]
    return word.capitalize() if match[0][0].isupper() else word
