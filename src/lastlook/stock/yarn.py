"""One lot of yarn: how many grams there are, how long that is, and in what state.

Wool takes up water from the air: a ball sold as 50 g at the trade's 18.25 % regain weighs about 47 g indoors and
is as long as before. So grams as weighed and grams as labelled are two things, and metres come from the label.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lastlook.finding import Finding
from lastlook.quantity import Missing, Origin, Spread, Unread, give_or_take, read_length, read_weight
from lastlook.quantity.length import read_number
from lastlook.stock.entry import Entry, missing
from lastlook.stock.yarn_count import HINT, tex_of

TRADE_REGAIN = 0.1825
"""Commercial moisture regain of wool (Lang Yarns, "Ball weight", read)."""
INDOOR_REGAIN = (0.08, 0.12, 0.14)
"""Indoors, from a heated room to a damp one (the same page)."""
LABEL_SHARE = 0.02
"""How far a ball strays from its label, fibre that takes up no water: common practice, no source."""
DRY_FIBRES = ("cotton", "linen", "acrylic", "nylon", "polyester", "silk", "viscose", "rayon", "hemp")
MOST_G = 20_000.0


@dataclass(frozen=True)
class Yarn:
    """One lot of yarn at hand."""

    name: str
    grams: Spread | Missing
    """Grams as a scale would show them indoors, all balls together."""
    tex: Spread | Missing
    """Grams in 1000 m, by the label."""
    label_g: float | None = None
    """Grams as sold, where only the label is known."""
    fibre: str = ""
    state: str = ""
    """'new', 'old', 'ripped', 'moth-eaten': its condition in the maker's words."""
    origin: Origin = Origin.MEASURED
    keep_whole: bool = False
    """Whether the lot may not be broken into."""

    @property
    def metres(self) -> Spread | Missing:
        """Return how many metres there are."""
        if isinstance(self.tex, Missing):
            return self.tex
        if self.label_g is not None:
            return _divide(give_or_take(self.label_g, self.label_g * LABEL_SHARE), self.tex)
        if isinstance(self.grams, Missing):
            return self.grams
        low, best, high = _indoors(self.fibre)
        as_sold = Spread(self.grams.best / best, self.grams.low / high, self.grams.high / low)
        return _divide(as_sold, self.tex)

    @property
    def indoor_share(self) -> Spread:
        """Return what 1 g as sold weighs on an indoor scale."""
        low, best, high = _indoors(self.fibre)
        return Spread(best, low, high)

    @property
    def metres_per_100g(self) -> float | Missing:
        """Return metres in 100 g, as labels give them."""
        return self.tex if isinstance(self.tex, Missing) else 100_000.0 / self.tex.best


def at_regain(grams: float, regain_from: float, regain_to: float) -> float:
    """Return what wool weighs once its moisture regain has changed; its length stays.

    >>> round(at_regain(50, 0.1825, 0.14), 1)
    48.2
    """
    return grams * (1 + regain_to) / (1 + regain_from)


def metres_used(grams: float, ball_g: float, ball_m: float) -> float:
    """Return the metres in so many grams of a ball.

    >>> metres_used(180, 200, 220)
    198.0
    """
    return ball_m * grams / ball_g


def read_yarn(name: str, table: Mapping[str, object]) -> tuple[Yarn, tuple[Finding, ...]]:
    """Return a yarn from a table with `grams` as weighed, or `balls` and `ball`, and its `count` if known."""
    entry = Entry("yarn", name, table)
    weighed = entry.grams("grams", MOST_G)
    balls = entry.number("balls", 500)
    ball_g, tex = _ball(entry)
    label_g = balls * ball_g if balls and ball_g else None
    fibre, state = entry.text("fibre"), entry.text("state")
    keep = entry.yes_or_no("keep_whole") or False
    grams: Spread | Missing
    if weighed is not None:
        grams, origin = give_or_take(weighed, max(1.0, weighed * 0.005)), Origin.MEASURED
    elif label_g is not None:
        low, best, high = _indoors(fibre)
        grams, origin = Spread(label_g * best, label_g * low, label_g * high), Origin.PRINTED
    else:
        grams, origin = missing(entry, "grams", "Put all balls on a kitchen scale together."), Origin.ASSUMED
    only_label = None if weighed is not None else label_g
    return Yarn(name, grams, tex, only_label, fibre, state, origin, keep), entry.close()


def _ball(entry: Entry) -> tuple[float | None, Spread | Missing]:
    """Read what one ball weighs and how long it is: `ball`, `metres_per_100g` or `count`."""
    tex: Spread | Missing = missing(
        entry, "metres", "Look for metres or yards on the label, or weigh 10 m of it on a fine scale."
    )
    ball, ball_g = entry.text("ball"), None
    if ball:
        whole = tex_of(ball)
        weight = ball.replace("/", "=").replace("per", "=").split("=")
        ball_g = next((g for part in weight if isinstance(g := _grams(part), float)), None)
        if isinstance(whole, float):
            tex = give_or_take(whole, whole * LABEL_SHARE)
        elif ball_g is None or len(weight) > 1:
            entry.unread("ball", whole)
    count = entry.text("count")
    if count:
        read = tex_of(count)
        if isinstance(read, Unread):
            entry.unread("count", read)
        else:
            tex = give_or_take(read, read * 0.03)
    metres = entry.text("metres_per_100g")
    if metres:
        value = read_number(metres)
        m = value * 1000 if value is not None else read_length(metres)
        if isinstance(m, Unread) or m <= 0:
            entry.unread("metres_per_100g", Unread(metres, f"“{metres}” is no length of yarn.", HINT))
        else:
            tex = give_or_take(1e8 / m, 1e8 / m * LABEL_SHARE)
    return ball_g, tex


def _grams(text: str) -> float | None:
    value = read_weight(text)
    return value if isinstance(value, float) and value > 0 else None


def _indoors(fibre: str) -> tuple[float, float, float]:
    """Return what 1 g as sold weighs indoors: least, likeliest, most."""
    if any(word in fibre.lower() for word in DRY_FIBRES) and "wool" not in fibre.lower():
        return 1 - LABEL_SHARE, 1.0, 1 + LABEL_SHARE
    low, best, _high = (at_regain(1.0, TRADE_REGAIN, regain) for regain in INDOOR_REGAIN)
    return low * (1 - LABEL_SHARE / 2), best, 1.0


def _divide(grams: Spread, tex: Spread) -> Spread:
    """Return metres: grams over tex, both in doubt."""
    best = grams.best * 1000.0 / tex.best
    share = ((grams.plus_minus / grams.best) ** 2 + (tex.plus_minus / tex.best) ** 2) ** 0.5
    return give_or_take(best, best * share)
