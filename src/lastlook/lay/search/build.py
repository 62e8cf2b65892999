"""Build a lay up piece by piece, from one corner, keeping several half-built ones: those that waste least.

What tells a good half-built lay from a bad one is the cloth that is lost for good: for every piece that is still to
come, all its free places are known, and so is every spot that it could still cover. A spot that nothing can cover any
more is wasted; one that can only be covered in a few ways is in danger. (A beam search over what the dotted-board
model of Toledo et al. 2013 calls dots; the measure is ours.)
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from lastlook.lay.clash import Board, raster
from lastlook.lay.clash.board import Clear
from lastlook.lay.search.state import Place

Flags = NDArray[np.uint8]
Counts = NDArray[np.float64]
Lying = tuple[int, int, Place]
"""A job's kind, the variant it lies in, and its place."""
COARSE = 3
"""Spots are counted on squares of so many lattice steps."""
IN_DANGER = (2.0, 12.0)
"""A spot that can be covered in so many ways, of some ten thousand, counts half: from, to, by chance."""
LARGE_FIRST = (0.05, 0.35)
"""What a covered spot counts, so that large pieces tend to come first: from, to, by chance."""
EARLY = 0.35
"""How far ahead of the front a large piece may come before a small one, as a share of its size."""
SLACKS = (0.5, 0.75, 1.0)
ALIKE = 4
"""Lays whose jobs all lie within the same square of so many lattice steps count as one."""


@dataclass(frozen=True)
class Taste:
    """By what half-built lays are told apart, a little different each time."""

    breadth: int
    tries: int
    corner: int
    in_danger: float
    large_first: float
    slack: float
    """How much of the board's slack jobs may overlap."""
    spare: float
    """How much of the spare ground is left to be used, as a share."""
    along: float
    """How much of what isn't left is taken off along the cloth, as a share; the rest across it."""


def taste(breadth: int, tries: int, chance: random.Random) -> Taste:
    """Return a taste by chance."""
    low, high = IN_DANGER
    danger = low * (high / low) ** chance.random()
    large, slack = chance.uniform(*LARGE_FIRST), chance.choice(SLACKS)
    spare = chance.choice((1.0, chance.random(), chance.random()))
    return Taste(breadth, tries, chance.randrange(8), danger, large, slack, spare, chance.choice((0.0, 0.5, 0.5, 1.0)))


@dataclass(frozen=True, eq=False)
class Row:
    """One way that one kind of job may lie: where it is counted on the lattice of spots."""

    kind: int
    variant: int
    corner: tuple[int, int]
    """The lattice place of the near corner of its box when its own place is 0, 0."""
    size: tuple[int, int]
    spectrum: NDArray[np.complex128]


@dataclass(frozen=True, eq=False)
class Half:
    """A half-built lay: what lies, what may still come, and the free places of each row."""

    lying: tuple[Lying, ...]
    left: tuple[int, ...]
    rows: tuple[int, ...]
    free: Flags
    phase: tuple[tuple[str, Place], ...] = ()
    score: float = 0.0
    lost: int = 0
    """The size of the jobs that have no place any more, in lattice places."""


class Builder:
    """Builds lays on one board, up to one length."""

    def __init__(self, board: Board, columns: Callable[[int], int], length_mm: float) -> None:
        self.board = board
        self.length_mm = length_mm
        kinds: dict[tuple[str, tuple[int, ...], int], list[int]] = {}
        for job, one in enumerate(board.jobs):
            kinds.setdefault((one.wanted.id, board.of_job[job], one.part), []).append(job)
        self.kinds = tuple(tuple(jobs) for jobs in kinds.values())
        self.reach = {number: columns(number) for number in range(len(board.variants))}
        self.size = self._size()
        spots = (self.size[0] // COARSE, self.size[1] // COARSE)
        self.spots = spots
        self.areas = [0.0] * len(self.kinds)
        self.rows = tuple(self._rows())
        self.whole = self._start()
        self.total = self._reached(self.whole)

    def _size(self) -> tuple[int, int]:
        """Return a lattice that holds every place of every variant, of sizes that transform quickly."""
        most = [1, 1]
        for number, variant in enumerate(self.board.variants):
            ground = self.board.ground(number)
            reach = np.array([self.reach[number], ground.free.shape[1]])
            reach = reach + np.ceil(np.array(variant.shape.high) / self.board.step)
            far = (np.rint(np.array(ground.origin) / self.board.step) + reach).astype(int)
            most = [max(a, int(b)) for a, b in zip(most, far, strict=True)]
        return _smooth(most[0]), _smooth(most[1])

    def _rows(self) -> Iterator[Row]:
        for kind, jobs in enumerate(self.kinds):
            for number in self.board.of_job[jobs[0]]:
                yield self._row(kind, number)

    def _row(self, kind: int, number: int) -> Row:
        board, shape = self.board, self.board.variants[number].shape
        step = np.array(board.step)
        low = np.floor(np.array(shape.low) / step).astype(int)
        many = np.ceil(np.array(shape.high) / step).astype(int) - low + 1
        size = (int(many[0]), int(many[1]))
        first = (low + 0.5) * step
        within = raster.inside(list(shape.parts), (float(first[0]), float(first[1])), board.step, size, 0.0)
        corner = np.rint(np.array(board.ground(number).origin) / step).astype(int) + low
        spots = np.zeros(self.size)
        xs, ys = np.nonzero(within)
        spots[(xs + corner[0]) % self.size[0], (ys + corner[1]) % self.size[1]] = 1.0
        coarse = spots.reshape(self.spots[0], COARSE, self.spots[1], COARSE).mean((1, 3))
        self.areas[kind] = max(self.areas[kind], float(coarse.sum()))
        return Row(kind, number, (int(corner[0]), int(corner[1])), size, np.fft.rfft2(coarse))

    def _start(self) -> Half:
        free = np.zeros((len(self.rows), *self.size), np.uint8)
        for spot, row in enumerate(self.rows):
            ground = self.board.ground(row.variant).free[: self.reach[row.variant]]
            free[spot, : ground.shape[0], : ground.shape[1]] = ground == 0
        left = tuple(len(jobs) for jobs in self.kinds)
        return Half((), left, tuple(range(len(self.rows))), free)

    def _reached(self, half: Half) -> float:
        """Return how many spots can be covered at all."""
        return float(np.count_nonzero(self._ways(half) > 0.5))

    def _drawn_in(self, by: Taste, chance: random.Random) -> Half:
        """Return the empty cloth less some of its spare ground: what lies tight there shows its waste the sooner."""
        need = sum(area * left for area, left in zip(self.areas, self.whole.left, strict=True))
        spare = self.total / max(need, 1.0) - 1
        bands = {variant.band for variant in self.board.variants}
        if spare <= 0 or by.spare == 1.0 or len(bands) > 1:
            return self.whole
        band = bands.pop()
        share = (1 + spare * by.spare) / (1 + spare)
        free = self.whole.free.copy()
        for axis, power in ((0, by.along), (1, 1 - by.along)):
            step = self.board.step[axis]
            low, high = band.low[axis] / step, min(band.high[axis], math.inf if axis else self.length_mm) / step
            off = (high - low) * (1 - share**power)
            folded = band.fold_at is not None and band.axis == axis
            far = not band.fold_is_high if folded else chance.random() < 0.5
            self._bound(free, axis, (low, high - off) if far else (low + off, high))
        return Half((), self.whole.left, self.whole.rows, free)

    def _bound(self, free: Flags, axis: int, ends: tuple[float, float]) -> None:
        """Take away the places where a piece would reach beyond the ends, in lattice steps."""
        for spot, number in enumerate(self.whole.rows):
            row = self.rows[number]
            first = max(0, math.ceil(ends[0] - row.corner[axis] - 0.5))
            last = max(0, math.floor(ends[1] - row.corner[axis] - row.size[axis] + 1.5))
            free[(spot, slice(None, first)) if axis == 0 else (spot, slice(None), slice(None, first))] = 0
            free[(spot, slice(last + 1, None)) if axis == 0 else (spot, slice(None), slice(last + 1, None))] = 0

    def _ways(self, half: Half) -> Counts:
        """Return for every spot in how many ways it can still be covered."""
        if not half.rows:
            return np.zeros(self.spots)
        columns = half.free[:, ::COARSE]
        for k in range(1, COARSE):
            columns = columns + half.free[:, k::COARSE]
        coarse = columns[:, :, ::COARSE]
        for k in range(1, COARSE):
            coarse = coarse + columns[:, :, k::COARSE]
        places = np.fft.rfft2(coarse)
        total = sum(places[spot] * self.rows[row].spectrum for spot, row in enumerate(half.rows))
        ways: Counts = np.fft.irfft2(total, self.spots)
        return ways

    def _laid(self, half: Half, spot: int, place: Place, slack: float) -> Half:
        """Return a half-built lay with one more job, the row at `spot` of its rows, at a place."""
        row = self.rows[half.rows[spot]]
        left = list(half.left)
        left[row.kind] -= 1
        keep = [k for k, number in enumerate(half.rows) if left[self.rows[number].kind]]
        free = half.free[keep] if len(keep) < len(half.rows) else half.free.copy()
        rows = tuple(half.rows[k] for k in keep)
        for k, number in enumerate(rows):
            _strike_out(free[k], self.board.clear(row.variant, self.rows[number].variant, slack), place)
        phase = self._in_phase(half, row, place, rows, free)
        some = [bool(one.any()) for one in free]
        rows_left = {self.rows[number].kind for number, has in zip(rows, some, strict=True) if has}
        lost = sum(left[kind] * self.areas[kind] for kind in range(len(left)) if left[kind] and kind not in rows_left)
        lying = (*half.lying, (row.kind, row.variant, place))
        return Half(lying, tuple(left), rows, free, phase, 0.0, round(lost * COARSE * COARSE))

    def _in_phase(
        self, half: Half, row: Row, place: Place, rows: tuple[int, ...], free: Flags
    ) -> tuple[tuple[str, Place], ...]:
        """Hold the rest of a group to the phase of its first job."""
        group = self.board.jobs[self.kinds[row.kind][0]].group
        if not group or any(name == group for name, _ in half.phase):
            return half.phase
        (mx, my), shift = self.board.phases, self.board.shift(row.variant)
        at = ((place[0] + shift[0]) % mx, (place[1] + shift[1]) % my)
        for k, number in enumerate(rows):
            other = self.rows[number]
            if self.board.jobs[self.kinds[other.kind][0]].group == group:
                shift = self.board.shift(other.variant)
                kept = free[k, (at[0] - shift[0]) % mx :: mx, (at[1] - shift[1]) % my :: my].copy()
                free[k] = 0
                free[k, (at[0] - shift[0]) % mx :: mx, (at[1] - shift[1]) % my :: my] = kept
        return (*half.phase, (group, at))

    def _scored(self, half: Half, by: Taste, total: float) -> Half:
        ways = self._ways(half)
        danger = by.in_danger * self.size[0] * self.size[1] / 10_000
        covered = sum(self.areas[kind] for kind, _, _ in half.lying)
        sure = float(np.sum(np.where(ways > 0.5, ways / (ways + danger), 0.0)))
        score = total - covered - sure + half.lost / COARSE**2 - by.large_first * covered
        return Half(half.lying, half.left, half.rows, half.free, half.phase, score, half.lost)

    def build(self, by: Taste, chance: random.Random, go: Callable[[], bool]) -> list[Half]:
        """Return the best lays that were built, the best first; none when there is no more time."""
        best = [self._drawn_in(by, chance)]
        total = self._reached(best[0])
        while any(best[0].left):
            seen: set[frozenset[Lying]] = set()
            nexts = []
            for half in best:
                if not go():
                    return []
                for spot, place in self._tried(half, by, chance):
                    row = self.rows[half.rows[spot]]
                    key = frozenset([*half.lying, (row.kind, row.variant, place)])
                    if key not in seen:
                        seen.add(key)
                        nexts.append(self._scored(self._laid(half, spot, place, by.slack), by, total))
            if not nexts:
                break
            best = _unlike(nexts, by.breadth) if any(nexts[0].left) else sorted(nexts, key=lambda one: one.score)
        return best

    def _tried(self, half: Half, by: Taste, chance: random.Random) -> list[tuple[int, Place]]:
        """Return which rows to try next and where: what reaches least far from the corner, large ones sooner."""
        found: list[tuple[float, int, Place]] = []
        axis = 1 if by.corner & 4 else 0
        back = bool(by.corner & (2 if axis else 1))
        for spot, number in enumerate(half.rows):
            row = self.rows[number]
            early = EARLY * math.sqrt(self.areas[row.kind]) * COARSE * chance.random()
            for place in _outermost(half.free[spot], by.corner):
                low = place[axis] + row.corner[axis]
                far = self.size[axis] - low - row.size[axis] if back else low
                found.append((far - early, spot, place))
        found.sort()
        return [(spot, place) for _, spot, place in found[: by.tries]]


def _unlike(halves: list[Half], most: int) -> list[Half]:
    """Return the best half-built lays, of those that are much alike only one."""
    out: list[Half] = []
    seen: set[frozenset[Lying]] = set()
    for half in sorted(halves, key=lambda one: one.score):
        look = frozenset((kind, number, (x // ALIKE, y // ALIKE)) for kind, number, (x, y) in half.lying)
        if look not in seen:
            seen.add(look)
            out.append(half)
        if len(out) == most:
            break
    return out


def _strike_out(free: Flags, clear: Clear, place: Place) -> None:
    """Take away the places of a variant that would overlap what has just been laid at a place."""
    x, y = place[0] + clear.first[0], place[1] + clear.first[1]
    nx, ny = clear.flags.shape
    x0, y0 = max(x, 0), max(y, 0)
    x1, y1 = min(x + nx, free.shape[0]), min(y + ny, free.shape[1])
    if x0 < x1 and y0 < y1:
        free[x0:x1, y0:y1] &= clear.flags[x0 - x : x1 - x, y0 - y : y1 - y]


def _outermost(free: Flags, corner: int) -> list[Place]:
    """Return the free places nearest to a side: its first row's two ends, and the first of the other way."""
    view = free[:: -1 if corner & 1 else 1, :: -1 if corner & 2 else 1]
    view = view.T if corner & 4 else view
    rows: NDArray[np.bool_] = np.any(view, axis=1)
    row = int(rows.argmax())
    if not rows[row]:
        return []
    ends = (int(view[row].argmax()), view.shape[1] - 1 - int(view[row, ::-1].argmax()))
    column = int(view.any(0).argmax())
    spots = dict.fromkeys([(row, ends[0]), (row, ends[1]), (int(view[:, column].argmax()), column)])
    out = []
    for a, b in spots:
        i, j = (b, a) if corner & 4 else (a, b)
        out.append((free.shape[0] - 1 - i if corner & 1 else i, free.shape[1] - 1 - j if corner & 2 else j))
    return out


def _smooth(least: int) -> int:
    """Return a multiple of the coarse step whose other factors are 2, 3 and 5, not less than so many."""
    many = math.ceil(least / COARSE)
    while True:
        rest = many
        for prime in (2, 3, 5):
            while rest % prime == 0:
                rest //= prime
        if rest == 1:
            return many * COARSE
        many += 1
