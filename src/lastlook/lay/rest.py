"""What a lay leaves over, in words: the same on the terminal, on the sheet and on the screen."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.lay.placement import LeftOver
from lastlook.quantity import Units, write_length

LEAST_MM = (30.0, 100.0)
"""A rest smaller than this is not told (common practice, no source)."""
SLIM = 3.0
"""A rest is called a strip if it is so many times longer than wide."""


def headline(left_over: Sequence[LeftOver], units: Units = Units.CM) -> str:
    """Return what a proven lay leaves over, the largest rest first.

    >>> headline([LeftOver(120.0, 1400.0)])
    'Left over: a strip 12 × 140 cm.'
    """
    rests = sorted(worth_keeping(left_over), key=lambda rest: -rest.width_mm * rest.length_mm)
    if not rests:
        return "It all comes out; nothing worth keeping is left over."
    return f"Left over: {rest_in_words(rests[0], units)}."


def worth_keeping(left_over: Sequence[LeftOver]) -> tuple[LeftOver, ...]:
    """Return the rests that are large enough for anything."""
    return tuple(rest for rest in left_over if min(_sides(rest)) >= LEAST_MM[0] and max(_sides(rest)) >= LEAST_MM[1])


def _sides(rest: LeftOver) -> tuple[float, float]:
    return rest.width_mm, rest.length_mm


def rest_in_words(rest: LeftOver, units: Units = Units.CM) -> str:
    """Return a rest in words: 'a strip 12 × 140 cm'."""
    short, long = sorted(_sides(rest))
    name = "a strip" if long >= SLIM * short else "a piece"
    return f"{name} {write_length(short, units).rsplit(' ', 1)[0]} × {write_length(long, units)}"
