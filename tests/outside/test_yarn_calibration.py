"""The yarn forecast says how sure it is, and is as sure as it says: simulated projects with 8 % swatch error."""

from __future__ import annotations

import random

import pytest

from lastlook import stock
from lastlook.knit.yarn import PieceStitches, Weighed, forecast
from lastlook.knit.yarn.forecast import PIECE_SD, SCALE_SD_G, SEAMS, Forecast
from lastlook.quantity import Missing, Origin, gauge_of, give_or_take
from lastlook.quantity.spread import SIGMAS

PIECES = (
    PieceStitches("Sleeves", (("stockinette", 10_000),), 44, 8, 2),
    PieceStitches("Back", (("stockinette", 17_000),), 106, 34),
    PieceStitches("Front", (("stockinette", 17_000),), 106, 20),
)
GAUGE = gauge_of(22, 30, Origin.MEASURED)
SWATCH = stock.Swatch("s", 33, 45, 150, 150, give_or_take(10.0, 0.01), washed=True)
LOT = stock.Yarn("lot", give_or_take(600, 2), Missing("metres", ""))
PROJECTS = 2000


def said(weighed: list[Weighed]) -> Forecast:
    out = forecast(PIECES, GAUGE, LOT, SWATCH, weighed)
    assert isinstance(out, Forecast)
    return out


def knit(chance: random.Random) -> dict[str, float]:
    """One project: a common factor 8 % off the swatch, each piece 3 % off that, as a scale shows it."""
    factor = chance.gauss(1, 0.08)
    true: dict[str, float] = {}
    for piece, grams in said([]).per_piece[:-1]:
        true[piece] = grams.best * factor * chance.gauss(1, PIECE_SD)
    return true


@pytest.mark.parametrize("made", [0, 1, 2])
def test_the_90_percent_range_holds_nine_in_ten(made: int) -> None:
    chance = random.Random(1951 + made)
    held = 0
    for _ in range(PROJECTS):
        true = knit(chance)
        names = list(true)[:made]
        weighed = [Weighed(name, true[name] + chance.gauss(0, SCALE_SD_G)) for name in names]
        share = chance.gauss(SEAMS.best, SEAMS.plus_minus / SIGMAS)
        total = sum(true.values()) * (1 + share)
        low, high = said(weighed).range_90
        held += low <= total <= high
    assert 0.88 <= held / PROJECTS <= 0.92, f"{held / PROJECTS:.1%}"


def test_every_weighed_piece_narrows_the_range() -> None:
    pieces = [name for name, _ in said([]).per_piece[:-1]]
    widths = []
    for count in range(len(pieces)):
        weighed = [Weighed(name, dict(said([]).per_piece)[name].best * 1.05) for name in pieces[:count]]
        widths.append(said(weighed).to_come_g.plus_minus)
    assert widths == sorted(widths, reverse=True)


def test_a_hungry_sleeve_moves_the_rest() -> None:
    before = said([])
    sleeve = dict(before.per_piece)["Sleeves 1"].best
    after = said([Weighed("Sleeves 1", sleeve * 1.1)])
    assert after.factor.best == pytest.approx(1.1, abs=0.02)
    assert after.total_g.best > before.total_g.best * 1.07
