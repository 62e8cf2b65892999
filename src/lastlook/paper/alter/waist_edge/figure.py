"""Alterations for a figure: sway back, full seat, full abdomen, one high hip; each a change of the waist edge.

Signs and directions: Fitting Dresses, USDA, rev. 1946, as retold (read) for the sway back; swing of the side seam and
amounts of 1/4-1 in common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.paper.alter.alteration import mm, refusal
from lastlook.paper.alter.waist_edge.waist import tilted
from lastlook.paper.paper_piece import PaperPiece


@dataclass(frozen=True)
class SwayBack:
    """Take a fold below the back band out: the back's waist edge is lowered at its centre."""

    by_mm: float
    piece: str = "Back"
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with its centre waist lowered."""
        return tilted(piece, -self.by_mm, "centre")

    def inverse(self, before: PaperPiece) -> SwayBack:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Sway back: lower the waist edge of {self.piece} by {mm(self.by_mm)} at the centre."


@dataclass(frozen=True)
class FullSeat:
    """Give a full seat length: the back's waist edge is raised at its centre."""

    by_mm: float
    piece: str = "Back"
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with its centre waist raised."""
        return tilted(piece, self.by_mm, "centre")

    def inverse(self, before: PaperPiece) -> FullSeat:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Full seat: raise the waist edge of {self.piece} by {mm(self.by_mm)} at the centre."


@dataclass(frozen=True)
class FullAbdomen:
    """Give a full abdomen length: the front's waist edge is raised at its centre."""

    by_mm: float
    piece: str = "Front"
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with its centre waist raised."""
        return tilted(piece, self.by_mm, "centre")

    def inverse(self, before: PaperPiece) -> FullAbdomen:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Full abdomen: raise the waist edge of {self.piece} by {mm(self.by_mm)} at the centre."


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
