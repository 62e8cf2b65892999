"""What the measures that were taken say about one that was not, by the open 1988 survey of 2,208 women.

The shipped table holds means and covariances of that survey (fitted by `tools/fit_survey.py`). A measure is
estimated as the mean of a joint normal distribution given all measures taken: least squares on whatever is known.
With known x, wanted y, S the covariances and T the tape's own variance,

    y = mean_y + S_yx (S_xx + T)^-1 (x - mean_x),    variance = S_yy - S_yx (S_xx + T)^-1 S_xy.

*Fit* is the share of the survey's variance that the known measures explain. Below `LEAST_FIT` the maker is asked
instead, unless all women are alike there to within `NARROW`, like wrists and heads. How far the relation
drifted until the 2012 survey is added to the doubt.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib import resources

from lastlook.quantity import Origin, give_or_take
from lastlook.quantity.spread import SIGMAS
from lastlook.wearer.measure import Measure

LEAST_FIT = 0.40
"""Below this share of explained variance a guess is hardly better than the average woman: our own bound."""
NARROW = 0.08
"""An estimate this sure, as a share of the average, serves even where nothing explains it: our own bound."""
REACH = 0.03
"""How far outside the survey's least and greatest woman a body may be, as a share: our own bound."""
TAPE_SD_MM = 2.5
"""5 mm give or take at 95 %, see `measure.TAPE_MM`."""


@dataclass(frozen=True)
class Column:
    """One measure over the whole survey."""

    women: int
    mean_mm: float
    least_mm: float
    most_mm: float
    drift_mm: float | None


@dataclass(frozen=True)
class Survey:
    """Means and covariances over all women together."""

    columns: dict[str, Column]
    covariances_mm2: dict[tuple[str, str], float]


@cache
def survey() -> Survey:
    """Return the shipped table."""
    file = resources.files("lastlook.wearer").joinpath("tables/survey_1988_women.csv")
    rows = list(csv.DictReader(io.StringIO(file.read_text(encoding="utf-8"))))
    columns = {
        row["measure"]: Column(
            int(row["women"]),
            float(row["mean_mm"]),
            float(row["least_mm"]),
            float(row["most_mm"]),
            float(row["drift_mm"]) if row["drift_mm"] else None,
        )
        for row in rows
    }
    pairs: dict[tuple[str, str], float] = {}
    for row in rows:
        for other in columns:
            if row[other]:
                pairs[row["measure"], other] = pairs[other, row["measure"]] = float(row[other])
    return Survey(columns, pairs)


def estimate(taken: Sequence[Measure], name: str) -> Measure | str:
    """Return an estimate of one measure, or a sentence that says why there is none."""
    table = survey()
    column = table.columns.get(name)
    if column is None:
        return ""
    known = [one for one in taken if one.name in table.columns and one.name != name]
    outside = [one.name for one in known if not _is_inside(table.columns[one.name], one.mm.best)]
    if outside:
        return f"The survey has nobody with such a measure ({outside[0].replace('_', ' ')}), so it is not estimated."
    known = [one for one in known if one.origin in (Origin.MEASURED, Origin.PRINTED)]
    if not known:
        return ""
    best, variance = _given(table, known, name)
    fit = 1 - variance / table.covariances_mm2[name, name]
    doubt = SIGMAS * (variance + (column.drift_mm or 0.0) ** 2) ** 0.5
    if fit < LEAST_FIT and doubt > NARROW * column.mean_mm:
        return f"The survey tells too little about it from what is known ({fit:.0%} of its variation)."
    names = ", ".join(one.name.replace("_", " ") for one in known)
    how = f"estimated from {names} as in {column.women} women measured in 1988 (fit {fit:.2f})"
    return Measure(name, give_or_take(best, doubt), Origin.ESTIMATED, how)


def _is_inside(column: Column, mm: float) -> bool:
    return column.least_mm * (1 - REACH) <= mm <= column.most_mm * (1 + REACH)


def _given(table: Survey, known: Sequence[Measure], name: str) -> tuple[float, float]:
    """Return mean and variance of a measure given those known."""
    pairs = table.covariances_mm2
    rows = [
        [pairs[one.name, other.name] + (TAPE_SD_MM**2 if one is other else 0.0) for other in known] for one in known
    ]
    toward = [pairs[one.name, name] for one in known]
    away = [one.mm.best - table.columns[one.name].mean_mm for one in known]
    weights = _solve(rows, toward)
    best = table.columns[name].mean_mm + sum(w * d for w, d in zip(weights, away, strict=True))
    variance = pairs[name, name] - sum(w * t for w, t in zip(weights, toward, strict=True))
    return best, max(variance, 1.0)


def _solve(rows: list[list[float]], right: list[float]) -> list[float]:
    """Solve a small positive-definite system by Gaussian elimination."""
    size = len(right)
    grid = [[*row, right[spot]] for spot, row in enumerate(rows)]
    for step in range(size):
        for below in range(step + 1, size):
            share = grid[below][step] / grid[step][step]
            grid[below] = [b - share * a for a, b in zip(grid[step], grid[below], strict=True)]
    out = [0.0] * size
    for step in reversed(range(size)):
        known = sum(grid[step][spot] * out[spot] for spot in range(step + 1, size))
        out[step] = (grid[step][size] - known) / grid[step][step]
    return out
