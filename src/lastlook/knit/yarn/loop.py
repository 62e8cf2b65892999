"""How much yarn is in one stitch of plain knitting, from its gauge: the loop length and its kin.

*Loop length* is the yarn in one stitch. For relaxed plain knitting the stitches in a square centimetre are Ks /
l², whatever the yarn, so a gauge gives the loop length (Munden, J. Textile Institute 50, 1959, T448; the dry
and wet rows from memory, the fully relaxed row read in a solved examination paper, GATE 2015 Q54).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from lastlook.quantity import Gauge, Missing, Spread


@dataclass(frozen=True)
class Relaxed:
    """How far the fabric has come to rest, as Munden's constants: courses, wales and both over l in cm."""

    kc: float
    kw: float
    ks: float


DRY = Relaxed(5.0, 3.8, 19.0)
WET = Relaxed(5.3, 4.1, 21.6)
FULL = Relaxed(5.5, 4.2, 23.1)


def loop_mm(stitches_per_10cm: float, rows_per_10cm: float, ks: float = WET.ks) -> float:
    """Return the yarn in one stitch, in mm.

    >>> round(loop_mm(20, 28), 2)
    19.64
    """
    return 10.0 * math.sqrt(ks / (stitches_per_10cm * rows_per_10cm / 100.0))


def loop_of(gauge: Gauge) -> Spread | Missing:
    """Return the yarn in one stitch of a gauge, in mm, from the driest state to the most relaxed."""
    if isinstance(gauge.rows, Missing):
        return gauge.rows
    best = loop_mm(gauge.stitches.best, gauge.rows.best)
    low = loop_mm(gauge.stitches.high, gauge.rows.high, DRY.ks)
    high = loop_mm(gauge.stitches.low, gauge.rows.low, FULL.ks)
    return Spread(best, low, high)


def loop_from_mark_mm(marked_mm: float, stitches: int) -> float:
    """Return the loop length from a marked length of yarn and the stitches that it made.

    >>> round(loop_from_mark_mm(914.4, 45), 2)
    20.32
    """
    return marked_mm / stitches


def grams_per_stitch(loop: float, tex: float) -> float:
    """Return the weight of one stitch from its yarn in mm and the yarn's tex."""
    return loop * tex / 1e6


def tightness(tex: float, loop: float) -> float:
    """Return the cover factor, root tex over the loop in cm; hand knitting lies about 9 to 13 (practice).

    >>> round(tightness(500, 19.64), 2)
    11.39
    """
    return math.sqrt(tex) / (loop / 10.0)


def diameter_mm(tex: float, fibre_density: float = 1.31) -> float:
    """Return a yarn's diameter (Texcoms Textile Technical Handbook 2023, p. 147); lofty wool is thicker.

    >>> round(diameter_mm(500), 3)
    0.867
    """
    return 0.0444 * math.sqrt(tex / fibre_density)


def grams_per_m2(stitches_per_cm2: float, loop: float, tex: float) -> float:
    """Return the weight of the fabric (Texcoms Textile Technical Handbook 2023, p. 147).

    >>> round(grams_per_m2(5.6, 19.64, 500))
    550
    """
    return stitches_per_cm2 * loop * tex / 100.0


def peirce_loop_mm(courses_per_cm: float, wales_per_cm: float, diameter: float) -> float:
    """Return Peirce's loop of open fabric (Textile Research Journal 17, 1947, from memory): a sanity band only."""
    return 10.0 * (2 / courses_per_cm + 1 / wales_per_cm) + 5.94 * diameter


def shrinkage_percent(before: Relaxed, after: Relaxed) -> tuple[float, float]:
    """Return how much shorter and narrower plain knitting becomes between two states.

    >>> [round(share, 1) for share in shrinkage_percent(DRY, FULL)]
    [9.1, 9.5]
    """
    return 100 * (1 - before.kc / after.kc), 100 * (1 - before.kw / after.kw)
