"""The ladder of shaping rates: how to take off so many stitches at one edge in so many rows.

Each *rung* is tried in turn and told as a note: decreases on right-side rows only; on wrong-side rows too; double
decreases; and, when even those do not suffice, the caller widens the underarm.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum


class Rung(IntEnum):
    """How hard the shaping has to work."""

    RIGHT_SIDE = 1
    BOTH_SIDES = 2
    DOUBLE = 3
    WIDER_UNDERARM = 4
    DEEPER = 5


RUNG_WORDS = {
    Rung.RIGHT_SIDE: "decreases on right-side rows only",
    Rung.BOTH_SIDES: "decreases on some wrong-side rows too",
    Rung.DOUBLE: "double decreases on some rows",
    Rung.WIDER_UNDERARM: "a wider bind-off at the underarm",
    Rung.DEEPER: "a deeper armhole than was asked for",
}


@dataclass(frozen=True)
class Slope:
    """What one edge loses in each row, the first a right-side row."""

    takes: tuple[int, ...]
    rung: Rung

    @property
    def decreases(self) -> int:
        """Return all that the edge loses."""
        return sum(self.takes)


def slope(decreases: int, rows: int) -> Slope | None:
    """Return the gentlest way to take off `decreases` stitches in an even number of rows; None if none holds.

    Slow intervals come first and fast ones last, except that wrong-side and double decreases come at the foot,
    where the body is widest.

    >>> slope(3, 8).takes
    (1, 0, 0, 0, 1, 0, 1, 0)
    """
    pairs = rows // 2
    if decreases < 0 or decreases > 3 * pairs:
        return None
    if decreases <= pairs:
        return Slope(_slow(decreases, pairs), Rung.RIGHT_SIDE)
    if decreases <= 2 * pairs:
        fast = decreases - pairs
        return Slope((1, 1) * fast + (1, 0) * (pairs - fast), Rung.BOTH_SIDES)
    double = decreases - 2 * pairs
    return Slope((2, 1) * double + (1, 1) * (pairs - double), Rung.DOUBLE)


def _slow(decreases: int, pairs: int) -> tuple[int, ...]:
    if not decreases:
        return (0, 0) * pairs
    each, longer = divmod(pairs, decreases)
    long_block = (1, 0) + (0, 0) * each
    short_block = (1, 0) + (0, 0) * (each - 1)
    return long_block * longer + short_block * (decreases - longer)
