"""Push pieces apart off the lattice, until nothing overlaps at all.

Every two convex parts that come near are held apart by one edge of their no-fit shape, the one that is least
overstepped; so are pieces and the cloth's edge. That is a set of linear wishes; the sum of the squares of those
that are not met is made least by Newton steps over the unmet ones, then the edges are chosen again (after Li and
Milenkovic 1995, and Imamichi et al. 2009). Wishes that can be met exactly, such as three pieces that fill
the width to the last hair, are met to far below a thousandth of a millimetre.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from lastlook.lay.clash import Board
from lastlook.lay.clash.board import Planes

Floats = NDArray[np.float64]
NEAR_MM = 40.0
REACH_MM = 120.0
"""Pairs farther apart than twice this are not looked at; should they meet all the same, the judge sees it."""
CLEAR_MM = 2e-4
"""What may be left of an overlap: a tenth of what the judge's outlines are drawn in by."""
ROUNDS = 14
MANY_UNKNOWNS = 80
CG_STEPS = 60
NEWTON_STEPS = 25
DAMP = 1e-7
"""Keeps equations solvable where something may move freely; it costs a ten-millionth of the move."""
BEYOND = 1e18
"""The offset of an edge that is none."""


@dataclass(frozen=True)
class Wishes:
    """What should not be positive: `least` less the sum of at most four unknowns, each by its factor."""

    unknowns: NDArray[np.int64]
    factors: Floats
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

    def __init__(
        self, board: Board, variants: list[int], length_mm: float, spots: Floats, jobs: list[int] | None = None
    ) -> None:
        self.board = board
        self.groups = [board.jobs[job].group for job in (range(len(variants)) if jobs is None else jobs)]
        self.variants = variants
        self.low = np.array([board.variants[one].low for one in variants])
        self.high = np.array([board.variants[one].high for one in variants])
        reach = np.array([board.variants[one].shape.high[0] for one in variants])
        self.high[:, 0] = np.minimum(self.high[:, 0], length_mm - reach)
        unknown = self._unknowns()
        self.many = max(int(unknown.max()) + 1, 1)
        self.unknown = np.where(unknown < 0, self.many, unknown)
        planes, self.before, self.after, self.fixed = _gathered(board, variants, spots)
        self.normals, self.offsets = _padded(planes)
        none = np.zeros((0, 2))
        self.box_low = np.concatenate([none, *(one.low for one in planes)]) - NEAR_MM
        self.box_high = np.concatenate([none, *(one.high for one in planes)]) + NEAR_MM

    def _unknowns(self) -> NDArray[np.int64]:
        """Return the number of the unknown behind each coordinate; matched pieces share theirs, pinned have none."""
        out = np.zeros((len(self.variants), 2), np.int64)
        shared: dict[tuple[str, int], int] = {}
        count = 0
        for job, number in enumerate(self.variants):
            variant, group = self.board.variants[number], self.groups[job]
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
            spots = spots + self._step(wishes)[self.unknown]
        return best

    def _step(self, wishes: Wishes) -> Floats:
        """Return how to move the unknowns so that the wishes are met, or least unmet in squares."""
        move = np.zeros(self.many + 1)
        left = wishes.least
        cost = _cost(left)
        for _ in range(NEWTON_STEPS):
            if cost < 1e-12:
                break
            way = self._way(wishes, left)
            share = 1.0
            while share > 0.05:
                further = move + share * way
                after = wishes.least - np.sum(wishes.factors * further[wishes.unknowns], 1)
                if _cost(after) < cost * (1 - 1e-4 * share):
                    break
                share /= 2
            else:
                break
            move, left, cost = further, after, _cost(after)
        return move

    def _way(self, wishes: Wishes, left: Floats) -> Floats:
        """Return the Newton step that meets the wishes that are unmet now, as if no others were there."""
        unmet = left > 0
        if self.many > MANY_UNKNOWNS:
            return _approached(wishes.unknowns[unmet], wishes.factors[unmet], left[unmet] + 1e-6, self.many + 1)
        square, wanted = self._normal(wishes, unmet, left)
        square[np.diag_indices_from(square)] += DAMP
        return np.append(_solved(square, wanted), 0.0)

    def _normal(self, wishes: Wishes, unmet: NDArray[np.bool_], left: Floats) -> tuple[Floats, Floats]:
        """Return the normal equations of the unmet wishes, summed entry by entry: rows have four entries at most."""
        unknowns, factors = wishes.unknowns[unmet], wishes.factors[unmet]
        size = self.many + 1
        spots = unknowns[:, :, None] * size + unknowns[:, None, :]
        products = factors[:, :, None] * factors[:, None, :]
        square: NDArray[Any] = np.bincount(spots.ravel(), products.ravel(), size * size).reshape(size, size)
        right = (left[unmet] + 1e-6)[:, None] * factors
        wanted: NDArray[Any] = np.bincount(unknowns.ravel(), right.ravel(), size)
        return square[:-1, :-1].copy(), wanted[:-1]

    def _wishes(self, spots: Floats) -> Wishes:
        """Return every wish that is near to being unmet, each convex shape by the edge it is least inside of."""
        apart = spots[self.after] - np.where(self.fixed[:, None], 0.0, spots[self.before])
        near = np.flatnonzero(np.all((apart > self.box_low) & (apart < self.box_high), 1))
        short = self.offsets[near] - np.einsum("sek,sk->se", self.normals[near], apart[near])
        edge = np.argmin(short, 1)
        normal = self.normals[near, edge]
        many = len(self.variants)
        least = [short[np.arange(len(near)), edge]]
        jobs = np.arange(many)
        least += [self.low[:, 0] - spots[:, 0], spots[:, 0] - self.high[:, 0]]
        least += [self.low[:, 1] - spots[:, 1], spots[:, 1] - self.high[:, 1]]
        own = np.stack([jobs, jobs], 1)
        pairs = np.concatenate([np.stack([self.before[near], self.after[near]], 1), own, own, own, own])
        total = len(near) + 4 * many
        unknowns = np.full((total, 4), self.many)
        factors = np.zeros((total, 4))
        unknowns[: len(near), :2] = self.unknown[self.after[near]]
        unknowns[: len(near), 2:] = self.unknown[self.before[near]]
        factors[: len(near), :2] = normal
        factors[: len(near), 2:] = np.where(self.fixed[near][:, None], 0.0, -normal)
        for k in (0, 1):
            start = len(near) + 2 * k * many
            unknowns[start : start + 2 * many, 0] = np.tile(self.unknown[:, k], 2)
            factors[start : start + many, 0], factors[start + many : start + 2 * many, 0] = 1.0, -1.0
        factors[unknowns == self.many] = 0.0
        return Wishes(unknowns, factors, np.concatenate(least), pairs)


def _cost(left: Floats) -> float:
    unmet = np.maximum(left, 0.0)
    return float(np.sum(unmet * unmet))


def _solved(square: Floats, wanted: Floats) -> Floats:
    """Return the solution of symmetric positive equations, by elimination.

    Written out rather than handed to the library's solver: that one starts threads, which on a busy machine wait for
    each other many times longer than the sum takes, and whose sums differ from machine to machine.
    """
    table = np.concatenate([square, wanted[:, None]], 1)
    many = len(wanted)
    for k in range(many):
        row = table[k, k + 1 :] / table[k, k]
        table[k + 1 :, k + 1 :] -= table[k + 1 :, k, None] * row
        table[k, k + 1 :] = row
    out: Floats = table[:, many].copy()
    for k in range(many - 1, 0, -1):
        out[:k] -= table[:k, k] * out[k]
    return out


def _approached(unknowns: NDArray[np.int64], factors: Floats, left: Floats, many: int) -> Floats:
    """Return nearly the solution of the normal equations of very many unknowns, by conjugate gradients."""

    def back(values: Floats) -> Floats:
        sums: NDArray[Any] = np.bincount(unknowns.ravel(), (factors * values[:, None]).ravel(), many)
        return sums

    out = np.zeros(many)
    rest = back(left)
    way, square = rest.copy(), float(np.sum(rest * rest))
    goal = square * 1e-12
    for _ in range(CG_STEPS):
        if square <= goal or square == 0:
            break
        pushed = back(np.sum(factors * way[unknowns], 1)) + DAMP * way
        far = square / float(np.sum(way * pushed))
        out += far * way
        rest = rest - far * pushed
        last, square = square, float(np.sum(rest * rest))
        way = rest + square / last * way
    return out


def _gathered(
    board: Board, variants: list[int], spots: Floats
) -> tuple[list[Planes], NDArray[np.int64], NDArray[np.int64], NDArray[np.bool_]]:
    """Return the half-planes of all pairs and edges, and for each convex shape the two jobs it is about."""
    near = _near_pairs(board, variants, spots)
    planes: list[Planes] = []
    before: list[int] = []
    after: list[int] = []
    fixed: list[bool] = []
    for job, number in enumerate(variants):
        own = board.fixed_planes(number)
        if len(own.normals):
            planes.append(own)
            before += [job] * len(own.normals)
            after += [job] * len(own.normals)
            fixed += [True] * len(own.normals)
        for other in np.flatnonzero(near[job, :job]).tolist():
            both = board.planes(variants[other], number)
            planes.append(both)
            before += [other] * len(both.normals)
            after += [job] * len(both.normals)
            fixed += [False] * len(both.normals)
    return planes, np.array(before, np.int64), np.array(after, np.int64), np.array(fixed, bool)


def _near_pairs(board: Board, variants: list[int], spots: Floats) -> NDArray[np.bool_]:
    """Return which pairs of jobs lie so near that they might be pushed into each other."""
    low = spots + np.array([board.variants[one].shape.low for one in variants]) - REACH_MM - board.cloth.gap_mm
    high = spots + np.array([board.variants[one].shape.high for one in variants]) + REACH_MM
    near: NDArray[np.bool_] = np.all((low[:, None] <= high[None]) & (high[:, None] >= low[None]), 2)
    return near


def _padded(planes: list[Planes]) -> tuple[Floats, Floats]:
    """Return the half-planes of many shapes in one block, as many edges as the most of them has."""
    most = max((one.offsets.shape[1] for one in planes), default=1)
    total = sum(len(one.offsets) for one in planes)
    normals, offsets = np.zeros((total, most, 2)), np.full((total, most), BEYOND)
    spot = 0
    for one in planes:
        many, edges = one.offsets.shape
        normals[spot : spot + many, :edges] = one.normals
        offsets[spot : spot + many, :edges] = one.offsets
        spot += many
    return normals, offsets
