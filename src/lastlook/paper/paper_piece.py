"""A sewing-pattern piece: named edges at the seam line, darts, notches, grain, and how it is cut.

The walk is counter-clockwise, upwards is towards the waist, everything in mm. A piece on a fold is drawn as one
half; *whole* lengths count both halves. A piece never changes: an alteration makes another one.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from lastlook.geometry import Path, Point, Run, crossings, grown, nearest
from lastlook.geometry import at as point_at
from lastlook.paper.seam_edge import Dart, SeamEdge, Use
from lastlook.piece import Edge, EdgeName, Piece


@dataclass(frozen=True)
class Notch:
    """A mark on an edge that meets the mark of the same name on the mate."""

    name: str
    edge: str
    point: Point


@dataclass(frozen=True)
class Level:
    """A height of the body on the paper: 'high hip', 'hip', 'knee'.

    It lies across the piece at `y_mm`; on a piece cut from a circle, `y_mm` is below the waist edge.
    """

    name: str
    y_mm: float


@dataclass(frozen=True)
class PaperPiece:
    """One pattern piece."""

    name: str
    sides: tuple[SeamEdge, ...]
    quantity: int = 1
    mirrored_pair: bool = False
    notches: tuple[Notch, ...] = ()
    levels: tuple[Level, ...] = ()
    grain: tuple[Point, Point] = ((0.0, 0.0), (0.0, -100.0))
    centre: Point | None = None
    """Centre of the circle that the piece is a part of, if it is one."""
    role: str = "skirt"
    """'skirt' for what goes round the body, 'band', or 'part' for what is laid on or beneath."""
    marks: tuple[Notch, ...] = ()
    """Places inside the piece, such as where a pocket is set; their edge is the edge that they go with."""

    def side(self, name: str) -> SeamEdge | None:
        """Return the edge of that name with its parts and darts, None where the piece has none."""
        return next((side for side in self.sides if side.name == name), None)

    @cached_property
    def seam_line(self) -> Path:
        """Return the closed outline at the seam, with a cap over each dart."""
        segments = tuple(segment for side in self.sides for segment in side.path.segments)
        return Path(segments)

    @cached_property
    def cut_line(self) -> Path:
        """Return the closed outline to cut along."""
        return grown([Run(side.path, side.allowance_mm, side.use is Use.HEM) for side in self.sides])

    @property
    def edges(self) -> tuple[Edge, ...]:
        """Return the edges as the seam check takes them, darts closed; lengths are those of the drawn half."""
        return tuple(Edge(EdgeName(self.name, side.name), mm=side.sewn_mm, path=side.path) for side in self.sides)

    @property
    def darts(self) -> tuple[Dart, ...]:
        """Return all darts, in the order of the walk."""
        return tuple(dart for side in self.sides for dart in side.darts)

    @property
    def fold_edge(self) -> str | None:
        """Return the name of the edge that lies on the fold."""
        return next((side.name for side in self.sides if side.use is Use.FOLD), None)

    @property
    def fold(self) -> tuple[Point, Point] | None:
        """Return the ends of the edge that lies on the fold."""
        side = self.side(self.fold_edge) if self.fold_edge else None
        return (side.start, side.end) if side else None

    @property
    def times(self) -> int:
        """Return how often a length of the drawn outline occurs in the garment."""
        return self.quantity * (2 if self.fold_edge else 1)

    @property
    def cut_area_mm2(self) -> float:
        """Return the cloth under all pieces of this kind, allowances with it."""
        return self.cut_line.area_mm2() * self.times

    def level(self, name: str) -> float | None:
        """Return the height of a level on the paper."""
        return next((level.y_mm for level in self.levels if level.name == name), None)

    def notch_mm(self, notch: Notch) -> float | None:
        """Return how far along the sewn edge a notch lies, from the edge's start; darts closed."""
        side = self.side(notch.edge)
        if side is None:
            return None
        before, best = 0.0, (float("inf"), 0.0)
        for part in side.parts:
            place = nearest(part, notch.point)
            best = min(best, (place.away_mm, before + place.along_mm))
            before += part.length_mm()
        return best[1]

    def as_piece(self) -> Piece:
        """Return the piece as both crafts know it."""
        return Piece(self.name, self.seam_line, self.edges, self.quantity, self.mirrored_pair)

    def width_mm(self, y_mm: float) -> float | None:
        """Return how wide the drawn piece is, straight across at a height; None where it does not reach."""
        spots = [
            point_at(part, spot)[0]
            for side in self.sides
            for part in side.parts
            for spot in crossings(part, (0.0, y_mm), (1.0, 0.0))
        ]
        return max(spots) - min(spots) if len(spots) > 1 else None
