"""The cloth as it lies flat and open: x along its length, y across it, all in millimetres.

A *fold* doubles the cloth over itself; a *repeat* is the distance after which stripes or checks come again.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

Point = tuple[float, float]
Outline = tuple[Point, ...]


class Fold(Enum):
    """How the cloth is doubled for cutting."""

    NONE = "none"
    LENGTHWISE = "lengthwise"
    BOTH_TO_MIDDLE = "both-selvedges-to-middle"
    CROSSWISE = "crosswise"
    PARTIAL = "partial"


@dataclass(frozen=True)
class Repeat:
    """Stripes or checks: the repeat across and along the cloth, None where there is none that way."""

    across_mm: float | None = None
    along_mm: float | None = None
    offset: Point = (0.0, 0.0)


@dataclass(frozen=True)
class Cloth:
    """One piece of cloth; without a length it is endless, without an outline a rectangle."""

    width_mm: float
    length_mm: float | None = None
    outline: Outline | None = None
    flaws: tuple[Outline, ...] = ()
    fold: Fold = Fold.NONE
    partial_mm: float = 0.0
    """How wide the strip is that a partial fold turns over, from y = 0."""
    one_way: bool = False
    """Whether it has a nap or a print that runs one way."""
    selvedge_mm: float = 0.0
    """How much of each selvedge can't be used."""
    gap_mm: float = 0.0
    """How far apart pieces are kept for cutting."""
    repeat: Repeat | None = None
    sides_alike: bool = False
    """Whether right and wrong side can't be told apart, so that any piece may be turned over."""
