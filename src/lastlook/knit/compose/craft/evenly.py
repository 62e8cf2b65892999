"""Whole numbers of the craft: shapings spread over rows, stitches over a repeat, in exact integers.

An *interval* ends with its shaping row. Where a division does not come out even, the remainder is told, never
rounded away.
"""

from __future__ import annotations

import math
from collections.abc import Sequence


def intervals(shapings: int, rows: int, step: int = 2) -> tuple[tuple[int, int], ...]:
    """Return (every so many rows, times), the shorter first; `step` 2 keeps to right-side rows, 1 takes any row.

    >>> intervals(7, 48)
    ((6, 4), (8, 3))
    """
    if shapings <= 0:
        return ()
    each, longer = divmod(rows // step, shapings)
    if each == 0:
        return ()
    table = ((each * step, shapings - longer), ((each + 1) * step, longer))
    return tuple((every, times) for every, times in table if times)


def left_over_rows(shapings: int, rows: int, step: int = 2) -> int:
    """Return the plain rows that the intervals leave.

    >>> left_over_rows(5, 43)
    1
    """
    return rows - sum(every * times for every, times in intervals(shapings, rows, step))


def shapings_too_many(shapings: int, rows: int) -> int:
    """Return how many shapings find no right-side row.

    >>> shapings_too_many(30, 48)
    6
    """
    return max(0, shapings - rows // 2)


def spread_rows(shapings: int, rows: int) -> tuple[int, ...]:
    """Return the row of each shaping, as evenly as right-side rows allow (Bresenham's line).

    >>> spread_rows(3, 12)
    (3, 7, 11)
    """
    pairs = rows // 2
    return tuple(2 * (number * pairs // shapings) - 1 for number in range(1, shapings + 1))


def groups(stitches: int, parts: int) -> tuple[int, ...]:
    """Return the stitches of each part, the larger ones first.

    >>> groups(51, 4)
    (13, 13, 13, 12)
    """
    each, larger = divmod(stitches, parts)
    return (each + 1,) * larger + (each,) * (parts - larger)


def to_repeat(target: float, repeat: int, edge: int = 0) -> int:
    """Return the count nearest to `target` that is a multiple of `repeat` plus `edge`, half up.

    >>> to_repeat(100, 8, 2), to_repeat(60, 3, 4)
    (98, 61)
    """
    times = max(1, math.floor((target - edge) / repeat + 0.5))
    return repeat * times + edge


def down_to_parity(target: float, like: int) -> int:
    """Return the greatest count not above `target` that is even or odd as `like` is.

    >>> down_to_parity(38.75, 60)
    38
    """
    count = math.floor(target)
    return count if (count - like) % 2 == 0 else count - 1


def even(target: float) -> int:
    """Return the even number nearest to `target`, half up.

    >>> even(35.75)
    36
    """
    return 2 * math.floor(target / 2 + 0.5)


def gaps(stitches: int, holes: int, end: int, hole: int) -> tuple[int, ...]:
    """Return the stitches between buttonholes in a band, the larger gaps first.

    >>> gaps(100, 7, 3, 2)
    (14, 14, 13, 13, 13, 13)
    """
    if holes < 2:
        return ()
    return groups(stitches - 2 * end - holes * hole, holes - 1)


def skips(rows: int, picked: int) -> tuple[tuple[int, int], ...]:
    """Return how to pick up along row ends: (pick up so many and skip one, times), the last pair with no skip.

    >>> skips(88, 71)
    ((4, 17), (3, 1))
    """
    skipped = rows - picked
    if skipped <= 0:
        return ((picked, 1),)
    each = picked // skipped
    rest = picked - each * skipped
    if rest <= each:
        return ((each, skipped), (rest, 1)) if rest else ((each, skipped),)
    return ((each + 1, rest), (each, skipped - rest))


def told(table: Sequence[tuple[int, int]]) -> str:
    """Return intervals in words: 'every 6th row 4 times, then every 8th row 3 times'."""
    return ", then ".join(f"every {ordinal(every)} row {times_words(times)}" for every, times in table)


def ordinal(number: int) -> str:
    """Return 1st, 2nd, 3rd, 4th; every second row is 'other' in the trade, which the caller says."""
    ending = {1: "st", 2: "nd", 3: "rd"}.get(number % 10 if number % 100 not in (11, 12, 13) else 0, "th")
    return f"{number}{ending}"


def times_words(times: int) -> str:
    """Return once, twice, 3 times."""
    return {1: "once", 2: "twice"}.get(times, f"{times} times")
