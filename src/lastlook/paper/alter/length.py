"""Lengthen or shorten: at a line across the piece, or at the hem.

At the line everything below moves down as it is, and the side seam is drawn anew across the gap. At the hem each
spot moves on in its own direction, so that a flared skirt becomes wider as it becomes longer. Large changes
(4-5 in) are better halved: half at the line, half at the hem (Butterick, The New Dressmaker, 1921, p. 27, read).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.paper.alter.alteration import mm, no_edge, refusal
from lastlook.paper.alter.parallel import alongside
from lastlook.paper.alter.reshape import anchors, every_point, reshape
from lastlook.paper.paper_piece import PaperPiece

BELOW_HIP_MM = 152.4
"""6 in below the hip line (Butterick, The New Dressmaker, 1921, pp. 26-27, read)."""


@dataclass(frozen=True)
class Lengthen:
    """Make a piece longer; less than nothing shortens it."""

    piece: str
    by_mm: float
    at: str = "hem"
    """'hem' or 'line'."""
    line_mm: float | None = None
    """Height of the line on the paper, 0 at the waist and downwards negative; None for 6 in below the hip."""
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece longer by that much."""
        if self.at == "hem":
            return _at_hem(piece, self.by_mm)
        line = self.line_mm if self.line_mm is not None else line_of(piece)
        return _at_line(piece, self.by_mm, line)

    def inverse(self, before: PaperPiece) -> Lengthen:
        """Return the change that takes this one back."""
        line = self.line_mm if self.line_mm is not None or self.at == "hem" else line_of(before)
        return replace(self, by_mm=-self.by_mm, line_mm=line)

    def say(self) -> str:
        """Return it in a maker's words."""
        verb = "Lengthen" if self.by_mm >= 0 else "Shorten"
        return f"{verb} {self.piece} by {mm(abs(self.by_mm))} at the {self.at}."


def line_of(piece: PaperPiece) -> float:
    """Return where a piece is lengthened if nothing is said: at its printed line, 6 in below the hip, or halfway."""
    low, high = _reach(piece)
    printed, hip = piece.level("lengthen"), piece.level("hip")
    if printed is not None:
        return printed
    if hip is None:
        return (low + high) / 2
    return max(hip - BELOW_HIP_MM, (hip + low) / 2)


def _reach(piece: PaperPiece) -> tuple[float, float]:
    heights = [spot[1] for side in piece.sides for spot in anchors(side)]
    return min(heights), max(heights)


def _at_line(piece: PaperPiece, by_mm: float, line: float) -> PaperPiece | Finding:
    low, high = _reach(piece)
    if not low < line < high:
        return refusal(
            piece,
            f"The lengthening line does not cross {piece.name}.",
            f"It lies at {line:.0f} mm; the piece runs from {high:.0f} to {low:.0f} mm.",
            "Set the line between waist and hem.",
        )
    spots = set(every_point(piece))
    folded = [spot for spot in spots if by_mm < 0 and line + by_mm <= spot[1] <= line]
    if folded:
        return refusal(
            piece,
            f"{piece.name} can't be shortened by {mm(-by_mm)} there: a corner or mark lies in the strip.",
            f"The strip runs from {line:.0f} to {line + by_mm:.0f} mm; the mark lies at {folded[0][1]:.0f} mm.",
            "Shorten at another line, or at the hem.",
        )
    moves = {spot: (spot[0], spot[1] - by_mm) for spot in spots if spot[1] < line}
    levels = tuple(replace(one, y_mm=one.y_mm - (by_mm if one.y_mm < line else 0.0)) for one in piece.levels)
    return replace(reshape(piece, moves), levels=levels)


def _at_hem(piece: PaperPiece, by_mm: float) -> PaperPiece | Finding:
    hem = piece.side("hem")
    if hem is None:
        return no_edge(piece, "hem")
    moves = alongside(piece, hem, by_mm)
    low = min(spot[1] for spot in moves)
    if by_mm < 0 and _reach(piece)[1] - low <= -by_mm:
        return refusal(
            piece,
            f"{piece.name} can't be shortened by {mm(-by_mm)}.",
            "It is no longer than that.",
            "Take less off.",
            "hem",
        )
    return reshape(piece, moves)
