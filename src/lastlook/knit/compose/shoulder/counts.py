"""A shouldered garment in whole stitches and rows.

What always holds: back and front have one count, armholes lose alike, shoulders have the same stitches in the same
steps, and a cap's edge is as long as the armhole it goes into, to within a centimetre.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.edging import edging_mm
from lastlook.knit.compose.craft.evenly import even, groups
from lastlook.knit.compose.craft.ladder import Rung, Slope, slope
from lastlook.knit.compose.raglan.counts import SEAM_STITCHES, sleeve_and_cuff, two_lengths
from lastlook.knit.compose.raglan.shape import CUFF_FREE_MM
from lastlook.knit.compose.shoulder.shape import CAP_TOP_MM, SHOULDER_RISE_MM, ShoulderShape

CAP_MISS_MM = 7.0
"""Half a cap's edge and the armhole edge it goes to differ by less than a centimetre: common practice, no source."""
DEEPER_MM = 80
"""How far an armhole is deepened for a sleeve that is too wide for it."""
LEAST_SIDE_MM = 80.0
UNDERARM_SHARE = 0.45
"""Of an armhole, bound off at once, a third to a half: common practice, no source."""


@dataclass(frozen=True)
class ShoulderCounts:
    """Every count of a shouldered garment."""

    hem: int
    back: int
    rib_rows: int
    side_rows: int
    underarm: int
    armhole_decreases: int
    """At each edge, after the bind-off, on right-side rows."""
    armhole_rows: int
    shoulder: tuple[int, ...]
    """Bound off at each shoulder, step by step from the armhole."""
    neck: int
    neck_center: int
    neck_decreases: int
    neck_rows: int
    front: int
    front_hem: int
    front_center: int
    """Bound off at the neck edge of one front of a cardigan."""
    sleeve: int
    cuff: int
    cuff_rows: int
    sleeve_rows: int
    sleeve_free_rows: int
    cap: Slope | None
    """What each edge of the cap loses after the bind-off; None where the sleeve ends straight."""
    cap_top: int
    rungs: tuple[Rung, ...]
    """What it took to bring the cap into the armhole."""


def shoulder_counts(shape: ShoulderShape, asked: Asked) -> ShoulderCounts | None:
    """Return the nearest counts; where no cap goes into the armhole it is deepened, None if that does not help."""
    for extra in range(0, DEEPER_MM + 1, 5):
        side = shape.side if "body" in asked.lengths_mm else max(LEAST_SIDE_MM, shape.side - extra)
        found = _counts(replace(shape, armhole=shape.armhole + extra, side=side), asked)
        if found is not None:
            return replace(found, rungs=(*found.rungs, Rung.DEEPER)) if extra else found
    return None


def _counts(shape: ShoulderShape, asked: Asked) -> ShoulderCounts | None:
    g, r = asked.stitches_per_mm, asked.rows_per_mm
    back = asked.fabric_count(shape.bust / 2 * g + 2 * SEAM_STITCHES)
    hem = back if asked.texture else asked.edge_count(shape.hem / 2 * g + 2 * SEAM_STITCHES)
    back += (back - hem) % 2
    lost = 0 if shape.dropped else max(2, round((back - shape.across * g - 2 * SEAM_STITCHES) / 2))
    underarm = 0 if shape.dropped else max(2, math.ceil(lost * UNDERARM_SHARE))
    rows = max(even(shape.armhole * r), 2 * (lost - underarm) + 4)
    top = back - 2 * lost
    neck = 2 * round((shape.back_neck * g - top % 2) / 2) + top % 2
    neck = max(6, min(neck, top - 8))
    steps = max(2, round(SHOULDER_RISE_MM * r / 2))
    free = rows - 4 - (0 if asked.neck == "v" else 2 * (lost - underarm))
    neck_rows = max(4, min(even(shape.neck_drop * r), free))
    decreases = min(neck // 2 if asked.neck == "v" else neck // 4, neck_rows // 2 - 1)
    most = neck_rows - 2 if asked.neck == "v" else decreases
    front = _front(shape, asked, (back, (hem - back) // 2), lost + (top - neck) // 2, decreases, most)
    if asked.opening == "cardigan":
        decreases = front[2]
    sleeve = _sleeve(shape, asked, lost, underarm, rows)
    if sleeve is None:
        return None
    rib, side = two_lengths(edging_mm(asked, shape.rib), shape.side, r)
    return ShoulderCounts(
        hem, back, rib, side, underarm, lost - underarm, rows, groups((top - neck) // 2, steps), neck,
        neck - 2 * decreases, decreases, neck_rows, front[0], front[0] + (hem - back) // 2, front[1], *sleeve,
        (sleeve[5].rung,) if sleeve[5] else (),
    )  # fmt: skip


def _front(
    shape: ShoulderShape, asked: Asked, whole: tuple[int, int], outside: int, decreases: int, most: int
) -> tuple[int, int, int]:
    """Return one front's stitches, what is bound off at its neck edge, and what that edge decreases.

    `whole` is the back's count and what its hem has more at each side, `outside` what armhole and shoulder take. A V
    takes off all there is, up to `most`, on wrong-side rows too; a round neck binds the rest off.
    """
    back, side = whole
    if asked.opening == "pullover":
        return back, 0, decreases
    wanted = round(((shape.bust - shape.band) * asked.stitches_per_mm + 6 * SEAM_STITCHES - back) / 2)
    front = max(wanted, outside + 2)
    if asked.texture or asked.edging.repeat > 2:
        front = asked.edge_count(front + side) - side
        front += asked.step if front < outside + 2 else 0
    inside = front - outside
    decreases = min(most, inside)
    return front, inside - decreases, decreases


def _sleeve(
    shape: ShoulderShape, asked: Asked, lost: int, underarm: int, armhole_rows: int
) -> tuple[int, int, int, int, int, Slope | None, int] | None:
    g, r = asked.stitches_per_mm, asked.rows_per_mm
    cuff = asked.edge_count(shape.cuff * g + 2 * SEAM_STITCHES)
    sleeve, cuff = sleeve_and_cuff(shape.upper_sleeve * g + 2 * SEAM_STITCHES, cuff, asked)
    sleeve += (sleeve - cuff) % 2
    cuff_rows, seam = two_lengths(edging_mm(asked, shape.cuff_rib), max(shape.sleeve_seam, 40.0), r)
    free = even(min(CUFF_FREE_MM, max(0.0, shape.sleeve_seam - shape.cuff_rib) / 4) * r)
    if shape.dropped or asked.sleeve == "none":
        return sleeve, cuff, cuff_rows, seam, free, None, sleeve
    wanted = armhole_edge_mm(lost, underarm, armhole_rows, g, r)
    best: tuple[float, Slope, int] | None = None
    target = even(CAP_TOP_MM * g)
    for top in range(max(4, target - 6), target + 7, 2):
        decreases = (sleeve - 2 * underarm - top) // 2
        for rows in range(8, armhole_rows + 20, 2):
            found = slope(decreases, rows)
            if found is None:
                continue
            miss = abs(cap_edge_mm(underarm, decreases, rows, top, g, r) - wanted)
            cost = miss + 4 * (found.rung - 1)
            if miss <= CAP_MISS_MM and (best is None or cost < best[0]):
                best = (cost, found, top)
    if best is None:
        return None
    return sleeve, cuff, cuff_rows, seam, free, best[1], sleeve - 2 * underarm - 2 * best[1].decreases


def armhole_edge_mm(lost: int, underarm: int, rows: int, g: float, r: float) -> float:
    """Return the length of one armhole edge, underarm to shoulder."""
    if not lost:
        return rows / r
    slanted = lost - underarm
    return underarm / g + math.hypot(slanted / g, 2 * slanted / r) + max(0, rows - 2 * slanted - 2) / r


def cap_edge_mm(underarm: int, decreases: int, rows: int, top: int, g: float, r: float) -> float:
    """Return the length of half a cap's edge, underarm to the middle of its top."""
    return underarm / g + math.hypot(decreases / g, rows / r) + top / 2 / g
