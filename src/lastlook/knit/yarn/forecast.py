"""How much yarn the pieces will take, how sure that is, and how it gets surer with every piece that is weighed.

Let w_i be what piece i takes if every stitch weighs what the swatch says, and t the one factor by which these
hands and this yarn differ from it. Before knitting t is normal around 1 with standard deviation T. A piece that
was weighed at y_i obeys y_i = t w_i + noise with variance v_i = (C w_i)² + S² (C: how much pieces of the same
hands differ, S: the scale). Then t is normal with

    precision  P = 1/T² + sum w_i²/v_i,        mean  m = (1/T² + sum w_i y_i/v_i) / P,

and what the pieces still to come take, R = sum w_j, is normal with mean m R and variance R²/P + sum (C w_j)².
Ranges are 95 % like every `Spread`; `range_90` gives the narrower one.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from lastlook.finding import Finding
from lastlook.knit.yarn.counts import PieceStitches, copies
from lastlook.knit.yarn.enough import before_each, enough_findings
from lastlook.knit.yarn.loop import grams_per_stitch, loop_of
from lastlook.quantity import Gauge, Missing, Spread, give_or_take
from lastlook.quantity.spread import SIGMAS
from lastlook.stock import Swatch, Yarn

SWATCH_SD = 0.08
"""T when the stitch was weighed: a garment strays so far from its swatch (our own assumption, stated and
tested)."""
LOOP_SD = 0.10
"""T when the stitch was worked out from gauge and yarn count: the state of rest alone is 5 % either way."""
PIECE_SD = 0.03
"""C: pieces from the same hands; common practice, no source."""
SCALE_SD_G = 0.5
"""S: a kitchen scale that shows whole grams."""
SEAMS = Spread(0.065, 0.05, 0.08)
"""Sewing up, as a share of the pieces: 5-8 %, common practice, no source."""
NINETY = 1.645 / SIGMAS


@dataclass(frozen=True)
class Weighed:
    """What a piece took: grams missing from the balls once it was off the needles."""

    name: str
    grams: float


@dataclass(frozen=True)
class Forecast:
    """What a garment takes of one yarn."""

    total_g: Spread
    per_piece: tuple[tuple[str, Spread], ...]
    """Each copy of each piece: weighed ones as weighed, the others as forecast now; sewing up last."""
    made_g: float
    """What the pieces that were weighed took together."""
    metres: Spread | Missing
    per_stitch_g: Spread
    factor: Spread
    """How much these hands take beside the swatch."""
    from_what: str
    made: tuple[str, ...] = ()
    """The pieces that were weighed."""
    findings: tuple[Finding, ...] = ()

    @property
    def to_come_g(self) -> Spread:
        """Return what is still to be knitted and sewn."""
        return self.total_g - self.made_g

    @property
    def range_90(self) -> tuple[float, float]:
        """Return the grams between which the total lies nine times in ten."""
        down, up = self.total_g.best - self.total_g.low, self.total_g.high - self.total_g.best
        return self.total_g.best - down * NINETY, self.total_g.best + up * NINETY

    def chance_enough(self, stock_g: Spread) -> float:
        """Return the chance, 0 to 1, that so many grams suffice."""
        return (stock_g - self.total_g).chance_at_least(0.0)

    def stop_lines(self) -> tuple[tuple[str, float], ...]:
        """Return what the scale must still show before each piece to come, for it and all after it to be sure."""
        coming = [row for row in self.per_piece if row[0] not in self.made]
        return before_each(coming, self.factor)


def forecast(
    pieces: Sequence[PieceStitches],
    gauge: Gauge,
    yarn: Yarn,
    swatch: Swatch | None,
    weighed: Iterable[Weighed] = (),
) -> Forecast | Missing:
    """Return what the pieces take, from the swatch's weight or failing that from gauge and yarn count."""
    stitch = stitch_g(gauge, yarn, swatch)
    if isinstance(stitch, Missing):
        return stitch
    grams, prior_sd, from_what = stitch
    each = copies(pieces)
    made = _by_copy(each, weighed)
    mean, sd = _factor(each, grams, prior_sd, made)
    rows = [(one.name, _piece(one, grams, mean, sd, made)) for one in each]
    coming = [one for one in each if one.name not in made]
    to_come, to_come_sd = _to_come(coming, grams, mean, sd)
    made_g = sum(made[one.name] for one in each if one.name in made)
    sewing = _sewing(made_g, to_come, to_come_sd)
    total_sd = math.hypot(to_come_sd * (1 + SEAMS.best), (made_g + to_come) * SEAMS.plus_minus / SIGMAS)
    total = give_or_take(made_g + to_come + sewing.best, SIGMAS * total_sd)
    metres = _metres(total, yarn)
    found = enough_findings(total, yarn)
    return Forecast(
        total,
        (*rows, ("sewing up", sewing)),
        made_g,
        metres,
        give_or_take(grams * mean, SIGMAS * grams * sd),
        give_or_take(mean, SIGMAS * sd),
        from_what,
        tuple(one.name for one in each if one.name in made),
        found,
    )


def _by_copy(each: Sequence[PieceStitches], weighed: Iterable[Weighed]) -> dict[str, float]:
    """Return grams by copy: 'sleeve' is the first sleeve not yet weighed, 'sleeves' are both together."""
    made: dict[str, float] = {}
    for one in weighed:
        word = one.name.lower()
        exact = [copy.name for copy in each if copy.name.lower() == word]
        alike = [copy.name for copy in each if copy.name.lower().rstrip(" 0123456789") == word]
        single = [copy.name for copy in each if copy.name.lower().rstrip(" 0123456789s") == word.removesuffix("s")]
        names = exact or alike or [name for name in single if name not in made][:1]
        for name in names:
            made[name] = one.grams / len(names)
    return made


def is_named(word: str, pieces: Sequence[PieceStitches]) -> bool:
    """Whether a weighed piece is one of these, by the names that `forecast` takes."""
    return bool(_by_copy(copies(pieces), [Weighed(word, 1.0)]))


def stitch_g(gauge: Gauge, yarn: Yarn, swatch: Swatch | None) -> tuple[float, float, str] | Missing:
    """Return grams in a plain stitch, the deviation of its factor, and how it is known."""
    if swatch is not None:
        weighed = swatch.grams_per_stitch
        if isinstance(weighed, Spread):
            scale = weighed.plus_minus / weighed.best / SIGMAS
            return weighed.best, math.hypot(SWATCH_SD, scale), f"the weight of swatch “{swatch.name}”"
    if isinstance(yarn.tex, Missing):
        find = "Weigh a swatch of counted stitches and rows, or look for metres on the label."
        return Missing(f"grams in one stitch of {yarn.name}", find)
    loop = loop_of(gauge)
    if isinstance(loop, Missing):
        return loop
    share = yarn.indoor_share
    return (
        grams_per_stitch(loop.best, yarn.tex.best) * share.best,
        math.hypot(LOOP_SD, yarn.tex.plus_minus / yarn.tex.best / SIGMAS),
        "gauge and yarn count, by the loop length of plain knitting",
    )


def _factor(
    each: Sequence[PieceStitches], grams: float, prior_sd: float, made: dict[str, float]
) -> tuple[float, float]:
    precision, pull = prior_sd**-2, prior_sd**-2
    for one in each:
        if one.name in made:
            w = one.plain * grams
            v = (PIECE_SD * w) ** 2 + (one.plain_sd * grams) ** 2 + SCALE_SD_G**2
            precision += w * w / v
            pull += w * made[one.name] / v
    return pull / precision, precision**-0.5


def _own_variance(one: PieceStitches, grams: float) -> float:
    return (PIECE_SD * one.plain * grams) ** 2 + (one.plain_sd * grams) ** 2


def _piece(one: PieceStitches, grams: float, mean: float, sd: float, made: dict[str, float]) -> Spread:
    if one.name in made:
        return give_or_take(made[one.name], SIGMAS * SCALE_SD_G)
    w = one.plain * grams
    return give_or_take(mean * w, SIGMAS * math.sqrt((w * sd) ** 2 + _own_variance(one, grams)))


def _to_come(coming: Sequence[PieceStitches], grams: float, mean: float, sd: float) -> tuple[float, float]:
    all_w = sum(one.plain for one in coming) * grams
    variance = (all_w * sd) ** 2 + sum(_own_variance(one, grams) for one in coming)
    return mean * all_w, math.sqrt(variance)


def _sewing(made_g: float, to_come: float, to_come_sd: float) -> Spread:
    best = (made_g + to_come) * SEAMS.best
    doubt = math.hypot((made_g + to_come) * SEAMS.plus_minus, SIGMAS * to_come_sd * SEAMS.best)
    return give_or_take(best, doubt)


def _metres(total: Spread, yarn: Yarn) -> Spread | Missing:
    if isinstance(yarn.tex, Missing):
        return yarn.tex
    per_gram = 1000.0 / (yarn.tex.best * yarn.indoor_share.best)
    share = math.hypot(total.plus_minus / total.best if total.best else 0.0, yarn.tex.plus_minus / yarn.tex.best)
    return give_or_take(total.best * per_gram, total.best * per_gram * share)
