"""The lattice a search works on: where each variant may lie, and how deep any two would overlap.

Every variant has its own origin on the lattice, so that a piece can lie flush with the selvedge, exactly on the
fold, or in phase with the stripes; only the step is shared. Tables are made when they are first asked for.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from lastlook import geometry
from lastlook.geometry import Corners
from lastlook.lay.clash import raster
from lastlook.lay.clash.job import Job, Variant
from lastlook.lay.cloth import Cloth

BLOCKED = np.float32(1e9)
Depths = NDArray[np.float32]


@dataclass(frozen=True, eq=False)
class Table:
    """How deep a second variant overlaps a first one, by the difference of their lattice places."""

    first: tuple[int, int]
    depths: Depths


@dataclass(frozen=True, eq=False)
class Clear:
    """Whether a second variant is clear of a first one, 1 or 0, by the difference of their lattice places."""

    first: tuple[int, int]
    flags: NDArray[np.uint8]


@dataclass(frozen=True, eq=False)
class Ground:
    """Where one variant may lie: the origin of its lattice, and zero or blocked for each place."""

    origin: tuple[float, float]
    free: Depths


@dataclass(frozen=True, eq=False)
class Planes:
    """The half-planes of convex shapes: normals by shape and edge, offsets beyond reach where there is none."""

    normals: NDArray[np.float64]
    offsets: NDArray[np.float64]
    low: Corners
    high: Corners


class Board:
    """Lattice, grounds and tables for the jobs of one plan; `slack` is the share of a step that may overlap."""

    def __init__(self, cloth: Cloth, jobs: Sequence[Job], step_mm: float, slack: float) -> None:
        self.cloth = cloth
        self.jobs = tuple(jobs)
        along = cloth.repeat.along_mm if cloth.repeat else None
        across = cloth.repeat.across_mm if cloth.repeat else None
        self.step = (_dividing(step_mm, along), _dividing(step_mm, across))
        self.phases = (_steps(along, self.step[0]), _steps(across, self.step[1]))
        self.slack_mm = slack * min(self.step)
        seen = {id(variant): variant for job in self.jobs for variant in job.variants}
        self.variants = tuple(seen.values())
        self.number = {key: spot for spot, key in enumerate(seen)}
        self.of_job = tuple(tuple(self.number[id(one)] for one in job.variants) for job in self.jobs)
        self._grounds: dict[int, Ground] = {}
        self._tables: dict[tuple[int, int], Table] = {}
        self._clear: dict[tuple[int, int, float], Clear] = {}
        self._to: dict[int, dict[int, Table]] = {}
        self._planes: dict[tuple[int, int], Planes] = {}
        self._fixed: dict[int, Planes] = {}

    def ground(self, number: int) -> Ground:
        """Return where a variant may lie."""
        if number not in self._grounds:
            self._grounds[number] = self._make_ground(self.variants[number])
        return self._grounds[number]

    def _make_ground(self, variant: Variant) -> Ground:
        origin, many = [0.0, 0.0], [1, 1]
        for k in (0, 1):
            low, high = variant.low[k], variant.high[k]
            if self._repeat(k) and variant.phase_at is not None and not (variant.pinned and variant.band.axis == k):
                point, at = variant.phase_at[k], self._frame(k)
                low = at - point + np.ceil((low - at + point) / self.step[k] - 1e-9) * self.step[k]
                many[k] = int(np.floor((high - low) / self.step[k] + 1e-9)) + 1
            else:
                many[k] = int(np.floor((high - low) / self.step[k] + self._over())) + 1
            origin[k] = float(low)
        size = (max(many[0], 0), max(many[1], 0))
        free = np.zeros(size, np.float32)
        if free.size:
            first = (origin[0], origin[1])
            shapes = self.obstacles(variant)
            if shapes:
                free[raster.inside(shapes, first, self.step, size, self.slack_mm)] = BLOCKED
            self._block_unlike(variant, (origin[0], origin[1]), free)
        return Ground((origin[0], origin[1]), free)

    def _frame(self, axis: int) -> float:
        """Return from where the repeat is counted: from the fold it is reflected in, else from zero."""
        folds = [one.band.fold_at for one in self.variants if one.band.axis == axis and one.band.fold_at]
        return folds[0] if folds else 0.0

    def _block_unlike(self, variant: Variant, origin: tuple[float, float], free: Depths) -> None:
        """Block the places where a copy and its reflection would lie at different phases of the repeat."""
        axis = variant.band.axis
        repeat = self._repeat(axis)
        if not repeat or variant.phase_at is None or variant.layer != "both" or variant.pinned:
            return
        spots = origin[axis] + np.arange(free.shape[axis]) * self.step[axis] + variant.phase_at[axis]
        twice = 2 * (spots - (variant.band.fold_at or 0.0))
        unlike = np.abs((twice + repeat / 2) % repeat - repeat / 2) > 1e-6
        free[(unlike, slice(None)) if axis == 0 else (slice(None), unlike)] = BLOCKED

    def shift(self, number: int) -> tuple[int, int]:
        """Return the phase of a variant's first place, in steps."""
        variant, origin = self.variants[number], self.ground(number).origin
        point = variant.phase_at or (0.0, 0.0)
        out = [round((origin[k] + point[k] - self._frame(k)) / self.step[k]) % self.phases[k] for k in (0, 1)]
        return out[0], out[1]

    def _over(self) -> float:
        """How much of a step a piece may reach over the edge for now."""
        return 0.5 if self.slack_mm else 1e-9

    def _repeat(self, axis: int) -> float | None:
        repeat = self.cloth.repeat
        return None if repeat is None else (repeat.along_mm, repeat.across_mm)[axis]

    def obstacles(self, variant: Variant) -> list[Corners]:
        """Return the convex shapes that a variant's origin must stay out of."""
        out = [_no_fit(one, part) for one in variant.forbidden.edge for part in variant.shape.parts]
        out += [_no_fit(one, part) for one in variant.forbidden.flaw for part in variant.shape.guarded]
        gap = self.cloth.gap_mm
        out += [
            geometry.widened(_no_fit(one, part), gap) for one in variant.forbidden.taken for part in variant.shape.parts
        ]
        return out

    def no_fits(self, a: int, b: int) -> list[Corners]:
        """Return the convex shapes of differences (b less a) at which two variants overlap."""
        one, two = self.variants[a].shape, self.variants[b].shape
        gap = self.cloth.gap_mm
        return [geometry.widened(_no_fit(p, q), gap) for p in one.parts for q in two.parts]

    def tables_to(self, b: int) -> dict[int, Table]:
        """Return the tables of b against whatever it was asked against so far, by the other's number."""
        return self._to.setdefault(b, {})

    def table(self, a: int, b: int) -> Table:
        """Return how deep b overlaps a, by the difference of their lattice places."""
        if (a, b) not in self._tables:
            if (b, a) in self._tables:
                other = self._tables[(b, a)]
                nx, ny = other.depths.shape
                first = (-(other.first[0] + nx - 1), -(other.first[1] + ny - 1))
                self._tables[(a, b)] = Table(first, np.ascontiguousarray(other.depths[::-1, ::-1]))
            else:
                self._tables[(a, b)] = self._make_table(a, b)
            self.tables_to(b)[a] = self._tables[(a, b)]
        return self._tables[(a, b)]

    def clear(self, a: int, b: int, share: float) -> Clear:
        """Return where b is clear of a, if a share of the slack may overlap."""
        key = (a, b, share)
        if key not in self._clear:
            if (b, a, share) in self._clear:
                other = self._clear[(b, a, share)]
                nx, ny = other.flags.shape
                first = (-(other.first[0] + nx - 1), -(other.first[1] + ny - 1))
                self._clear[key] = Clear(first, np.ascontiguousarray(other.flags[::-1, ::-1]))
            else:
                first, within = self._within(a, b, share * self.slack_mm)
                self._clear[key] = Clear(first, (~within).astype(np.uint8))
        return self._clear[key]

    def _make_table(self, a: int, b: int) -> Table:
        first, within = self._within(a, b, self.slack_mm)
        return Table(first, raster.depth(within, self.step))

    def _within(self, a: int, b: int, less_mm: float) -> tuple[tuple[int, int], raster.Inside]:
        """Return from which difference of places on, and at which of them, b overlaps a by more than so much."""
        shapes = self.no_fits(a, b)
        at_a, at_b = self.ground(a).origin, self.ground(b).origin
        low = np.min([one.min(0) for one in shapes], 0)
        high = np.max([one.max(0) for one in shapes], 0)
        base = np.array(at_b) - np.array(at_a)
        first = np.floor((low - base) / self.step).astype(int)
        last = np.ceil((high - base) / self.step).astype(int)
        start = base + first * np.array(self.step)
        size = (int(last[0] - first[0] + 1), int(last[1] - first[1] + 1))
        return (int(first[0]), int(first[1])), raster.inside(
            shapes, (float(start[0]), float(start[1])), self.step, size, less_mm
        )

    def planes(self, a: int, b: int) -> Planes:
        """Return the half-planes of the no-fit shapes of two variants."""
        if (a, b) not in self._planes:
            self._planes[(a, b)] = _stacked(self.no_fits(a, b))
        return self._planes[(a, b)]

    def fixed_planes(self, number: int) -> Planes:
        """Return the half-planes of what a variant's origin must stay out of."""
        if number not in self._fixed:
            self._fixed[number] = _stacked(self.obstacles(self.variants[number]))
        return self._fixed[number]


def _no_fit(p: Corners, q: Corners) -> Corners:
    """Return where the origin of q must not lie, strictly inside, so as not to overlap p."""
    return geometry.convex_sum(p, -q)


def _stacked(shapes: list[Corners]) -> Planes:
    most = max((len(one) for one in shapes), default=3)
    normals = np.zeros((len(shapes), most, 2))
    offsets = np.full((len(shapes), most), 1e18)
    for spot, one in enumerate(shapes):
        ways, ends = geometry.half_planes(one)
        normals[spot, : len(one)], offsets[spot, : len(one)] = ways, ends
    low = np.array([one.min(0) for one in shapes]).reshape(-1, 2)
    high = np.array([one.max(0) for one in shapes]).reshape(-1, 2)
    return Planes(normals, offsets, low, high)


def _dividing(step: float, repeat: float | None) -> float:
    return step if not repeat else repeat / max(1, int(np.ceil(repeat / step - 1e-9)))


def _steps(repeat: float | None, step: float) -> int:
    return max(1, round(repeat / step)) if repeat else 1
