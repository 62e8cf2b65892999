"""Sums of the trade that published rules give, each with where it is from; priors, before any shape is drawn.

They stand beside the search that composes: a maker's book may be checked against them.
"""

from __future__ import annotations

import math
from collections.abc import Sequence


def percentage_yoke(key: int, upper_sleeve: float = 0.33, underarm: float = 0.08, neck: float = 0.40) -> dict[str, int]:
    """Return a yoke's counts from the body's (Zimmermann, Knitting Without Tears, 1971, read in a summary).

    >>> percentage_yoke(200)["joined"]
    268
    """
    sleeve, under = round(key * upper_sleeve), round(key * underarm)
    return {
        "upper sleeve": sleeve,
        "underarm": under,
        "joined": key + 2 * sleeve - 4 * under,
        "neck": round(key * neck),
        "raglan sleeve": sleeve - under,
        "raglan body": key // 2 - under,
    }


def yoke_depth(body_circumference: float) -> float:
    """Return a quarter of the body's circumference (the same source); too deep beyond about 44 in of bust."""
    return body_circumference / 4


def raglan_tops(half_body: int, sleeve: int, neck: int) -> tuple[float, float]:
    """Return what sleeve and back keep at the neck (carol-myknittingpage, "To convert to raglan", 2005).

    >>> raglan_tops(100, 68, 100)
    (9.0, 41.0)
    """
    more = half_body - sleeve
    return neck / 4 - more / 2, neck / 4 + more / 2


def raglan_decrease_rows(half_body: int, back_at_neck: float, underarm: int) -> float:
    """Return the decrease rows of a raglan, the whole underarm taken off first (the same source)."""
    return (half_body - back_at_neck - underarm) / 2


def raglan_balance(back: int, underarm: int, decreases: int, top: int) -> int:
    """Return what a raglan piece has left over; nothing where it adds up.

    >>> raglan_balance(100, 5, 28, 34)
    0
    """
    return back - 2 * underarm - 2 * decreases - top


def armhole_depth(raglan_depth: float, sleeve_top: float) -> float:
    """Return shoulder to underarm: the raglan's depth and half the sleeve's top (TenDyke, 2013/2015)."""
    return raglan_depth + sleeve_top / 2


CAP_ALLOWANCES_IN = ((30, 2.0), (48, 3.0), (math.inf, 4.0))
"""By chest in inches (slippedstitches blog, sleeve cap part 2, 2014)."""


def cap_allowance_in(chest_in: float) -> float:
    """Return the allowance of a set-in sleeve cap, in inches."""
    return next(allowance for limit, allowance in CAP_ALLOWANCES_IN if chest_in <= limit)


def cap_length(armhole: float, top_bind_off: float, allowance: float) -> float:
    """Return the height of a set-in cap's sloped part (the same source).

    >>> cap_length(8.5, 3, 3)
    5.5
    """
    return armhole - top_bind_off / 2 - allowance / 2


def cap_decreases(sleeve: int, bound_off: Sequence[int]) -> int:
    """Return the decreases at each edge of a cap.

    >>> cap_decreases(66, (10, 8, 16))
    16
    """
    return (sleeve - sum(bound_off)) // 2


def swapped_panel(stitches: int, panel_width: float, gauge: float, panel_stitches: int) -> float:
    """Return the stitches once a panel replaces plain knitting (Creative Knitting, 13 September 2016).

    >>> swapped_panel(120, 7.25, 6, 46)
    122.5
    """
    return stitches - panel_width * gauge + panel_stitches


def trapezium(foot: float, head: float, height: float) -> float:
    """Return the area of a sleeve laid flat."""
    return (foot + head) * height / 2


def laid_out(areas: Sequence[float]) -> float:
    """Return the area of all pieces together (The Chilly Dog, sweater project step 6).

    >>> laid_out((420, 120, 18))
    558
    """
    return sum(areas)


def round_yoke(joined: float, shares: Sequence[float]) -> tuple[float, ...]:
    """Return what a round yoke keeps after each of its decrease rounds, by the share kept.

    Two thirds three times (Zimmermann, Knitting Without Tears, 1971), or three quarters, two thirds and three fifths
    (Knitting Around, 1989), both read in a summary.

    >>> [round(one) for one in round_yoke(268, (3 / 4, 2 / 3, 3 / 5))]
    [201, 134, 80]
    """
    out: list[float] = []
    for share in shares:
        joined *= share
        out.append(joined)
    return tuple(out)


def stretch_percent(relaxed: float, stretched: float) -> float:
    """Return how far a fabric gives; a garment smaller than its body wants at least as much across.

    >>> stretch_percent(10, 14)
    40.0
    """
    return (stretched - relaxed) / relaxed * 100


def sweater_area(circumference: float, length: float) -> float:
    """Return a whole sweater's area, roughly (Autumn Breeze Designs, KnitWit 60)."""
    return circumference * length * 3 / 2


def balls(metres: float, metres_per_ball: float) -> int:
    """Return whole balls; one spare of the same lot comes on top.

    >>> balls(1150, 125)
    10
    """
    return math.ceil(metres / metres_per_ball)


def needle_rule_m(needle_mm: float, stitches: int, rows: int, factor: float = 1.5) -> float:
    """Return the yarn of a border by the needle's girth (bmom-funstuff, 9 December 2012; a rule of thumb)."""
    return needle_mm * math.pi * stitches * rows * factor / 1000


def edging_round(side: int, corners: int = 4, extra: int = 2) -> int:
    """Return the stitches of a crocheted round with three in each outer corner (Sheep to Shawl).

    >>> edging_round(40)
    168
    """
    return side * corners + corners * extra


def seamed_width(stitches: int, per_10cm: float, seam_stitches: int = 1) -> float:
    """Return the width in cm once each edge has gone into a seam.

    >>> seamed_width(102, 20)
    50.0
    """
    return (stitches - 2 * seam_stitches) * 10 / per_10cm


def picked_up(rows: float, stitches_per_10cm: float, rows_per_10cm: float) -> float:
    """Return the stitches to pick up along row ends at the band's gauge (Kelbourne Woolens, 2015).

    >>> picked_up(120, 16, 24)
    80.0
    """
    return rows * stitches_per_10cm / rows_per_10cm


def neck_drop(sleeve_top: float) -> float:
    """Return how far a raglan's back neck lies below the shoulder: half the sleeve's top (TenDyke, 2013/2015)."""
    return sleeve_top / 2


def rib_count(key: int, share: float = 0.9) -> int:
    """Return the stitches of a rib that draws in: nine tenths (an article on the percentage system).

    >>> rib_count(210)
    189
    """
    return round(key * share)


def shaping_rows(start: int, end: int, per_row: int = 2) -> int:
    """Return the shaping rows between two counts.

    >>> shaping_rows(38, 60)
    11
    """
    return abs(end - start) // per_row


def whole_rows(length: float, rows_per_unit: float) -> int:
    """Return the whole rows that a length holds.

    >>> whole_rows(15.5, 7)
    108
    """
    return math.floor(length * rows_per_unit)


def button_spacing(first: float, last: float, holes: int) -> float:
    """Return the distance between buttonholes that divide a band equally."""
    return (last - first) / (holes - 1)
