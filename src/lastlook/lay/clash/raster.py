"""Lattices of yes and no: which points lie inside convex shapes, and how deep."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from lastlook import geometry
from lastlook.geometry import Corners

Step = tuple[float, float]
Inside = NDArray[np.bool_]
_TOUCH = 1e-7
"""Points this near to an edge, in steps, count as on it, that is as free."""


def inside(shapes: list[Corners], first: Step, step: Step, many: tuple[int, int], less_mm: float) -> Inside:
    """Return which lattice points lie inside any of the convex shapes, each drawn in by `less_mm`.

    The lattice has `many` points from `first`, `step` apart; columns (x) come first.
    """
    marks = np.zeros((many[0] + 1, many[1]), np.int16)
    ys: NDArray[np.float64] = first[1] + step[1] * np.arange(many[1], dtype=np.float64)
    for shape in shapes:
        normals, offsets = geometry.half_planes(shape)
        left, right = _span(normals, offsets - less_mm, ys)
        start = np.floor((left - first[0]) / step[0] + _TOUCH) + 1
        stop = np.ceil((right - first[0]) / step[0] - _TOUCH)
        start = np.clip(start, 0, many[0]).astype(np.int64)
        stop = np.clip(stop, 0, many[0]).astype(np.int64)
        rows = np.nonzero(stop > start)[0]
        marks[start[rows], rows] += 1
        marks[stop[rows], rows] -= 1
    return np.cumsum(marks[:-1], 0) > 0


def _span(
    normals: Corners, offsets: NDArray[np.float64], ys: NDArray[np.float64]
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return from where to where each row runs inside the half-planes; left beyond right where it doesn't."""
    left, right = np.full(len(ys), -1e9), np.full(len(ys), 1e9)
    flat = np.abs(normals[:, 0]) < 1e-12
    for (nx, ny), offset, level in zip(normals, offsets, flat, strict=True):
        if level:
            outside = ny * ys >= offset - _TOUCH
            right[outside] = -1e9
            continue
        cut = (offset - ny * ys) / nx
        if nx > 0:
            np.minimum(right, cut, out=right)
        else:
            np.maximum(left, cut, out=left)
    return left, right


def depth(within: Inside, step: Step) -> NDArray[np.float32]:
    """Return how far each inside point is from the nearest outside one; everything round the lattice is outside.

    The exact distance transform: first along the columns, then the least over all columns.
    """
    padded = np.zeros((within.shape[0] + 2, within.shape[1] + 2), bool)
    padded[1:-1, 1:-1] = within
    index = np.arange(padded.shape[1], dtype=np.float32)
    last = np.maximum.accumulate(np.where(padded, -1, index), 1)
    following = np.minimum.accumulate(np.where(padded, np.float32(1e6), index)[:, ::-1], 1)[:, ::-1]
    along = np.where(padded, np.minimum(index - last, following - index), 0).astype(np.float32) * step[1]
    square = along * along
    out = square.copy()
    away, offset = 1, step[0] ** 2
    while away < padded.shape[0] and offset < float(out.max()):
        np.minimum(out[away:], square[:-away] + np.float32(offset), out=out[away:])
        np.minimum(out[:-away], square[away:] + np.float32(offset), out=out[:-away])
        away += 1
        offset = (away * step[0]) ** 2
    result: NDArray[np.float32] = np.sqrt(out[1:-1, 1:-1])
    return result
