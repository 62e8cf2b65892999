"""What every alteration is: a frozen value that makes another piece, and that has an inverse.

An alteration that can't be made on a piece gives a finding instead; the piece stays as it is.
"""

from __future__ import annotations

from typing import Protocol

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.tenths import tenths

ALL = "all"
"""In place of a piece's name: every piece that goes round the body."""


class Alteration(Protocol):
    """One reversible change to a paper piece."""

    @property
    def piece(self) -> str:
        """Return the name of the piece, or 'all'."""

    @property
    def on(self) -> bool:
        """Whether it is in force; switched off, it is kept in its place and changes nothing."""

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the altered piece, or why it can't be made."""

    def inverse(self, before: PaperPiece) -> Alteration:
        """Return the alteration that takes this one back, given the piece as it was."""

    def say(self) -> str:
        """Return the alteration in a maker's words."""


def refusal(piece: PaperPiece, say: str, why: str, attempt: str, edge: str | None = None) -> Finding:
    """Return why an alteration can't be made on a piece."""
    return Finding(
        "alteration-impossible", Certainty.PROVEN, say, why, attempt, where=Where(piece=piece.name, edge=edge)
    )


def no_edge(piece: PaperPiece, edge: str) -> Finding:
    """Return that a piece has no edge of that name."""
    names = ", ".join(side.name for side in piece.sides)
    return refusal(piece, f"{piece.name} has no edge called “{edge}”.", f"Its edges are {names}.", "Name one of them.")


def no_level(piece: PaperPiece, level: str) -> Finding:
    """Return that a height is not marked on a piece."""
    return refusal(
        piece,
        f"Where the {level} lies on {piece.name} is not known yet.",
        f"No {level} line is marked on it.",
        f"Mark the {level}: measure its depth down from the waist.",
    )


def no_dart(piece: PaperPiece, number: int) -> Finding:
    """Return that a piece has no dart of that number."""
    count = len(piece.darts)
    return refusal(
        piece,
        f"{piece.name} has no dart number {number}.",
        f"It has {count}, counted from the centre outwards." if count else "It has none.",
        "Name one of its darts, or add one.",
    )


def mm(value: float) -> str:
    """Return millimetres without needless digits.

    >>> mm(8.0), mm(7.25)
    ('8 mm', '7.3 mm')
    """
    return tenths(value).removesuffix(".0") + " mm"
