"""Rows gathered into lines: what is said once, and how often it is worked again.

A *line* is a stretch of rows with one thing to say: either the words of one row, or 'as rows a to b' for a block
that comes again, worked a whole number of times. The counts of every row stay with the line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.knit import WorkedRow

LONGEST_BLOCK = 24
"""Rows; longer repeats are seldom, and each length tried costs time."""


@dataclass(frozen=True)
class RowLine:
    """Rows that follow each other and are said in one line."""

    rows: tuple[WorkedRow, ...]
    words: str
    like: tuple[int, int] | None = None
    """First and last row of the block that is worked again."""
    times: int = 1
    """How often that block is worked here."""

    @property
    def first(self) -> int:
        """Return the number of the first row."""
        return self.rows[0].number

    @property
    def last(self) -> int:
        """Return the number of the last row."""
        return self.rows[-1].number


def gather(rows: tuple[WorkedRow, ...]) -> tuple[RowLine, ...]:
    """Return the lines of a piece; joined they are all its rows in order."""
    out: list[RowLine] = []
    for spot, length, times in repeats([(" ".join(row.words.split()), row.structure) for row in rows]):
        out += [RowLine((row,), row.words) for row in rows[spot : spot + length]]
        first, last = rows[spot].number, rows[spot + length - 1].number
        again = rows[spot + length : spot + length * times]
        if again:
            out.append(RowLine(again, "", (first, last), times - 1))
    return tuple(out)


def repeats(keys: Sequence[object]) -> list[tuple[int, int, int]]:
    """Return where each block begins, how long it is and how often it comes in a row; one by one where nothing does."""
    out = []
    spot = 0
    while spot < len(keys):
        length, times = _repeat(keys, spot)
        out.append((spot, length, times))
        spot += length * times
    return out


def _repeat(keys: Sequence[object], spot: int) -> tuple[int, int]:
    """Return the length of the block that begins here and how often it comes, the most rows saved first."""
    best = (1, 1)
    for length in range(1, min(LONGEST_BLOCK, (len(keys) - spot) // 2) + 1):
        block = keys[spot : spot + length]
        times = 1
        while keys[spot + times * length : spot + (times + 1) * length] == block:
            times += 1
        if times > 1 and length * (times - 1) > best[0] * (best[1] - 1):
            best = (length, times)
    return best


def again_words(rows: tuple[int, int], like: tuple[int, int], times: int) -> str:
    """Say what comes again: 'Rows 15 to 38: as rows 13 and 14, 12 times more.'"""
    first, last = like
    here = f"Row {rows[0]}" if rows[0] == rows[1] else f"Rows {rows[0]} to {rows[1]}"
    if rows[1] - rows[0] == 1:
        here = f"Rows {rows[0]} and {rows[1]}"
    if first == last:
        return f"{here}: as row {first}."
    block = f"rows {first} and {last}" if last - first == 1 else f"rows {first} to {last}"
    often = {1: "once more", 2: "twice more"}.get(times, f"{times} times more")
    return f"{here}: as {block}, {often}."
