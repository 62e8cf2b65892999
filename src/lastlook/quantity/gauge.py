"""Gauge: the only place where counts become lengths and lengths become counts.

A *gauge* is how many stitches and rows of one structure lie in 10 cm, each with its range.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.quantity.known import Missing
from lastlook.quantity.origin import Origin
from lastlook.quantity.spread import Spread, exactly, give_or_take

MM = 100.0
"""Gauge is counted over 10 cm."""


@dataclass(frozen=True)
class Gauge:
    """Stitches and rows in 100 mm of one structure."""

    stitches: Spread
    rows: Spread | Missing
    origin: Origin
    structure: str = "stockinette"

    def width_mm(self, stitches: float) -> Spread:
        """Return how wide that many stitches lie, in mm, with the range that the gauge brings."""
        return _over(stitches, self.stitches)

    def length_mm(self, rows: float) -> Spread | Missing:
        """Return how long that many rows are, in mm; Missing where no row gauge is known."""
        return self.rows if isinstance(self.rows, Missing) else _over(rows, self.rows)

    def stitches_for(self, mm: float) -> float:
        """Return the unrounded number of stitches in `mm`; rounding belongs to whoever knows the repeat."""
        return mm * self.stitches.best / MM

    def rows_for(self, mm: float) -> float | Missing:
        """Return the unrounded number of rows in `mm`."""
        return self.rows if isinstance(self.rows, Missing) else mm * self.rows.best / MM


def gauge_of(stitches: float, rows: float | None, origin: Origin) -> Gauge:
    """Return a gauge per 100 mm with the doubt that its origin brings.

    A swatch counted to half a stitch over 10 cm is taken as +-2.5 % at 20 stitches (trade arithmetic, common
    practice, no source); a printed gauge is somebody else's hands and taken as +-5 % (common practice, no source).
    """
    share = {Origin.MEASURED: 0.025, Origin.DERIVED: 0.0}.get(origin, 0.05)
    missing = Missing("row gauge", "Count the rows in 10 cm of a washed swatch.")
    spread = give_or_take(stitches, stitches * share) if share else exactly(stitches)
    if rows is None:
        return Gauge(spread, missing, origin)
    return Gauge(spread, give_or_take(rows, rows * share) if share else exactly(rows), origin)


def _over(count: float, per_100mm: Spread) -> Spread:
    ends = sorted((count * MM / per_100mm.low, count * MM / per_100mm.high))
    return Spread(count * MM / per_100mm.best, ends[0], ends[1])
