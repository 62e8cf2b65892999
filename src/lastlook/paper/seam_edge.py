"""One edge of a paper piece: its seam line in the parts that are sewn, the darts between them, its allowance.

A *part* is a stretch that is sewn to the mate; between two parts lies the mouth of a dart, which closes. A *leg*
runs from an end of the mouth to the dart's point. A *cap* is the roof over the mouth that lets the folded dart
reach the seam.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from functools import cached_property

from lastlook.geometry import Line, Path, Point, distance_mm, end_direction, meeting, start_direction, turn_deg


class Use(Enum):
    """What becomes of an edge."""

    SEAM = "seam"
    FOLD = "fold"
    """Laid on a fold of the cloth: no allowance, the other half is its mirror image."""
    HEM = "hem"
    """Folded up: its allowance mirrors the slant of its neighbours."""
    OPEN = "open"
    """Finished by itself, such as the end of a band."""


@dataclass(frozen=True)
class Dart:
    """A fold sewn to nothing; its intake always means both legs together."""

    edge: str
    first: Point
    second: Point
    point: Point

    @property
    def intake_mm(self) -> float:
        """Return how much both legs together take out of the edge."""
        return distance_mm(self.first, self.second)

    @property
    def middle(self) -> Point:
        """Return the middle of the mouth."""
        return ((self.first[0] + self.second[0]) / 2, (self.first[1] + self.second[1]) / 2)

    @property
    def length_mm(self) -> float:
        """Return how deep the dart goes, from the middle of its mouth to its point."""
        return distance_mm(self.middle, self.point)

    @property
    def legs_mm(self) -> tuple[float, float]:
        """Return the lengths of the two legs."""
        return distance_mm(self.first, self.point), distance_mm(self.second, self.point)


@dataclass(frozen=True)
class SeamEdge:
    """A named run of the seam line, walked counter-clockwise round the piece."""

    name: str
    parts: tuple[Path, ...]
    points: tuple[Point, ...] = ()
    """The points of the darts, one fewer than parts."""
    allowance_mm: float = 15.0
    use: Use = Use.SEAM

    @property
    def start(self) -> Point:
        """Return where the edge begins."""
        return self.parts[0].start

    @property
    def end(self) -> Point:
        """Return where the edge ends."""
        return self.parts[-1].end

    @cached_property
    def sewn_mm(self) -> float:
        """Return the length that is sewn to the mate: darts closed."""
        return sum(part.length_mm() for part in self.parts)

    @cached_property
    def darts(self) -> tuple[Dart, ...]:
        """Return the darts that open on this edge, in the order of the walk."""
        gaps = zip(self.parts, self.parts[1:], self.points, strict=False)
        return tuple(Dart(self.name, before.end, after.start, point) for before, after, point in gaps)

    @cached_property
    def path(self) -> Path:
        """Return the whole run, with a cap over each dart."""
        whole = self.parts[0]
        for dart, before, after in zip(self.darts, self.parts, self.parts[1:], strict=False):
            whole = whole + cap(dart, before, after) + after
        return whole


def cap(dart: Dart, before: Path, after: Path) -> Path:
    """Return the roof over a dart's mouth: what the closed edge leaves when the folded dart is cut through.

    The half of the dart beside a leg lies, once folded, on the cloth beyond that leg; so its edge is that cloth's
    edge mirrored at the leg. The dart is folded towards the part that is walked last, the middle of the piece.
    """
    x, y = start_direction(after)
    leg = (dart.point[0] - dart.second[0], dart.point[1] - dart.second[1])
    square = leg[0] ** 2 + leg[1] ** 2
    if square < 1e-9:
        return Path((Line(dart.first, dart.second),))
    share = (x * leg[0] + y * leg[1]) / square
    mirrored = (2 * share * leg[0] - x, 2 * share * leg[1] - y)
    middle = dart.middle
    fold = (dart.point[0] - middle[0], dart.point[1] - middle[1])
    roof = meeting(dart.second, mirrored, middle, fold)
    if roof is None or distance_mm(roof, middle) > dart.intake_mm:
        return Path((Line(dart.first, dart.second),))
    return Path((Line(dart.first, roof), Line(roof, dart.second)))


def closing_deg(dart: Dart, before: Path, after: Path) -> float:
    """Return how far the edge is from running smoothly over the closed dart, in degrees; 0 is smooth."""
    from_first = turn_deg(end_direction(before), (dart.point[0] - dart.first[0], dart.point[1] - dart.first[1]))
    into_second = turn_deg(start_direction(after), (dart.point[0] - dart.second[0], dart.point[1] - dart.second[1]))
    return from_first - into_second
