"""Where a set-in cap is pinned to its armhole: the same share of both edges, told in rows that can be counted.

Shares are of the edges' lengths from the underarm's middle up; a quarter, a half and three quarters are common
practice, no source.
"""

from __future__ import annotations

import math

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import ordinal
from lastlook.knit.compose.shoulder.counts import ShoulderCounts, armhole_edge_mm, cap_edge_mm

SHARES = ((0.25, "a quarter"), (0.5, "half"), (0.75, "three quarters"))


def setting_in(counts: ShoulderCounts, asked: Asked) -> tuple[str, ...]:
    """Return the pins from the underarm up; nothing where the sleeve ends straight."""
    if counts.cap is None:
        return ()
    g, r = asked.stitches_per_mm, asked.rows_per_mm
    lost = counts.underarm + counts.armhole_decreases
    armhole = armhole_edge_mm(lost, counts.underarm, counts.armhole_rows, g, r)
    rows = len(counts.cap.takes)
    cap = cap_edge_mm(counts.underarm, counts.cap.decreases, rows, counts.cap_top, g, r)
    out = []
    for share, words in SHARES:
        at = _row(armhole * share - counts.underarm / g, 2 * counts.armhole_decreases, counts.armhole_decreases, asked)
        spot = _row(cap * share - counts.underarm / g, rows, counts.cap.decreases, asked)
        told = f"the {ordinal(spot)} row of the cap" if spot <= rows else "the cap's bound-off top"
        out.append(f"{words} of the way the armhole's {ordinal(at)} row meets {told}")
    return tuple(out)


def _row(mm: float, slanted: int, decreases: int, asked: Asked) -> int:
    """Return the row that lies so far along an edge, after its bind-off: slanted rows first, straight ones above."""
    slope = math.hypot(decreases / asked.stitches_per_mm, slanted / asked.rows_per_mm)
    if mm <= 0:
        return 1
    if mm <= slope:
        return max(1, round(slanted * mm / slope))
    return slanted + max(1, round((mm - slope) * asked.rows_per_mm))
