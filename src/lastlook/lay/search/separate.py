"""Push pieces apart off the lattice, until nothing overlaps at all.

Every two convex parts that come near are held apart by one edge of their no-fit shape, the one that is least
overstepped; so are pieces and the cloth's edge. That is a set of linear wishes; the sum of the squares of those
that are not met is made least by Newton steps over the unmet ones, then the edges are chosen again (after Li and
Milenkovic 1995, and Imamichi et al. 2009). Wishes that can be met exactly, such as three pieces that fill
the width to the last hair, are met to far below a thousandth of a millimetre.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from lastlook.lay.clash import Board
from lastlook.lay.clash.board import Planes

Floats = NDArray[np.float64]
NEAR_MM = 40.0
CLEAR_MM = 2e-4
"""What may be left of an overlap: a tenth of what the judge's outlines are drawn in by."""
ROUNDS = 14


@dataclass(frozen=True)
class Wishes:
    """Rows that should not be positive: constant - (row · unknowns)."""

    rows: Floats
    least: Floats
    pairs: NDArray[np.int64]
    """Which two jobs a row is about; the same twice for the edge."""


@dataclass(frozen=True)
class Apart:
    """Where the jobs were pushed, what is left of the deepest overlap, and which jobs it is between."""

    spots: Floats
    left_mm: float
    unmet: NDArray[np.int64]


class Separator:
    """Pushes the jobs of one board apart; which coordinates move together is worked out once."""

    def __init__(self, board: Board, variants: list[int], length_mm: float) -> None:
        self.board = board
        self.variants = variants
        self.low = np.array([board.variants[one].low for one in variants])
        self.high = np.array([board.variants[one].high for one in variants])
        reach = np.array([board.variants[one].shape.high[0] for one in variants])
        self.high[:, 0] = np.minimum(self.high[:, 0], length_mm - reach)
        self.unknown = self._unknowns()
        self.many = int(self.unknown.max()) + 1

    def _unknowns(self) -> NDArray[np.int64]:
        """Return the number of the unknown behind each coordinate; matched pieces share theirs, pinned have none."""
        out = np.zeros((len(self.variants), 2), np.int64)
        shared: dict[tuple[str, int], int] = {}
        count = 0
        for job, number in enumerate(self.variants):
            variant, group = self.board.variants[number], self.board.jobs[job].group
            for k in (0, 1):
                if variant.pinned and variant.band.axis == k:
                    out[job, k] = -1
                elif group and self.board.phases[k] > 1:
                    if variant.layer == "both" and variant.band.axis == k:
                        out[job, k] = -1
                        shared[(group, k)] = -1
                        continue
                    if (group, k) not in shared:
                        shared[(group, k)] = count
                        count += 1
                    out[job, k] = shared[(group, k)]
                else:
                    out[job, k] = count
                    count += 1
        return out

    def apart(self, spots: Floats) -> Apart:
        """Return the jobs pushed apart as far as it goes, nearest to where they lie."""
        spots = spots.copy()
        best = Apart(spots, np.inf, np.zeros((0, 2), np.int64))
        stuck = 0
        for _ in range(ROUNDS):
            wishes = self._wishes(spots)
            unmet = wishes.least > CLEAR_MM
            worst = float(wishes.least.max(initial=0.0))
            if worst < best.left_mm * 0.9:
                stuck = 0
            else:
                stuck += 1
            if worst < best.left_mm:
                best = Apart(spots.copy(), worst, wishes.pairs[unmet])
            if worst <= CLEAR_MM or stuck > 3:
                break
            spots = spots + self._step(wishes)[self._index()] * (self.unknown >= 0)
        return best

    def _index(self) -> NDArray[np.int64]:
        return np.maximum(self.unknown, 0)

    def _step(self, wishes: Wishes) -> Floats:
        """Return how to move the unknowns so that the wishes are met, or least unmet in squares."""
        move = np.zeros(max(self.many, 1))
        damp = 1e-7
        last = np.inf
        for _ in range(25):
            left = wishes.least - wishes.rows @ move
            unmet = left > 0
            cost = float(np.sum(left[unmet] ** 2))
            if cost < 1e-12 or cost > last * 0.999:
                break
            last = cost
            rows = wishes.rows[unmet]
            square = rows.T @ rows
            square[np.diag_indices_from(square)] += damp
            move = move + np.linalg.solve(square, rows.T @ (left[unmet] + 1e-6))
        return move

    def _wishes(self, spots: Floats) -> Wishes:
        rows: list[Floats] = []
        least: list[Floats] = []
        pairs: list[tuple[int, int]] = []
        for job in range(len(self.variants)):
            self._edge_wishes(job, spots, rows, least, pairs)
            for other in range(job):
                planes = self.board.planes(self.variants[other], self.variants[job])
                apart = spots[job] - spots[other]
                if np.any(apart < planes.low.min(0) - NEAR_MM) or np.any(apart > planes.high.max(0) + NEAR_MM):
                    continue
                for normal, short in _nearest_edges(planes, apart):
                    rows.append(self._row(((job, normal), (other, -normal))))
                    least.append(short)
                    pairs.append((other, job))
        if not rows:
            none = np.zeros((0, max(self.many, 1)))
            return Wishes(none, np.zeros(0), np.zeros((0, 2), np.int64))
        return Wishes(np.array(rows), np.array(least), np.array(pairs))

    def _edge_wishes(
        self, job: int, spots: Floats, rows: list[Floats], least: list[Floats], pairs: list[tuple[int, int]]
    ) -> None:
        for k in (0, 1):
            way = np.eye(2)[k]
            rows += [self._row(((job, way),)), self._row(((job, -way),))]
            least += [self.low[job, k] - spots[job, k], spots[job, k] - self.high[job, k]]
            pairs += [(job, job), (job, job)]
        planes = self.board.fixed_planes(self.variants[job])
        if len(planes.normals):
            for normal, short in _nearest_edges(planes, spots[job]):
                rows.append(self._row(((job, normal),)))
                least.append(short)
                pairs.append((job, job))

    def _row(self, terms: tuple[tuple[int, Floats], ...]) -> Floats:
        row = np.zeros(max(self.many, 1))
        for job, way in terms:
            for k in (0, 1):
                if self.unknown[job, k] >= 0:
                    row[self.unknown[job, k]] += way[k]
        return row


def _nearest_edges(planes: Planes, spot: Floats) -> list[tuple[Floats, Floats]]:
    """Return, for each convex shape near a spot, the edge it is least inside of: normal, and how far inside."""
    near = np.all((spot > planes.low - NEAR_MM) & (spot < planes.high + NEAR_MM), 1)
    if not near.any():
        return []
    normals, offsets = planes.normals[near], planes.offsets[near]
    short = offsets - normals @ spot
    edge = np.argmin(short, 1)
    shapes = np.arange(len(edge))
    return list(zip(normals[shapes, edge], short[shapes, edge], strict=True))
