"""A set of paper pieces that make one garment: what a draft gives, and what an alteration gives again.

*Body* is the wearer without ease; *girth* is the assembled skirt, darts closed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from lastlook.finding import Finding
from lastlook.paper import girth
from lastlook.paper.easing import UNKNOWN, Easing
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seams import Join, mate_of, walk_all
from lastlook.piece import Mate, Meets, Seam


@dataclass(frozen=True)
class Drafted:
    """Pieces, the seams between them, the body they are for, and what there is to say."""

    kind: str
    pieces: tuple[PaperPiece, ...]
    joins: tuple[Join, ...] = ()
    measures: Mapping[str, float] = field(default_factory=dict)
    options: Mapping[str, float] = field(default_factory=dict)
    easing: Easing = UNKNOWN
    taken_mm: Mapping[str, float] = field(default_factory=dict)
    """What pleats, closed, take out of a level."""
    findings: tuple[Finding, ...] = ()

    def piece(self, name: str) -> PaperPiece | None:
        """Return the piece of that name, None where there is none."""
        return next((piece for piece in self.pieces if piece.name == name), None)

    @cached_property
    def girths_mm(self) -> dict[str, float | None]:
        """Return the assembled girth at waist, high hip, hip, knee and hem; a waist that is drawn in is its band's."""
        found = girth.girths(self.pieces)
        for seam in self.seams:
            if seam.mate.a.edge == "waist" and seam.meets in (Meets.ON_PURPOSE, Meets.BY_EASING):
                found["waist"] = seam.b_length
        return {level: None if mm is None else mm - self.taken_mm.get(level, 0.0) for level, mm in found.items()}

    @cached_property
    def ease_mm(self) -> dict[str, float | None]:
        """Return the ease at the same levels; None where the body's figure is not known."""
        return girth.ease(self.girths_mm, self.measures)

    @property
    def mates(self) -> tuple[Mate, ...]:
        """Return which edges meet, with the easing allowed."""
        return tuple(mate_of(join, self.pieces, self.easing) for join in self.joins)

    @cached_property
    def seams(self) -> tuple[Seam, ...]:
        """Return every seam, walked."""
        return walk_all(self.joins, self.pieces, self.easing)

    @property
    def cloth_mm2(self) -> float:
        """Return the area under all pieces with their allowances: what is cut, not what is bought."""
        return sum(piece.cut_area_mm2 for piece in self.pieces)
