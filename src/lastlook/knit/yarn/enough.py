"""Whether the yarn at hand suffices, and the line at which to stop and think again.

A *stop line* is what the scale must still show before a piece is cast on, so that it and all after it are sure.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from lastlook.finding import Certainty, Finding, Where
from lastlook.quantity import Missing, Spread, write_weight
from lastlook.stock import Yarn

SURE = 0.975
"""The upper end of a 95 % range."""


def enough_findings(total: Spread, yarn: Yarn) -> tuple[Finding, ...]:
    """Return what there is to say about a lot beside what the pieces take of it."""
    fact = Where(fact=f"stock.yarn.{yarn.name}.grams")
    if isinstance(yarn.grams, Missing):
        return (
            Finding(
                "yarn-unweighed",
                Certainty.UNKNOWN,
                f"Whether yarn “{yarn.name}” suffices is not known yet: nobody weighed it.",
                f"The pieces take about {write_weight(total.best)}, between {write_weight(total.low)} and"
                f" {write_weight(total.high)}.",
                yarn.grams.find_out,
                where=fact,
            ),
        )
    chance = (yarn.grams - total).chance_at_least(0.0)
    if chance >= SURE:
        return ()
    have, want = write_weight(yarn.grams.best), write_weight(total.best)
    lack = total.best - yarn.grams.best
    amount = f"{write_weight(abs(lack))} {'short' if lack > 0 else 'to spare'}"
    certainty = Certainty.PROVEN if chance <= 1 - SURE else Certainty.DOUBTFUL
    return (
        Finding(
            "yarn-short",
            certainty,
            f"Yarn “{yarn.name}” suffices with a chance of {_percent(chance)}: there are {have}, and the pieces"
            f" take about {want} ({amount}).",
            f"What they take lies between {write_weight(total.low)} and {write_weight(total.high)}; every piece"
            " that is weighed narrows it.",
            "Knit the free length last, and see what gives back how much before casting on.",
            where=fact,
        ),
    )


def before_each(coming: Sequence[tuple[str, Spread]], factor: Spread) -> tuple[tuple[str, float], ...]:
    """Return the stop line before each piece that is not yet weighed, in the order of work."""
    shared = factor.plus_minus / factor.best
    out = []
    for spot, (name, _) in enumerate(coming):
        rest = [grams for _, grams in coming[spot:]]
        best = sum(grams.best for grams in rest)
        own = math.sqrt(sum(max(0.0, grams.plus_minus**2 - (grams.best * shared) ** 2) for grams in rest))
        out.append((name, best + math.hypot(best * shared, own)))
    return tuple(out)


def rows_left(grams_left: float, reserve_g: float, stitch_g: float, stitches: int) -> int:
    """Return how many rows of so many stitches the rest of the yarn gives.

    >>> rows_left(14, 4, 0.01016, 100)
    9
    """
    return max(0, math.floor((grams_left - reserve_g) / (stitch_g * stitches)))


def _percent(chance: float) -> str:
    if chance < 0.005:
        return "less than 1 %"
    return f"{min(chance, 0.99):.0%}".replace("%", " %")
