"""A named part of a piece's outline, and how long it is in whatever it is counted in.

A knitted raglan edge has rows and millimetres, an underarm has stitches, a sewn edge has millimetres alone.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from lastlook.geometry import Path


class Unit(Enum):
    """What the length of an edge is counted in."""

    ROWS = "rows"
    STITCHES = "stitches"
    MM = "mm"


@dataclass(frozen=True, order=True)
class EdgeName:
    """An edge of a piece, by the names that both have."""

    piece: str
    edge: str

    def __str__(self) -> str:
        """Return the name as screens and JSON write it: 'Back: left raglan'."""
        return f"{self.piece}: {self.edge}"


@dataclass(frozen=True)
class Edge:
    """One named edge; a length that does not apply or is not known is None."""

    name: EdgeName
    rows: int | None = None
    stitches: int | None = None
    mm: float | None = None
    path: Path | None = None

    def length(self, unit: Unit) -> float | None:
        """Return the length in that unit, None where it has none."""
        return {Unit.ROWS: self.rows, Unit.STITCHES: self.stitches, Unit.MM: self.mm}[unit]
