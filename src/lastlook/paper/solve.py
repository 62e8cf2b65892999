"""The value at which a steadily changing length comes out as wanted."""

from __future__ import annotations

import math
from collections.abc import Callable

_HALVINGS = 100
_FINE = 1e-6
"""Lengths are solved to a nanometre."""


def solve(short_by: Callable[[float], float], low: float, high: float) -> float | None:
    """Return where `short_by` is nought between two values; None if it has one sign, or no value, there.

    >>> round(solve(lambda x: x * x - 2, 0, 2) or 0, 6)
    1.414214
    """
    at_low, at_high = short_by(low), short_by(high)
    if abs(at_low) < _FINE:
        return low
    if abs(at_high) < _FINE:
        return high
    if not (math.isfinite(at_low) and math.isfinite(at_high)) or at_low * at_high > 0:
        return None
    return _close_in(short_by, (low, at_low), (high, at_high))


def _close_in(short_by: Callable[[float], float], low: tuple[float, float], high: tuple[float, float]) -> float:
    """Narrow a bracket: by the chord (Illinois variant of false position), halving where that is slow."""
    (a, at_a), (b, at_b) = low, high
    for step in range(_HALVINGS):
        middle = (a + b) / 2 if step % 4 == 3 else (a * at_b - b * at_a) / (at_b - at_a)
        value = short_by(middle)
        if abs(value) < _FINE or abs(b - a) < 1e-12:
            return middle
        if value * at_b < 0:
            a, at_a = b, at_b
        else:
            at_a /= 2
        b, at_b = middle, value
    return b
