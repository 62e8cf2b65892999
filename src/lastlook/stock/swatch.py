"""A square knitted to learn from: what its counts say of the gauge, and its weight of the yarn.

Half a stitch is as near as a count over a tape comes, so a larger swatch is a surer one. Unwashed fabric still
moves.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from lastlook.finding import Certainty, Finding, Where
from lastlook.quantity import Gauge, Missing, Origin, Spread, Unread, gauge_of, give_or_take
from lastlook.quantity.length import read_number
from lastlook.stock.entry import Entry, missing

HALF_A_STITCH = 0.5
UNWASHED_SHARE = 0.05
"""Wash and rest moves plain wool by up to a tenth from dry- to fully relaxed (Munden's constants); half of that is
taken as the doubt of an unwashed swatch: our own bound."""
SMALL_MM = 100.0
"""Under 10 cm clear of the edges a count says little (R15 of common practice, no source)."""


@dataclass(frozen=True)
class Swatch:
    """A measured square of one structure."""

    name: str
    stitches: float
    rows: float | None
    width_mm: float
    height_mm: float | None
    grams: Spread | Missing
    washed: bool | None = None
    structure: str = "stockinette"
    needle: str = ""

    @property
    def gauge(self) -> Gauge:
        """Return stitches and rows in 100 mm, each with the doubt of counting it."""
        stitches = _per_100mm(self.stitches, self.width_mm, self.washed)
        rows: Spread | Missing = Missing("row gauge", "Count the rows of the swatch and measure its height.")
        if self.rows and self.height_mm:
            rows = _per_100mm(self.rows, self.height_mm, self.washed)
        return Gauge(stitches, rows, Origin.MEASURED, self.structure)

    @property
    def grams_per_stitch(self) -> Spread | Missing:
        """Return the yarn in one stitch by weight."""
        if isinstance(self.grams, Missing):
            return self.grams
        if not self.rows:
            return Missing("rows of the swatch", "Count its rows.")
        return self.grams * (1.0 / (self.stitches * self.rows))


def read_swatch(name: str, table: Mapping[str, object]) -> tuple[Swatch | Missing, tuple[Finding, ...]]:
    """Return a swatch from a table with `stitches`, `rows`, `width`, `height`, `grams` and `washed`."""
    entry = Entry("swatch", name, table)
    stitches, rows = entry.number("stitches", 500), entry.number("rows", 1000)
    width, height = entry.length_mm("width", 2000), entry.length_mm("height", 2000)
    grams, scale = entry.grams("grams", 500), entry.grams("scale", 50)
    washed, structure = entry.yes_or_no("washed"), entry.text("structure", "stockinette")
    needle = entry.text("needle")
    if stitches is None or width is None:
        want = missing(entry, "stitches and width", "Count its stitches and measure across them.")
        return want, entry.close()
    weight: Spread | Missing = missing(entry, "weight", "Weigh it dry on a scale that shows tenths of a gram.")
    if grams is not None:
        weight = give_or_take(grams, min(grams / 2, (scale or 1.0) / 2))
    swatch = Swatch(name, stitches, rows, width, height, weight, washed, structure, needle)
    return swatch, (*entry.close(), *_doubts(entry, swatch))


def read_gauge(text: str, origin: Origin = Origin.MEASURED) -> Gauge | Unread:
    """Return a gauge typed as stitches x rows in 10 cm: `22x30`, `22 x 30`, `22`.

    >>> read_gauge("22x30").stitches.best
    22.0
    """
    match = re.fullmatch(r"\s*([\d.,½¼¾ /]+?)\s*(?:(?:x|×|by|\*)\s*([\d.,½¼¾ /]+?)\s*)?", text.lower())
    hint = "Write stitches x rows in 10 cm, like 22x30."
    if match is None:
        return Unread(text, f"“{text}” can't be read as a gauge.", hint)
    stitches = read_number(match.group(1))
    rows = read_number(match.group(2)) if match.group(2) else None
    if stitches is None or (match.group(2) and rows is None):
        return Unread(text, f"“{text}” can't be read as a gauge.", hint)
    for count, what, most in ((stitches, "stitches", 100), (rows, "rows", 150)):
        if count is not None and not 2 <= count <= most:
            why = f"“{text}” says {count:g} {what} in 10 cm; hands and needles make between 2 and {most}."
            return Unread(text, why, f"Count the {what} in 10 cm of a washed swatch, and write it like 22x30.")
    return gauge_of(stitches, rows, origin)


def _per_100mm(count: float, mm: float, washed: bool | None) -> Spread:
    share = HALF_A_STITCH / count
    if not washed:
        share = (share**2 + UNWASHED_SHARE**2) ** 0.5
    return give_or_take(count * 100.0 / mm, count * 100.0 / mm * share)


def _doubts(entry: Entry, swatch: Swatch) -> list[Finding]:
    out = []
    if swatch.width_mm < SMALL_MM:
        out.append(
            Finding(
                "swatch-small",
                Certainty.DOUBTFUL,
                f"Swatch “{swatch.name}” is {swatch.width_mm:.0f} mm wide, so its gauge is only known to"
                f" {swatch.gauge.stitches.plus_minus:.1f} stitches in 10 cm.",
                "Half a stitch more or less counted over a short width is much over a whole bust.",
                "Knit one at least 15 cm square and count inside the edges.",
                where=Where(fact=f"{entry.fact}.width"),
            )
        )
    if swatch.washed is not True:
        out.append(
            Finding(
                "swatch-unwashed",
                Certainty.DOUBTFUL,
                f"Swatch “{swatch.name}” is not said to be washed, so its gauge is taken with 5 % doubt.",
                "Plain wool can draw in by a tenth between the needles and the first wash.",
                "Wash and dry it as the garment will be, count again, and set washed to yes.",
                where=Where(fact=f"{entry.fact}.washed"),
            )
        )
    return out
