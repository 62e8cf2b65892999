"""Alterations for a figure: sway back, full seat, full abdomen, one high hip.

A full seat or abdomen wants length over its fullest place and width with it, which the darts take up at the waist; a
sway back loses length alone. The waist stays as long as it was, so that it meets its band as before.

Signs and directions: Fitting Dresses, USDA, rev. 1946, as retold (read) for the sway back; swing of the side seam,
amounts of 1/4-1 in, and half as much width an edge as length common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Self

from lastlook.finding import Finding
from lastlook.paper.alter.alteration import mm, refusal
from lastlook.paper.alter.waist_edge.fuller import fuller
from lastlook.paper.alter.waist_edge.waist import tilted
from lastlook.paper.paper_piece import PaperPiece

WIDER_SHARE = 0.5


@dataclass(frozen=True)
class SwayBack:
    """Take a fold below the back band out: the back's waist edge is lowered at its centre."""

    by_mm: float
    piece: str = "Back"
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with its centre waist lowered, its waist as long as it was."""
        return fuller(piece, -self.by_mm, 0.0)

    def inverse(self, before: PaperPiece) -> SwayBack:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Sway back: lower the waist edge of {self.piece} by {mm(self.by_mm)} at the centre."


@dataclass(frozen=True)
class Fullness:
    """More length at the centre of a piece, and width to go with it."""

    by_mm: float
    piece: str = "Back"
    wider_mm: float | None = None
    """How far each side edge moves out; None for half as much as the length."""
    on: bool = True

    @property
    def out_mm(self) -> float:
        """Return how far each side edge moves out."""
        return self.by_mm * WIDER_SHARE if self.wider_mm is None else self.wider_mm

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece longer at its centre and wider, its waist and its side seam as long as they were."""
        return fuller(piece, self.by_mm, self.out_mm)

    def inverse(self, before: PaperPiece) -> Self:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm, wider_mm=-self.out_mm)

    def _said(self, figure: str) -> str:
        verb = "raise" if self.by_mm >= 0 else "lower"
        said = f"{figure}: {verb} the waist edge of {self.piece} by {mm(abs(self.by_mm))} at the centre"
        if not self.out_mm:
            return f"{said}."
        out = "let out" if self.out_mm > 0 else "take in"
        darts = "wider" if self.out_mm > 0 else "narrower"
        return f"{said}, {out} its side by {mm(abs(self.out_mm))}, and make its darts {darts} by that."


@dataclass(frozen=True)
class FullSeat(Fullness):
    """Give a full seat length and width: the back's waist edge is raised at its centre, its side let out."""

    def say(self) -> str:
        """Return it in a maker's words."""
        return self._said("Full seat")


@dataclass(frozen=True)
class FullAbdomen(Fullness):
    """Give a full abdomen length and width: the front's waist edge is raised at its centre, its side let out."""

    piece: str = "Front"

    def say(self) -> str:
        """Return it in a maker's words."""
        return self._said("Full abdomen")


@dataclass(frozen=True)
class HighHip:
    """Let one side down over a higher hip: the waist edge is raised at that side of front and back alike."""

    by_mm: float
    side: str = "left side"
    """The wearer's 'left side' or 'right side'."""
    piece: str = "all"
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with its waist raised at one side; it has to lie open, not on a fold."""
        if piece.fold_edge:
            return refusal(
                piece,
                f"{piece.name} lies on a fold, so both its sides change alike.",
                "A hip that is higher on one side needs a piece drawn whole.",
                f"Unfold {piece.name} first.",
                piece.fold_edge,
            )
        return tilted(piece, self.by_mm, self.side)

    def inverse(self, before: PaperPiece) -> HighHip:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"High hip: raise the waist edge by {mm(self.by_mm)} at the wearer's {self.side}."
