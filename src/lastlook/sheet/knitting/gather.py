"""Rows gathered into lines: what is said once, and how often it is worked again.

A *line* is a stretch of rows with one thing to say: either the words of one row, or 'as rows a to b' for a block
that comes again, worked a whole number of times. The counts of every row stay with the line.
"""

from __future__ import annotations

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
    keys = [_key(row) for row in rows]
    out: list[RowLine] = []
    spot = 0
    while spot < len(rows):
        length, times = _repeat(keys, spot)
        for row in rows[spot : spot + length]:
            out.append(RowLine((row,), row.words))
        first, last = rows[spot].number, rows[spot + length - 1].number
        again = rows[spot + length : spot + length * times]
        if again:
            out.append(RowLine(tuple(again), "", (first, last), times - 1))
        spot += length * times
    return tuple(out)


def _key(row: WorkedRow) -> tuple[str, str]:
    return (" ".join(row.words.split()), row.structure)


def _repeat(keys: list[tuple[str, str]], spot: int) -> tuple[int, int]:
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
