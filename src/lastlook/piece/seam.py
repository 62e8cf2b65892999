"""The one seam check, for raglan lines in rows and waist seams in millimetres alike."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from lastlook.piece.edge import Edge
from lastlook.piece.mate import Mate

TOUCH = 1e-6
"""Below this a difference is rounding, in rows, stitches or mm."""


class Meets(Enum):
    """How two edges meet."""

    EXACTLY = "exactly"
    BY_EASING = "by easing"
    ON_PURPOSE = "on purpose"
    NO = "no"


@dataclass(frozen=True)
class Seam:
    """Two edges laid along each other."""

    mate: Mate
    a_length: float
    b_length: float
    meets: Meets

    @property
    def difference(self) -> float:
        """Return how much longer `a` is than `b`, in the mate's unit."""
        return self.a_length - self.b_length


def walk(mate: Mate, a: Edge, b: Edge) -> Seam | None:
    """Lay two edges along each other; None where one of them has no length in the mate's unit."""
    a_length, b_length = a.length(mate.unit), b.length(mate.unit)
    if a_length is None or b_length is None:
        return None
    return Seam(mate, a_length, b_length, _how(mate, abs(a_length - b_length)))


def _how(mate: Mate, difference: float) -> Meets:
    if difference <= mate.exact_within + TOUCH:
        return Meets.EXACTLY
    if mate.on_purpose:
        return Meets.ON_PURPOSE
    return Meets.BY_EASING if difference <= mate.allowed + TOUCH else Meets.NO
