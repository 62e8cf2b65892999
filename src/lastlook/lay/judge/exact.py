"""Whole-number geometry for the judge: do two outlines overlap, how far are they apart, is a point inside?

Corners are rounded to a *unit* of 0.0001 mm; within 90 m every product of two differences then fits a 64-bit
whole number, so no answer about crossing or inside is ever rounded.

Outlines that only touch must pass, and those that overlap by more than 0.01 mm must not. So each outline is
first drawn in by 0.002 mm; no corner moves by more than 0.004 mm. Why this is enough: a point deeper than that
inside an outline has the same winding number about the drawn-in outline (the straight move from one to the other
never passes over it). Were it inside both drawn-in outlines, which don't meet, then on the way from it to
infinity the first outline met would be met inside the other one; but a corner of each is tested, and an outline
that meets nothing lies wholly on one side.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

UNIT_MM = 0.0001
DRAWN_IN_MM = 0.002
FARTHEST_MM = 90_000.0
_CHUNK = 1_000_000

Corners = NDArray[np.float64]
Whole = NDArray[np.int64]


def drawn_in(corners: Corners, by_mm: float = DRAWN_IN_MM) -> Whole:
    """Return a counter-clockwise outline drawn in, in units; no corner moves more than twice `by_mm`."""
    ways = np.roll(corners, -1, 0) - corners
    ways = ways / np.maximum(np.hypot(ways[:, 0], ways[:, 1]), 1e-12)[:, None]
    inward = np.stack([-ways[:, 1], ways[:, 0]], 1)
    before = np.roll(inward, 1, 0)
    both = before + inward
    move = both / np.maximum(1 + np.sum(before * inward, 1), 0.05)[:, None]
    far = np.maximum(np.hypot(move[:, 0], move[:, 1]), 1e-12)
    move *= (np.minimum(far, 2.0) / far * by_mm)[:, None]
    whole: Whole = np.rint((corners + move) / UNIT_MM).astype(np.int64)
    return whole


def meet(p: Whole, q: Whole) -> bool:
    """Whether two closed outlines cross, touch, or one lies inside the other."""
    if np.any(p.max(0) < q.min(0)) or np.any(q.max(0) < p.min(0)):
        return False
    return lines_meet(p, q) or is_inside(q, p[0]) or is_inside(p, q[0])


def lines_meet(p: Whole, q: Whole) -> bool:
    """Whether any edge of one closed outline meets any edge of the other, end points included."""
    a, b = _near_edges(p, q)
    c, d = _near_edges(q, p)
    if not len(a) or not len(c):
        return False
    step = max(1, _CHUNK // len(c))
    return any(_any_meets(a[i : i + step], b[i : i + step], c, d) for i in range(0, len(a), step))


def _near_edges(p: Whole, q: Whole) -> tuple[Whole, Whole]:
    """Return the starts and ends of those edges of p whose box meets the box of q."""
    ends = np.roll(p, -1, 0)
    low, high = np.minimum(p, ends), np.maximum(p, ends)
    near = np.all((low <= q.max(0)) & (high >= q.min(0)), 1)
    return p[near], ends[near]


def _any_meets(a: Whole, b: Whole, c: Whole, d: Whole) -> bool:
    a, b = a[:, None], b[:, None]
    boxes = np.all((np.minimum(a, b) <= np.maximum(c, d)) & (np.maximum(a, b) >= np.minimum(c, d)), 2)
    if not boxes.any():
        return False
    across = (_side(a, b, c) * _side(a, b, d) <= 0) & (_side(c, d, a) * _side(c, d, b) <= 0)
    return bool(np.any(boxes & across))


def _side(a: Whole, b: Whole, c: Whole) -> NDArray[np.int8]:
    """Return on which side of the line a-b the point c lies: 1 left, -1 right, 0 on it."""
    turn = (b[..., 0] - a[..., 0]) * (c[..., 1] - a[..., 1]) - (b[..., 1] - a[..., 1]) * (c[..., 0] - a[..., 0])
    side: NDArray[np.int8] = np.sign(turn).astype(np.int8)
    return side


def is_inside(p: Whole, spot: Whole) -> bool:
    """Whether a closed outline winds round a point that is not on it."""
    a, b = p, np.roll(p, -1, 0)
    side = _side(a, b, spot[None, :])
    up = (a[:, 1] <= spot[1]) & (b[:, 1] > spot[1]) & (side > 0)
    down = (a[:, 1] > spot[1]) & (b[:, 1] <= spot[1]) & (side < 0)
    return bool(up.sum() - down.sum())


def apart_mm(p: Corners, q: Corners) -> float:
    """Return how far two outlines are apart that don't meet, in mm, right to a millionth of it."""
    return min(_corners_to_edges(p, q), _corners_to_edges(q, p))


def _corners_to_edges(p: Corners, q: Corners) -> float:
    a, way = q, np.roll(q, -1, 0) - q
    square = np.maximum(np.sum(way * way, 1), 1e-30)
    best = np.inf
    step = max(1, _CHUNK // len(q))
    for start in range(0, len(p), step):
        off = p[start : start + step, None] - a
        share = np.clip(np.sum(off * way, 2) / square, 0, 1)
        gap = off - share[..., None] * way
        best = min(best, float(np.sqrt(np.sum(gap * gap, 2).min())))
    return best


def area_mm2(corners: Corners) -> float:
    """Return the signed area of a closed outline."""
    a = corners - corners[0]
    b = np.roll(a, -1, 0)
    return float(np.sum(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]) / 2)
