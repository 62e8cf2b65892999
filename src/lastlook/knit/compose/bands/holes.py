"""Where buttonholes lie along a front: ends clear of the edge, one at the fullest bust, the rest as even as can be.

Positions are in stitches of the band from the hem. Where no source is named: common practice, no source.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from lastlook.finding import Finding
from lastlook.knit.compose.composed import cant_hold
from lastlook.knit.compose.craft.buttons import Buttons
from lastlook.knit.compose.craft.evenly import groups

SPACING_MM = 75.0
CLOSEST_MM, WIDEST_MM = 60.0, 90.0
CLEAR_MM = 3.0
"""Between one button's rim and the next at the very least."""
NEAR_MM = 40.0
"""A bust nearer than this to an end moves that end's hole: about half a spacing."""
OFF_BUST = 120.0
"""What it weighs to have no button at the fullest bust, in mm of uneven gaps: our own judgement."""
HEM_SHARE = 1.0
"""What a bare stretch at the hem weighs, half of what uneven gaps do: our own judgement."""
PLAIN_MM = 12.0
"""The button that is reckoned with where none is at hand."""


@dataclass(frozen=True)
class Holes:
    """Buttonholes along a band of so many stitches."""

    stitches: int
    starts: tuple[int, ...]
    wide: int
    """Stitches that each hole takes up."""
    at_bust: int | None
    """Which of them, from 0 at the hem, lies at the fullest bust."""

    @property
    def before(self) -> int:
        """Return the stitches below the first hole."""
        return self.starts[0]

    @property
    def gaps(self) -> tuple[int, ...]:
        """Return the stitches between holes, from the hem up."""
        return tuple(b - a - self.wide for a, b in itertools.pairwise(self.starts))

    @property
    def after(self) -> int:
        """Return the stitches above the last hole."""
        return self.stitches - self.starts[-1] - self.wide

    @property
    def runs(self) -> tuple[tuple[int, int], ...]:
        """Return the gaps gathered: (stitches, how many times), from the hem up."""
        return tuple((gap, len(list(same))) for gap, same in itertools.groupby(self.gaps))


def holes_for(
    stitches: int, per_mm: float, wide: int, buttons: Buttons | None, bust_mm: float | None
) -> Holes | Finding:
    """Return the holes along a front edge, or that so many buttons do not go there."""
    diameter = buttons.diameter_mm if buttons else PLAIN_MM
    end = max(3, math.ceil(diameter / 2 * per_mm) + 1)
    first, last = end, stitches - end - wide
    least = max(wide + 2, math.ceil((diameter + CLEAR_MM) * per_mm))
    bust = None if bust_mm is None else round(bust_mm * per_mm - wide / 2)
    if bust is not None and not first <= bust <= last:
        bust = None
    count = buttons.count if buttons else None
    wanted = (count,) if count else _counts((last - first) / per_mm)
    best: tuple[float, tuple[int, ...], int | None] | None = None
    for number in wanted:
        for starts, at_bust in _ways(number, (first, last), bust, max(least, round(NEAR_MM * per_mm))):
            gaps = [b - a for a, b in itertools.pairwise(starts)]
            if last < first or (gaps and min(gaps) < least):
                continue
            miss = sum(abs(gap / per_mm - SPACING_MM) for gap in gaps) / max(1, len(gaps))
            cost = miss + 2 * ((max(gaps) - min(gaps)) / per_mm if gaps else 0.0)
            cost += HEM_SHARE * (starts[0] - first) / per_mm + (OFF_BUST if at_bust is None else 0.0)
            if best is None or cost < best[0]:
                best = (cost, starts, at_bust)
    if best is None:
        number = count or 2
        need = (2 * end + wide + (number - 1) * least) / per_mm
        return _too_many(number, diameter, need, stitches / per_mm)
    return Holes(stitches, best[1], wide, best[2])


def _counts(length_mm: float) -> tuple[int, ...]:
    """Return how many holes lie a good distance apart, at least two."""
    least, most = math.ceil(length_mm / WIDEST_MM) + 1, math.floor(length_mm / CLOSEST_MM) + 1
    return tuple(range(max(2, least), max(2, most, least) + 1))


def _ways(number: int, ends: tuple[int, int], bust: int | None, near: int) -> list[tuple[tuple[int, ...], int | None]]:
    """Return the ways to place so many holes, evenly or with one of them at the bust where it is known.

    The last is at the neck; below the bust they go down to the hem, or on at the distance they have above it. A bust
    next to either end moves that end's hole.
    """
    first, last = ends
    if number == 1:
        return [((last if bust is None else bust,), None if bust is None else 0)]
    out: list[tuple[tuple[int, ...], int | None]] = [(_even(first, last, number - 1), None)]
    if bust is None:
        return out
    if bust - first < near:
        return [*out, (_even(bust, last, number - 1), 0)]
    if last - bust < near:
        return [*out, (_even(first, bust, number - 1), number - 1)]
    for below in range(1, number - 1):
        low, high = _even(first, bust, below), _even(bust, last, number - 1 - below)
        out.append(((*low, *high[1:]), below))
        step = high[1] - high[0]
        if bust - below * step >= first:
            out.append(((*range(bust - below * step, bust, step), *high), below))
    return out


def _even(first: int, last: int, intervals: int) -> tuple[int, ...]:
    return tuple(itertools.accumulate(groups(last - first, intervals), initial=first))


def _too_many(count: int, diameter_mm: float, need_mm: float, length_mm: float) -> Finding:
    return cant_hold(
        f"{count} buttons of {diameter_mm:g} mm want {need_mm / 10:.1f} cm of front edge; it has"
        f" {length_mm / 10:.1f} cm.",
        "Between two buttons there has to be a button's breadth and a little, and half a button at each end.",
        "Use fewer of them, or smaller ones.",
    )
