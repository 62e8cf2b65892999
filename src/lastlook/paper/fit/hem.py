"""How deep a hem may be, and how much of its raw edge is too long once it is folded up.

*Flare* is what the girth grows by for each mm down the skirt. A folded edge lies on a smaller girth by twice the flare
times its depth, whatever the radius (worked out).
"""

from __future__ import annotations

import math

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.drafted import Drafted
from lastlook.paper.easing import Easing, eased_share

INCH = 25.4
DEPTHS_MM = {"circle": 0.25 * INCH, "flared": 1.5 * INCH, "moderately flared": 2 * INCH}
"""T. Johnson, It's Fun to Sew a Cotton School Dress (read); the least of 2-3 in for moderate flare."""
MOST_SHARE = 0.06
"""Over 6 % even wool is too full, 3-4 % cotton (from memory of textbooks); taken where the cloth is not known."""
MODERATE, FULL = 1.2, 4.0
"""Flare, in mm of girth a mm of depth: up to a moderate A-line, from a three-quarter circle on."""


def flare(upper_girth_mm: float, lower_girth_mm: float, apart_mm: float) -> float:
    """Return how much the girth grows for each mm down.

    >>> flare(1000, 1400, 400)
    1.0
    """
    return (lower_girth_mm - upper_girth_mm) / apart_mm


def hem_excess_mm(flare_of_skirt: float, depth_mm: float) -> float:
    """Return how much the raw edge of a hem is longer than the skirt it is folded onto.

    >>> round(hem_excess_mm(2 * math.pi, 25), 1), hem_excess_mm(1.0, 40)
    (314.2, 80.0)
    """
    return 2 * flare_of_skirt * depth_mm


def usual_depth_mm(flare_of_skirt: float) -> float:
    """Return how deep a hem is usual for a flare."""
    if flare_of_skirt >= FULL:
        return DEPTHS_MM["circle"]
    return DEPTHS_MM["flared"] if flare_of_skirt > MODERATE else DEPTHS_MM["moderately flared"]


def hem_findings(drafted: Drafted, easing: Easing) -> tuple[Finding, ...]:
    """Say where a hem is too deep to be eased onto its skirt."""
    hip, hem = drafted.girths_mm.get("hip"), drafted.girths_mm.get("hem")
    shell = [piece for piece in drafted.pieces if piece.role == "skirt"]
    side = shell[0].side("hem") if shell else None
    level = shell[0].level("hip") if shell else None
    if hip is None or hem is None or side is None or level is None:
        return ()
    low = min(spot[1] for spot in (side.start, side.end))
    growth = max(0.0, flare(hip, hem, max(level - low, 1.0)))
    excess = hem_excess_mm(growth, side.allowance_mm)
    share = eased_share(hem, hem - excess) if hem > excess else math.inf
    limit = easing.share or MOST_SHARE
    if share <= limit + 1e-6:
        return ()
    depth = hem * limit / (1 + limit) / (2 * growth) if growth else 0.0
    return (
        Finding(
            "hem-too-full",
            Certainty.DOUBTFUL,
            f"The hem's raw edge is {excess:.0f} mm longer than the skirt it is folded onto.",
            f"That is {share * 100:.1f} %; about {limit * 100:.0f} % can be eased in. The skirt grows by "
            f"{growth:.2f} mm for each mm down, and the hem is {side.allowance_mm:.0f} mm deep.",
            f"Make the hem {depth:.0f} mm deep or less, or face it with a shaped strip.",
            where=Where(piece=shell[0].name, edge="hem"),
        ),
    )
