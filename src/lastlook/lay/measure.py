"""What a lay uses, and what it leaves: lengths, shares, and the rectangles that stay whole."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from lastlook import geometry
from lastlook.geometry import Corners
from lastlook.lay.cloth import Outline
from lastlook.lay.judge.laid import copies
from lastlook.lay.placement import Lay, LeftOver, Placement
from lastlook.lay.wanted import Problem

Cells = NDArray[np.bool_]
SMALLEST_LEFT_MM = 60.0
"""A strip narrower than this is told as scraps, not as a left-over."""
CELL_MM = 5.0


def laid_outlines(problem: Problem, placements: Sequence[Placement]) -> list[Outline]:
    """Return every outline that is cut, as it lies on the open cloth, what is wasted with it included."""
    out: list[Outline] = []
    for one in placements:
        piece = problem.piece(one.id)
        if piece is not None:
            for copy in copies(piece, one, problem.cloth, problem.cloth.length_mm or 0.0):
                out += [_plain(shape) for shape in (*copy.outlines, *copy.waste)]
    return out


def _plain(corners: Corners) -> Outline:
    return tuple((float(x), float(y)) for x, y in corners)


def used_length_mm(problem: Problem, placements: Sequence[Placement]) -> float:
    """Return how far along the cloth the lay reaches."""
    return max((x for one in laid_outlines(problem, placements) for x, _ in one), default=0.0)


def lay_of(problem: Problem, placements: Sequence[Placement], seed: int, passes: int) -> Lay:
    """Return placements as a lay, with what they use; whether it fits is for the judge to say."""
    shapes = laid_outlines(problem, placements)
    length = max((x for one in shapes for x, _ in one), default=0.0)
    cloth = problem.cloth
    ground = cloth.width_mm * length
    if cloth.outline is not None:
        ground = geometry.signed_area_mm2(cloth.outline)
    elif cloth.length_mm is not None:
        ground = cloth.width_mm * cloth.length_mm
    area = sum(abs(geometry.signed_area_mm2(one)) for one in shapes)
    share = area / ground if ground else 0.0
    return Lay(False, False, tuple(placements), length, share, (), (), seed, passes)


def left_over(problem: Problem, placements: Sequence[Placement], most: int = 3) -> tuple[LeftOver, ...]:
    """Return the largest rectangles along the grain that the lay leaves whole, the largest first.

    They are found on a lattice of 5 mm cells, so each is at most a cell short on every side; on an endless cloth
    what lies beyond the used length is not counted.
    """
    cloth = problem.cloth
    length = cloth.length_mm if cloth.length_mm is not None else used_length_mm(problem, placements)
    if length <= 0:
        return ()
    cell = max(CELL_MM, length / 600, cloth.width_mm / 600)
    free = _free_cells(problem, placements, length, cell)
    out = []
    for _ in range(most):
        found = _largest(free)
        if found is None:
            break
        x0, x1, y0, y1 = found
        if min(x1 - x0, y1 - y0) * cell < SMALLEST_LEFT_MM:
            break
        free[x0:x1, y0:y1] = False
        low = cloth.selvedge_mm + y0 * cell
        out.append(LeftOver((y1 - y0) * cell, (x1 - x0) * cell, x0 * cell, low))
    return tuple(out)


def _free_cells(problem: Problem, placements: Sequence[Placement], length: float, cell: float) -> Cells:
    """Return which cells of the usable cloth nothing touches."""
    cloth = problem.cloth
    wide = cloth.width_mm - 2 * cloth.selvedge_mm
    free = np.ones((int(length / cell + 1e-9), int(wide / cell + 1e-9)), bool)
    for one in (*laid_outlines(problem, placements), *cloth.flaws):
        _touch(free, np.array(one) - (0.0, cloth.selvedge_mm), cell)
    if cloth.outline is not None:
        outside = ~_covered(free.shape, np.array(cloth.outline) - (0.0, cloth.selvedge_mm), cell)
        free &= ~outside
        _touch_edges(free, np.array(cloth.outline) - (0.0, cloth.selvedge_mm), cell)
    return free


def _touch(free: Cells, corners: Corners, cell: float) -> None:
    """Mark the cells that an outline covers or crosses."""
    free &= ~_covered(free.shape, corners, cell)
    _touch_edges(free, corners, cell)


def _covered(size: tuple[int, ...], corners: Corners, cell: float) -> Cells:
    """Return the cells whose middle lies inside an outline, by counting crossings along each row."""
    spots_x = (np.arange(size[0]) + 0.5) * cell
    spots_y = (np.arange(size[1]) + 0.5) * cell
    inside = np.zeros(size, bool)
    for a, b in zip(corners, np.roll(corners, -1, 0), strict=True):
        rows = np.nonzero((spots_y >= min(a[1], b[1])) & (spots_y < max(a[1], b[1])))[0]
        if len(rows):
            cut = a[0] + (b[0] - a[0]) * (spots_y[rows] - a[1]) / (b[1] - a[1])
            inside[:, rows] ^= spots_x[:, None] > cut[None, :]
    return inside


def _touch_edges(free: Cells, corners: Corners, cell: float) -> None:
    """Mark the cells that the edges run through, stepping along each by less than a quarter of a cell."""
    for a, b in zip(corners, np.roll(corners, -1, 0), strict=True):
        steps = int(np.hypot(*(b - a)) / cell * 4) + 2
        spots = (a + (b - a) * np.linspace(0, 1, steps)[:, None]) / cell
        off_line = np.any(np.abs(spots - np.rint(spots)) > 1e-6, 1)
        cells = np.floor(spots).astype(int)
        good = np.all((cells >= 0) & (cells < free.shape), 1) & off_line
        free[cells[good, 0], cells[good, 1]] = False


def _largest(free: Cells) -> tuple[int, int, int, int] | None:
    """Return the largest rectangle of free cells, by the heights of free runs that end in each column."""
    best, found = 0, None
    heights = np.zeros(free.shape[1], int)
    for x in range(free.shape[0]):
        heights = np.where(free[x], heights + 1, 0)
        stack: list[tuple[int, int]] = []
        for y, height in enumerate([*heights.tolist(), 0]):
            start = y
            while stack and stack[-1][1] >= height:
                start, tall = stack.pop()
                if tall * (y - start) > best:
                    best, found = tall * (y - start), (x + 1 - tall, x + 1, start, y)
            stack.append((start, height))
    return found
