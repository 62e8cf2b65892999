"""A raglan's shape turned into counts: the nearest whole stitches and rows that hold every constraint of the
craft.

What always holds: back and front have one count; underarms are bound off alike; every raglan line has the same
rows; counts that meet are even alike; fronts mirror; tops sum to the neck. Within that the squares of the
misses, in mm, are least, and a harder rung of the ladder has to earn its keep.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.edging import edging_mm
from lastlook.knit.compose.craft.evenly import even
from lastlook.knit.compose.craft.ladder import Rung, Slope, slope
from lastlook.knit.compose.raglan.shape import CUFF_FREE_MM, RaglanShape

SEAM_STITCHES = 1
"""Each sewn edge takes one stitch: common practice, no source."""
BAND_STITCHES = 1
"""Picking up a band takes as much of a front's edge: common practice, no source."""
FRONT_KEEPS, WHOLE_FRONT_KEEPS = 2, 3
"""Stitches that a front keeps beside its neck at the top, in pieces and in one."""
LEAST_SLEEVE_TOP = 4
"""In one piece a row may take two stitches at each of a sleeve's lines and has to leave some between."""
MISS_MM = 10.0
"""A miss of a centimetre at neck, underarm or depth weighs one."""
RUNG_COST = {Rung.RIGHT_SIDE: 0.0, Rung.BOTH_SIDES: 0.8, Rung.DOUBLE: 6.0}
WIDER_FROM_MM = 12.0
"""An underarm this much wider than the rule's is told as a rung."""


@dataclass(frozen=True)
class RaglanCounts:
    """Every count of a raglan garment."""

    hem: int
    back: int
    back_neck: int
    underarm: int
    raglan_rows: int
    """After the two bind-off rows."""
    body_slope: Slope
    sleeve: int
    cuff: int
    sleeve_top: int
    sleeve_slope: Slope
    rib_rows: int
    side_rows: int
    cuff_rows: int
    sleeve_rows: int
    sleeve_free_rows: int
    front: int
    """Stitches of one front of a cardigan at the underarm; of the whole front of a pullover."""
    front_hem: int
    neck_center: int
    neck_decreases: int
    """At each neck edge."""
    neck_rows: int
    rungs: tuple[Rung, ...]

    @property
    def raglan_decreases(self) -> int:
        """Return the decreases at each raglan edge of back and fronts."""
        return self.body_slope.decreases


@dataclass(frozen=True)
class _Top:
    underarm: int
    rows: int
    back_neck: int
    sleeve_top: int
    body: Slope
    sleeve: Slope
    cost: float


def raglan_counts(shape: RaglanShape, asked: Asked) -> RaglanCounts | None:
    """Return the nearest counts; None where even the last rung does not reach."""
    g, r = asked.stitches_per_mm, asked.rows_per_mm
    seams = 2 * asked.seam_stitches
    back = asked.fabric_count(shape.bust / 2 * g + seams)
    hem = back if asked.texture else _edged(min(shape.hem, shape.bust * 1.25) / 2 * g + seams, asked)
    back += (back - hem) % 2
    sleeve, cuff = sleeve_and_cuff(shape.upper_sleeve * g + seams, _edged(shape.cuff * g + seams, asked), asked)
    top = _best_top(shape, asked, back, sleeve)
    if top is None:
        return None
    rib, side = two_lengths(edging_mm(asked, shape.rib), shape.side, r)
    cuff_rows, seam = two_lengths(edging_mm(asked, shape.cuff_rib), shape.sleeve_seam, r)
    free = even(min(CUFF_FREE_MM, (shape.sleeve_seam - shape.cuff_rib) / 4) * r)
    neck_rows = min(even(shape.neck_drop * r), top.rows - 2)
    front = _front(shape, asked, back, hem, top, neck_rows)
    if front is None:
        return None
    return RaglanCounts(
        hem,
        back,
        top.back_neck,
        top.underarm,
        top.rows,
        top.body,
        sleeve,
        cuff,
        top.sleeve_top,
        top.sleeve,
        rib,
        side,
        cuff_rows,
        seam,
        free,
        *front,
        _rungs(shape, asked, top),
    )


def _edged(target: float, asked: Asked) -> int:
    """Return the count of a piece's lower edge; in one piece the edging is fitted to the whole round instead."""
    if asked.construction != "in pieces":
        return even(target)
    return asked.edge_count(target)


def sleeve_and_cuff(sleeve_sts: float, cuff: int, asked: Asked) -> tuple[int, int]:
    """Return a sleeve and its cuff, even or odd alike, the cuff never the wider."""
    sleeve = even(sleeve_sts)
    if asked.texture is None:
        return sleeve, min(cuff, sleeve - (sleeve - cuff) % 2)
    while cuff > sleeve and cuff > asked.texture.multiple + asked.texture.extra + 2:
        cuff -= asked.texture.multiple
    return max(cuff, sleeve + (sleeve - cuff) % 2), cuff


def two_lengths(first_mm: float, whole_mm: float, rows_per_mm: float) -> tuple[int, int]:
    """Return even rows of the edging and of the whole, edging included."""
    first = max(2, even(first_mm * rows_per_mm))
    return first, max(first + 2, even(whole_mm * rows_per_mm))


def _best_top(shape: RaglanShape, asked: Asked, back: int, sleeve: int) -> _Top | None:
    """Search underarm, depth and tops together; widen and deepen further only if nothing holds."""
    for reach in (1, 3, 6):
        tops = list(_tops(shape, asked, back, sleeve, reach))
        if tops:
            return min(tops, key=lambda top: top.cost)
    return None


def _tops(shape: RaglanShape, asked: Asked, back: int, sleeve: int, reach: int) -> Iterator[_Top]:
    g, r = asked.stitches_per_mm, asked.rows_per_mm
    least = max(2, round(shape.underarm * g))
    necks = _near(shape.back_neck * g, back)
    sleeve_tops = _near(shape.sleeve_top * g, sleeve)
    most = 3
    if asked.construction != "in pieces":
        sleeve_tops, most = tuple(top for top in sleeve_tops if top >= LEAST_SLEEVE_TOP), 2
    deepest = even(shape.depth * r) + 4 * reach * (1 if reach == 1 else 2)
    for underarm in range(least, least + max(3, round(15 * reach * g))):
        for rows in range(max(8, even(shape.depth * r) - 2), deepest + 1, 2):
            body = _cheapest(back - 2 * underarm, most * (rows // 2), rows, necks, shape.back_neck, g)
            arm = _cheapest(sleeve - 2 * underarm, most * (rows // 2), rows, sleeve_tops, shape.sleeve_top, g)
            if body is None or arm is None:
                continue
            miss = ((underarm / g - shape.underarm) / MISS_MM) ** 2
            miss += ((rows / r - shape.depth) / MISS_MM) ** 2
            body_slope, arm_slope = slope(body[2], rows), slope(arm[2], rows)
            if body_slope and arm_slope:
                cost = miss + body[0] + arm[0]
                yield _Top(underarm, rows, body[1], arm[1], body_slope, arm_slope, cost)


def _near(target: float, like: int) -> tuple[int, ...]:
    """Return the counts of one parity next to a target, at least 2."""
    base = int(target) - (int(target) - like) % 2
    return tuple(count for count in (base - 2, base, base + 2, base + 4) if count >= 2)


def _cheapest(
    inside: int, most: int, rows: int, tops: tuple[int, ...], target_mm: float, g: float
) -> tuple[float, int, int] | None:
    """Return cost, top and decreases each side of the best top for what the underarms leave.

    At most `most` may be taken off at each edge.
    """
    best: tuple[float, int, int] | None = None
    for top in tops:
        decreases, odd = divmod(inside - top, 2)
        if odd or decreases < 0 or decreases > most:
            continue
        cost = ((top / g - target_mm) / MISS_MM) ** 2 + _rung_cost(decreases, rows)
        if best is None or cost < best[0]:
            best = (cost, top, decreases)
    return best


def _rung_cost(decreases: int, rows: int) -> float:
    pairs = rows // 2
    if decreases <= pairs:
        return RUNG_COST[Rung.RIGHT_SIDE]
    if decreases <= 2 * pairs:
        return RUNG_COST[Rung.BOTH_SIDES] + (decreases - pairs) / pairs
    return RUNG_COST[Rung.DOUBLE] + (decreases - 2 * pairs) / pairs


def _front(
    shape: RaglanShape, asked: Asked, back: int, hem: int, top: _Top, neck_rows: int
) -> tuple[int, int, int, int, int] | None:
    """Return front stitches, their hem, neck center, decreases at each neck edge, and neck rows.

    The front takes the back's raglan line, and every side of its neck ends on two stitches, in one piece on three.
    None where the neck has not so many.
    """
    keeps = FRONT_KEEPS if asked.construction == "in pieces" else WHOLE_FRONT_KEEPS
    if asked.opening == "pullover":
        inside = top.back_neck - 2 * keeps
        if inside < 0:
            return None
        center, decreases = _neck(inside, neck_rows, 2, asked.neck)
        return back, hem, center, decreases, neck_rows
    g = asked.stitches_per_mm
    wanted = ((shape.bust - shape.band) * g + 4 * asked.seam_stitches + 2 * BAND_STITCHES - back) / 2
    front = max(round(wanted), top.underarm + top.body.decreases + keeps + 2)
    side = (hem - back) // 2
    if asked.texture or (asked.edging.repeat > 2 and asked.construction == "in pieces"):
        least = top.underarm + top.body.decreases + keeps
        front = asked.edge_count(front + side) - side
        front += asked.step if front < least else 0
    inside = front - top.underarm - top.body.decreases - keeps
    center, decreases = _neck(inside, neck_rows, 1, asked.neck)
    return front, front + side, center, decreases, neck_rows


def _neck(inside: int, neck_rows: int, sides: int, neck: str) -> tuple[int, int]:
    """Return what is bound off or held at the center, and the decreases at each neck edge."""
    most = max(0, neck_rows // 2 - 1)
    if neck == "v":
        decreases = min(inside // sides, most)
    else:
        decreases = min(inside // (2 * sides), most)
    return inside - sides * decreases, decreases


def _rungs(shape: RaglanShape, asked: Asked, top: _Top) -> tuple[Rung, ...]:
    found = {max(top.body.rung, top.sleeve.rung)}
    if top.underarm / asked.stitches_per_mm > shape.underarm + WIDER_FROM_MM:
        found.add(Rung.WIDER_UNDERARM)
    if top.rows / asked.rows_per_mm > shape.depth + WIDER_FROM_MM:
        found.add(Rung.DEEPER)
    return tuple(sorted(found))
