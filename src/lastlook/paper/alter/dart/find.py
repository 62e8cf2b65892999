"""Which dart is meant: they are counted on the paper from left to right, on a half from the centre outwards."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.geometry import Path, Point
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import Dart, SeamEdge


@dataclass(frozen=True)
class Found:
    """A dart with the edge it opens on and its place there, in the order of the walk."""

    side: SeamEdge
    index: int
    dart: Dart

    @property
    def before(self) -> Path:
        """Return the part that ends at the dart."""
        return self.side.parts[self.index]

    @property
    def after(self) -> Path:
        """Return the part that begins behind the dart."""
        return self.side.parts[self.index + 1]


def found(piece: PaperPiece, number: int) -> Found | None:
    """Return the dart of that number, from 1; None where there is none."""
    all_of_them = [Found(side, index, dart) for side in piece.sides for index, dart in enumerate(side.darts)]
    ordered = sorted(all_of_them, key=lambda one: one.dart.middle[0])
    return ordered[number - 1] if 0 < number <= len(ordered) else None


def number_of(piece: PaperPiece, point: Point) -> int:
    """Return the number of the dart that ends at a point; 0 where none does."""
    ordered = sorted(piece.darts, key=lambda dart: dart.middle[0])
    return next((count for count, dart in enumerate(ordered, 1) if dart.point == point), 0)


def with_side(piece: PaperPiece, side: SeamEdge) -> PaperPiece:
    """Return the piece with one edge replaced."""
    return replace(piece, sides=tuple(side if one.name == side.name else one for one in piece.sides))
