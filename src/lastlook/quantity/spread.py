"""A number with how sure it is.

A *spread* is a best value and the range that holds the truth about nineteen times in twenty; inside
the range the chance is shared as a two-sided normal curve, whose halves may differ.
Always `low <= best <= high`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

SIGMAS = 1.96
"""Half-width of a 95 % range in standard deviations (normal distribution, standard tables)."""


@dataclass(frozen=True)
class Spread:
    """A best value with its 95 % range, all in one unit that the name of the variable says."""

    best: float
    low: float
    high: float

    def __post_init__(self) -> None:
        if not self.low <= self.best <= self.high:
            raise ValueError(f"{self.best} does not lie between {self.low} and {self.high}")

    def __add__(self, other: Spread | float) -> Spread:
        """Add an independent spread (ranges in quadrature) or a certain number."""
        if not isinstance(other, Spread):
            return Spread(self.best + other, self.low + other, self.high + other)
        best = self.best + other.best
        down = math.hypot(self.best - self.low, other.best - other.low)
        up = math.hypot(self.high - self.best, other.high - other.best)
        return Spread(best, best - down, best + up)

    __radd__ = __add__

    def __sub__(self, other: Spread | float) -> Spread:
        """Take away an independent spread or a certain number."""
        return self + (-1.0 * other if isinstance(other, Spread) else -other)

    def __mul__(self, factor: float) -> Spread:
        """Scale by a certain number; a negative one turns the range round."""
        ends = sorted((self.low * factor, self.high * factor))
        return Spread(self.best * factor, ends[0], ends[1])

    __rmul__ = __mul__

    @property
    def plus_minus(self) -> float:
        """Half the width of the range."""
        return (self.high - self.low) / 2

    def is_certain(self) -> bool:
        """Whether the range is a single point."""
        return self.low == self.high

    def chance_at_most(self, limit: float) -> float:
        """Chance, 0 to 1, that the true value is not above `limit`.

        >>> round(Spread(100, 90, 110).chance_at_most(100), 2)
        0.5
        """
        reach = (self.high if limit > self.best else self.low) - self.best
        if reach == 0:
            return 1.0 if limit >= self.best else 0.0
        deviations = (limit - self.best) / abs(reach) * SIGMAS
        return 0.5 * (1 + math.erf(deviations / math.sqrt(2)))

    def chance_at_least(self, limit: float) -> float:
        """Chance, 0 to 1, that the true value is not below `limit`."""
        return 1 - self.chance_at_most(limit) if not self.is_certain() else float(self.best >= limit)


def exactly(value: float) -> Spread:
    """Return a value that is not in doubt."""
    return Spread(value, value, value)


def give_or_take(best: float, plus_minus: float) -> Spread:
    """Return a value with the same doubt on both sides."""
    return Spread(best, best - abs(plus_minus), best + abs(plus_minus))
