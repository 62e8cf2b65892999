"""The cloth beyond the seam line: a seam allowance widened for fitting, a hem allowance made deeper.

The seam line stays; a hem allowance mirrors the slant of the seams beside it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.paper.alter.alteration import mm, no_edge, refusal
from lastlook.paper.paper_piece import PaperPiece

MOST_MM = 300.0


@dataclass(frozen=True)
class Allowance:
    """Make the allowance of an edge wider; less than nothing makes it narrower."""

    piece: str
    by_mm: float
    edge: str = "side"
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with more cloth beyond that edge."""
        side = piece.side(self.edge)
        if side is None:
            return no_edge(piece, self.edge)
        wide = side.allowance_mm + self.by_mm
        if not -1e-9 <= wide <= MOST_MM:
            return refusal(
                piece,
                f"The allowance at the {self.edge} of {piece.name} can't become {mm(wide)}.",
                f"It is {mm(side.allowance_mm)} now; nothing and {mm(MOST_MM)} are the ends.",
                "Change it less.",
                self.edge,
            )
        fresh = replace(side, allowance_mm=max(0.0, wide))
        return replace(piece, sides=tuple(fresh if one.name == self.edge else one for one in piece.sides))

    def inverse(self, before: PaperPiece) -> Allowance:
        """Return the change that takes this one back."""
        return replace(self, by_mm=-self.by_mm)

    def say(self) -> str:
        """Return it in a maker's words."""
        verb = "Leave" if self.by_mm >= 0 else "Take"
        more = "more" if self.by_mm >= 0 else "off the"
        return f"{verb} {mm(abs(self.by_mm))} {more} allowance at the {self.edge} of {self.piece}."
