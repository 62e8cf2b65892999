"""Rounding that keeps what matched matching: the same old count or height always becomes the same new one.

Parity is kept, so a right-side row stays one, and edges that met row for row meet again.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Scale:
    """How many new stitches and rows lie in an old one."""

    stitches: float = 1.0
    rows: float = 1.0

    def count(self, old: float) -> int:
        """Return a number of stitches, half away from nothing."""
        new = abs(old) * self.stitches
        return int(math.copysign(math.floor(new + 0.5), old)) if old else 0

    def height(self, old: int) -> int:
        """Return a number of rows, odd or even as it was."""
        new = old * self.rows
        return 2 * math.floor((new - old % 2) / 2 + 0.5) + old % 2

    def cast_on(self, old: int, repeat: int) -> int:
        """Return a cast-on that leaves the same rest by the repeat of its edging."""
        if old <= 0:
            return 0
        rest = old % repeat
        return max(rest or repeat, repeat * math.floor((old * self.stitches - rest) / repeat + 0.5) + rest)


def spread(old: Sequence[int], old_rows: int, events: int, rows: int) -> list[int]:
    """Return how many shapings fall in each new row, as the old ones were spread: slow where they were slow.

    Right-side rows (or whichever side the old ones kept to) are used first, then the others, then doubles.

    >>> spread([0, 4, 8], 12, 3, 12)
    [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0]
    """
    out = [0] * rows
    if events <= 0 or rows <= 0:
        return out
    if events == len(old) and rows == old_rows:
        for spot in old:
            out[spot] += 1
        return out
    side = round(sum(spot % 2 for spot in old) / len(old)) if old else 0
    allowed = [row for row in range(rows) if row % 2 == side] or list(range(rows))
    while events > len(allowed):
        for row in allowed:
            out[row] += 1
        events -= len(allowed)
        other = [row for row in range(rows) if row % 2 != side]
        allowed = other if other and not out[other[0]] else [row for row in range(rows) if row % 2 == side]
    for row in _near([_at(old, old_rows, (number + 0.5) / events) for number in range(events)], allowed, rows):
        out[row] += 1
    return out


def _at(old: Sequence[int], old_rows: int, share: float) -> float:
    """Return how far up, 0 to 1, that share of the old shapings was reached."""
    if not old:
        return share
    spots = [0.0, *((spot + 0.5) / old_rows for spot in old), 1.0]
    shares = [0.0, *((number + 0.5) / len(old) for number in range(len(old))), 1.0]
    for a, b, low, high in zip(spots, spots[1:], shares, shares[1:], strict=False):
        if low <= share <= high and high > low:
            return a + (b - a) * (share - low) / (high - low)
    return 1.0


def _near(wanted: Sequence[float], allowed: Sequence[int], rows: int) -> list[int]:
    """Return one allowed row for each, in order, none used twice."""
    out: list[int] = []
    least = 0
    for number, share in enumerate(wanted):
        last = len(allowed) - (len(wanted) - number)
        best = min(range(least, last + 1), key=lambda spot: abs(allowed[spot] + 0.5 - share * rows))
        out.append(allowed[best])
        least = best + 1
    return out
