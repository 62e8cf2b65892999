"""A raglan yoke as a table of row pairs, the same whether it is worked up or down.

A *pair* is a right-side row and the row after it, or two rounds. Up, its shapings are decreases; down, they are
increases and the pairs come in the opposite order. Every shaping stands at the same distance from its marker on
both sides, so that the four lines mirror.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.knit.compose.raglan.counts import RaglanCounts
from lastlook.knit.worked import Side

OVER_ALL = "* {verb} to next marker, slip marker; repeat from * 3 times more"
"""A row that only shapes the neck says that the markers go along."""


@dataclass(frozen=True)
class Pair:
    """What one body edge, one sleeve edge and one neck edge lose in each of two rows, worked up."""

    body: tuple[int, int]
    sleeve: tuple[int, int]
    neck: int


@dataclass(frozen=True)
class Yoke:
    """The pairs from the underarm up, and how many of them lie below the neck."""

    pairs: tuple[Pair, ...]
    below_neck: int


def yoke_of(counts: RaglanCounts, neck: str) -> Yoke:
    """Return the table of a raglan's yoke."""
    below = (counts.raglan_rows - counts.neck_rows) // 2
    body, sleeve = _pairs(counts.body_slope.takes), _pairs(counts.sleeve_slope.takes)
    necks = _neck(counts.neck_decreases, len(body) - below, neck)
    return Yoke(tuple(Pair(*three) for three in zip(body, sleeve, (0,) * below + necks, strict=True)), below)


def _pairs(takes: tuple[int, ...]) -> list[tuple[int, int]]:
    return list(zip(takes[::2], takes[1::2], strict=True))


def _neck(times: int, pairs: int, neck: str) -> tuple[int, ...]:
    """Return in which pairs the neck edge is shaped: at once above a round neck's center, evenly along a V."""
    if neck != "v":
        return (1,) * times + (0,) * (pairs - times)
    marks = [0] * pairs
    for number in range(times):
        marks[number * (pairs - 1) // times] = 1
    return tuple(marks)


def words(side: Side, way: str, shapings: tuple[int, int, int]) -> str:
    """Return a yoke row in words, `shapings` at each body, sleeve and neck edge; `way` is 'inc' or 'dec'.

    >>> words(Side.ROUND, "inc", (1, 1, 0))
    '* k to 1 st before marker, m 1, k 1, slip marker, k 1, m 1; repeat from * 3 times more, k to end'
    """
    body, sleeve, neck = shapings
    verb = "p" if side is Side.WRONG else "k"
    core = _core(verb, way, body, sleeve) or (OVER_ALL.format(verb=verb) if neck else "")
    if neck and way == "inc":
        return f"{verb} 2, m 1, {core}, {verb} to last 2 sts, m 1, {verb} 2"
    if neck:
        return f"sl 1, k 1, psso, {core}, k to last 2 sts, k 2 tog"
    return f"{core}, {verb} to end" if core else ""


def _core(verb: str, way: str, body: int, sleeve: int) -> str:
    before = f"{verb} to 1 st before marker, m 1, {verb} 1"
    after = f"{verb} 1, m 1"
    if way == "dec":
        first, second = ("k 2 tog", "sl 1, k 1, psso") if verb == "k" else ("p 2 tog through back", "p 2 tog")
        before, after = f"{verb} to 3 sts before marker, {first}, {verb} 1", f"{verb} 1, {second}"
    if body and sleeve:
        return f"* {before}, slip marker, {after}; repeat from * 3 times more"
    over = f"slip marker, {verb} to next marker, slip marker"
    if body:
        return f"* {before}, {over}, {after}; repeat from * once more"
    if sleeve:
        return f"* {verb} to next marker, slip marker, {after}, {before}, slip marker; repeat from * once more"
    return ""
