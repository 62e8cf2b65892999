"""Rows that were put into words one by one, told as a leaflet tells them: plain stretches in one sentence, repeats
once.

A *told row* has its words, or none where it is plain. What repeats is numbered and closed with a printed count.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.knit.worked import Side

LONGEST_CYCLE = 24
"""Rows in a numbered list that repeats."""


@dataclass(frozen=True)
class ToldRow:
    """One row in words; `words` is empty where it is worked plain."""

    words: str
    side: Side
    after: int


def passages(rows: Sequence[ToldRow]) -> list[str]:
    """Return the lines for rows of stockinette."""
    out: list[str] = []
    spot = 0
    while spot < len(rows):
        period, times = (1, 1) if not rows[spot].words else _cycle(rows[spot:])
        if not rows[spot].words:
            length = next((n for n, row in enumerate(rows[spot:]) if row.words), len(rows) - spot)
            out.append(_plain(rows[spot : spot + length]))
            spot += length
        elif times == 1:
            out.append(f"Next {noun(rows[spot])}: {capital(rows[spot].words)} -- {rows[spot].after} sts.")
            spot += 1
        else:
            out += _numbered(rows[spot : spot + period], times, rows[spot + period * times - 1].after)
            spot += period * times
    return out


def noun(row: ToldRow) -> str:
    """Return what the trade calls one pass: a row, or a round."""
    return "round" if row.side is Side.ROUND else "row"


def capital(words: str) -> str:
    """Return a sentence's beginning, its star left in front.

    >>> capital("* k 2, p 2; repeat from * across")
    '* K 2, p 2; repeat from * across'
    """
    lead = "* " if words.startswith("* ") else ""
    rest = words.removeprefix(lead)
    return lead + rest[:1].upper() + rest[1:]


def _plain(rows: Sequence[ToldRow]) -> str:
    last = rows[-1]
    if last.side is Side.ROUND:
        return f"Knit {len(rows)} round{'s' if len(rows) > 1 else ''}."
    if len(rows) == 1:
        return f"{'Purl' if last.side is Side.WRONG else 'Knit'} 1 row."
    return f"Work even for {len(rows)} rows, ending with a {'p' if last.side is Side.WRONG else 'k'} row."


def _cycle(rows: Sequence[ToldRow]) -> tuple[int, int]:
    """Return the rows of the repeat that covers most, and how often it is worked; (1, 1) where nothing repeats."""
    told = [(row.words, row.side) for row in rows]
    best = (1, 1)
    for period in range(1, min(LONGEST_CYCLE, len(told) // 2) + 1):
        times = 1
        while told[:period] == told[period * times : period * (times + 1)]:
            times += 1
        if times > 1 and period * times > best[0] * best[1]:
            best = (period, times)
    return best


def _numbered(rows: Sequence[ToldRow], times: int, after: int) -> list[str]:
    name = noun(rows[0])
    again = f"{name}s" if len(rows) > 1 else name
    more = {1: "once more", 2: "twice more"}.get(times - 1, f"{times - 1} times more")
    closing = f"Repeat last {f'{len(rows)} ' if len(rows) > 1 else ''}{again} {more} -- {after} sts."
    if len(rows) == 1:
        return [f"Next {name}: {capital(rows[0].words)}.", closing]
    lines: list[str] = []
    spot = 0
    while spot < len(rows):
        if rows[spot].words:
            lines.append(f"{name.title()} {spot + 1}: {capital(rows[spot].words)}.")
            spot += 1
            continue
        length = next((n for n, row in enumerate(rows[spot:]) if row.words), len(rows) - spot)
        lines += _plain_numbers(rows, spot, length)
        spot += length
    return [*lines, closing]


def _plain_numbers(rows: Sequence[ToldRow], first: int, length: int) -> list[str]:
    numbers = range(first + 1, first + length + 1)
    if rows[first].side is Side.ROUND:
        label = f"Round {first + 1}" if length == 1 else f"Rounds {first + 1} to {first + length}"
        return [f"{label}: Knit."]
    out = []
    for side, verb in ((Side.WRONG, "Purl"), (Side.RIGHT, "Knit")):
        these = [number for number in numbers if rows[number - 1].side is side]
        if these:
            out.append(f"Row{'s' if len(these) > 1 else ''} {listed(these)}: {verb}.")
    return out


def listed(numbers: Sequence[int]) -> str:
    """Return numbers as a sentence lists them.

    >>> listed([2, 4, 6])
    '2, 4 and 6'
    """
    told = [str(number) for number in numbers]
    return told[0] if len(told) == 1 else f"{', '.join(told[:-1])} and {told[-1]}"
