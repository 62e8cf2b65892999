"""A dart removed: its intake becomes ease, or goes into the side seam; and a dart put in.

The edge is drawn smooth over the place; a dart put back gets its legs, and the edge its slant, where they were.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.geometry import (
    Cubic,
    Line,
    Path,
    Point,
    direction,
    distance_mm,
    ends_along,
    starts_along,
    turn_deg,
    turned,
)
from lastlook.paper.alter.alteration import mm, no_dart, refusal
from lastlook.paper.alter.dart.find import Found, found, with_side
from lastlook.paper.alter.reshape import with_corner
from lastlook.paper.alter.width import Widen
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import SeamEdge

NEAR_MM = 1.0


@dataclass(frozen=True)
class DartRemove:
    """Remove a dart."""

    piece: str
    dart: int = 1
    into: str = "ease"
    """'ease': the edge becomes longer by the intake; 'side': the side seam takes it in at the waist."""
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece without the dart."""
        spot = found(piece, self.dart)
        if spot is None:
            return no_dart(piece, self.dart)
        closed = with_side(piece, _filled(spot))
        if self.into == "ease":
            return closed
        return Widen(self.piece, -spot.dart.intake_mm, "waist").apply(closed)

    def inverse(self, before: PaperPiece) -> DartAdd | DartRemove:
        """Return the change that takes this one back."""
        spot = found(before, self.dart)
        if spot is None:
            return self
        dart = spot.dart
        slants = (
            turn_deg(direction(dart.first, dart.point), ends_along(spot.before.segments[-1])),
            turn_deg(direction(dart.second, dart.point), starts_along(spot.after.segments[0])),
        )
        return DartAdd(self.piece, dart.edge, dart.first, dart.second, dart.point, slants, self.into)

    def say(self) -> str:
        """Return it in a maker's words."""
        where = "into the side seam" if self.into == "side" else "into ease"
        return f"Remove dart {self.dart} of {self.piece} {where}."


@dataclass(frozen=True)
class DartAdd:
    """Put in a dart between two places of an edge."""

    piece: str
    edge: str
    first: Point
    second: Point
    point: Point
    slants_deg: tuple[float, float] = (-90.0, -90.0)
    """How far the edge turns from each leg where it meets it; square unless said."""
    out_of: str = "ease"
    """'ease': the edge becomes shorter; 'side': the side seam gives back at the waist what the dart takes."""
    on: bool = True

    def apply(self, piece: PaperPiece) -> PaperPiece | Finding:
        """Return the piece with the dart."""
        if self.out_of == "side":
            wider = Widen(self.piece, distance_mm(self.first, self.second), "waist").apply(piece)
            if isinstance(wider, Finding):
                return wider
            piece = wider
        piece = with_corner(with_corner(piece, self.first), self.second)
        side = piece.side(self.edge)
        opened = _opened(side, self) if side else None
        if opened is None:
            return refusal(
                piece,
                f"No dart can be put into {piece.name} there.",
                f"Its mouth of {mm(distance_mm(self.first, self.second))} has to lie on the {self.edge} edge.",
                "Set both ends of the mouth on the edge, the one nearer to the walk's start first.",
                self.edge,
            )
        return with_side(piece, opened)

    def inverse(self, before: PaperPiece) -> DartRemove:
        """Return the change that takes this one back."""
        nearer = [dart for dart in before.darts if dart.middle[0] < (self.first[0] + self.second[0]) / 2]
        return DartRemove(self.piece, len(nearer) + 1, self.out_of)

    def say(self) -> str:
        """Return it in a maker's words."""
        return f"Put a dart of {mm(distance_mm(self.first, self.second))} into the {self.edge} edge of {self.piece}."


def _filled(spot: Found) -> SeamEdge:
    """Return the edge with the mouth sewn, smooth over both its ends."""
    dart, side, at = spot.dart, spot.side, spot.index
    along = direction(dart.first, dart.second)
    before = _arriving(spot.before, along)
    after = _leaving(spot.after, along)
    whole = before + Path((Line(dart.first, dart.second),)) + after
    parts = (*side.parts[:at], whole, *side.parts[at + 2 :])
    return replace(side, parts=parts, points=(*side.points[:at], *side.points[at + 1 :]))


def _opened(side: SeamEdge, ask: DartAdd) -> SeamEdge | None:
    """Return the edge with the stretch between two of its anchors taken out as a mouth."""
    for at, part in enumerate(side.parts):
        starts = [segment.start for segment in part.segments]
        first, second = _nearest(starts, ask.first), _nearest(starts, ask.second)
        if not first or not second or second <= first:
            continue
        leaves = turned(direction(starts[first], ask.point), ask.slants_deg[0])
        resumes = turned(direction(starts[second], ask.point), ask.slants_deg[1])
        before = _arriving(Path(part.segments[:first]), leaves)
        after = _leaving(Path(part.segments[second:]), resumes)
        parts = (*side.parts[:at], before, after, *side.parts[at + 1 :])
        return replace(side, parts=parts, points=(*side.points[:at], ask.point, *side.points[at:]))
    return None


def _nearest(starts: list[Point], spot: Point) -> int | None:
    """Return the number of the anchor that is at a spot."""
    number = min(range(len(starts)), key=lambda one: distance_mm(starts[one], spot))
    return number if distance_mm(starts[number], spot) < NEAR_MM else None


def _arriving(path: Path, along: Point) -> Path:
    """Return the path with its last handle turned so that it arrives in a direction."""
    last = path.segments[-1]
    if not isinstance(last, Cubic):
        return path
    reach = distance_mm(last.into, last.end)
    into = (last.end[0] - along[0] * reach, last.end[1] - along[1] * reach)
    return Path((*path.segments[:-1], replace(last, into=into)))


def _leaving(path: Path, along: Point) -> Path:
    """Return the path with its first handle turned so that it sets out in a direction."""
    return _arriving(path.reversed(), (-along[0], -along[1])).reversed()
