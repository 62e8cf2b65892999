"""Places where words can be meant in several ways, found while working.

A *point* has a key that stays the same from run to run: the piece and the phrase. Readings count from 1.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from lastlook.finding import Span


@dataclass(frozen=True)
class Option:
    """One way it can be meant."""

    meaning: str
    value: int


@dataclass(frozen=True)
class Point:
    """An unclear place, with all the ways it can be meant."""

    key: str
    span: Span
    piece: str
    options: tuple[Option, ...]
    matters: str = "counts"
    """'counts' where a count may change, 'rows' where only the row moves."""


@dataclass
class Chooser:
    """Answers with what was chosen, the first option otherwise, and remembers what was asked."""

    chosen: Mapping[str, int]
    points: dict[str, Point] = field(default_factory=dict)

    def pick(self, point: Point) -> int:
        """Return the value of the reading that is taken at this point."""
        self.points.setdefault(point.key, point)
        number = self.chosen.get(point.key, 1)
        if not 1 <= number <= len(point.options):
            number = 1
        return point.options[number - 1].value
