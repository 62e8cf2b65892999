"""A set of paper pieces that make one garment: what a draft gives, and what an alteration gives again.

*Body* is the wearer without ease; *girth* is the assembled skirt, darts closed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from lastlook.finding import Finding
from lastlook.paper import girth
from lastlook.paper.body import body_at
from lastlook.paper.easing import UNKNOWN, Easing
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seams import Join, mate_of, walk_all
from lastlook.piece import Mate, Meets, Seam
from lastlook.wearer import Measure


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
    def body(self) -> dict[str, Measure | None]:
        """Return what the body measures at the same levels, taken or assumed; a step at knee and hem."""
        depth = girth.hem_depth_mm(self.pieces)
        return {level: body_at(level, self.measures, depth) for level in girth.LEVELS}

    @cached_property
    def ease_mm(self) -> dict[str, float | None]:
        """Return girth less body at the same levels; None where either can't be said."""
        out: dict[str, float | None] = {}
        for level, body in self.body.items():
            around = self.girths_mm.get(level)
            out[level] = around - body.mm.best if around is not None and body is not None else None
        return out

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
