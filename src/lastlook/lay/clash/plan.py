"""How a problem may be cut up into jobs: pairs through the fold or singly, pieces whole or in parts.

A *plan* fixes which placements are to be found. The first plan is the one with the least work and the fewest
seams; others are tried when it finds no place.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from lastlook import geometry
from lastlook.geometry import Corners
from lastlook.lay.clash.job import ROUGH_MM, Job, Shape, Turn, Variant, is_allowed, shape_of, turned, turns
from lastlook.lay.clash.zone import Band, Forbidden, bands, forbidden
from lastlook.lay.cloth import Fold, Outline
from lastlook.lay.placement import BOTH, ONE
from lastlook.lay.wanted import Problem, Wanted

Key = tuple[str, int, int]
"""A copy, or a part of it: piece, copy, part."""
TILTS = (0.0, -1.0, 1.0)
ON_FOLD_MM = 0.008
"""How far a fold edge may be drawn off the fold: less than what the judge lets printing cost."""
CUTS = {2: ((0.5,), (0.62,), (0.38,), (0.75,), (0.25,)), 3: ((1 / 3, 2 / 3), (0.25, 0.75), (0.5, 0.75))}
"""Where along a piece its joints are tried, as shares of its length."""


@dataclass(frozen=True, eq=False)
class Plan:
    """The placements to be found, and how many joints that asks for."""

    jobs: tuple[Job, ...]
    joints: int = 0

    def lacking(self) -> list[Job]:
        """Return the jobs that have no way to lie at all."""
        return [job for job in self.jobs if not job.variants]


@dataclass(frozen=True)
class _Choice:
    """Which pieces are pieced and where, and which pairs are cut singly on folded cloth."""

    pieced: tuple[tuple[str, tuple[float, ...]], ...] = ()
    single: frozenset[str] = frozenset()
    tilts: tuple[float, ...] = (0.0,)
    """At which shares of its tolerance a piece may lie off the grain."""


class _Maker:
    """Makes jobs for one problem; shapes and what is forbidden are worked out once."""

    def __init__(self, problem: Problem, reach_mm: float, taken: Sequence[Corners]) -> None:
        self.problem = problem
        self.cloth = problem.cloth
        self.tilts: tuple[float, ...] = (0.0,)
        self.bands = bands(problem.cloth, reach_mm)
        self.taken = tuple(part for one in taken for part in geometry.convex_parts([(x, y) for x, y in one]))
        self._forbidden: dict[tuple[int, int], Forbidden] = {}
        self._shapes: dict[tuple[Outline, bool, float], Shape] = {}

    def jobs(self, choice: _Choice, done: frozenset[Key]) -> tuple[Job, ...]:
        """Return the jobs for all copies that are not `done` already."""
        out: list[Job] = []
        self.tilts = choice.tilts
        cuts = dict(choice.pieced)
        for piece in self.problem.pieces:
            if piece.id in cuts:
                out += self._in_parts(piece, cuts[piece.id])
            elif piece.on_fold is not None:
                out += self._folded(piece)
            elif piece.mirrored_pair and piece.id not in choice.single:
                out += self._pairs(piece)
            else:
                out += self._singles(piece)
        return tuple(job for job in out if (job.wanted.id, job.copy, job.part) not in done)

    def _singles(self, piece: Wanted) -> list[Job]:
        ways = {
            side: self._variants(piece, piece.outline, turns(piece, self.cloth, (bool(side),), self.tilts))
            for side in (0, 1)
        }
        both = (*ways[0], *ways[1])
        out = []
        for copy in range(1, piece.quantity + 1):
            side = int(piece.mirrored_pair and copy % 2 == 0)
            variants = both if self.cloth.sides_alike else tuple(ways[side])
            out.append(self._job(piece, copy, variants))
        return out

    def _pairs(self, piece: Wanted) -> list[Job]:
        """Return jobs through the fold, one for two copies; single ones where no fold can take them."""
        around = 180.0 if self.cloth.fold is Fold.CROSSWISE else 0.0
        ways = [
            turn
            for turn in turns(piece, self.cloth, (False, True), self.tilts)
            if is_allowed(piece, self.cloth, Turn(not turn.mirrored, around - turn.angle_deg), self.tilts)
        ]
        variants = self._variants(piece, piece.outline, ways, layers=2)
        if self.cloth.fold is Fold.NONE or not variants:
            return self._singles(piece)
        return [self._job(piece, copy, tuple(variants), yields=2) for copy in range(1, piece.quantity, 2)]

    def _folded(self, piece: Wanted) -> list[Job]:
        """Return jobs on a real fold, or opened out where the cloth has none for them."""
        variants: list[Variant] = []
        if self.cloth.fold is not Fold.NONE:
            ways = turns(piece, self.cloth, (False, True), self.tilts)
            variants = self._variants(piece, piece.outline, ways, layers=2, pinned=True)
        if not variants:
            opened = opened_out(piece)
            if opened is not None:
                variants = self._variants(piece, opened, turns(piece, self.cloth, (False,), self.tilts), opened=True)
        return [self._job(piece, copy, tuple(variants)) for copy in range(1, piece.quantity + 1)]

    def _in_parts(self, piece: Wanted, cuts: tuple[float, ...]) -> list[Job]:
        out = []
        outlines = parts_of(piece, cuts)
        for copy in range(1, piece.quantity + 1):
            side = (piece.mirrored_pair and copy % 2 == 0,)
            for number, outline in enumerate(outlines, 1):
                variants = self._variants(piece, outline, turns(piece, self.cloth, side, self.tilts), part=True)
                out.append(self._job(piece, copy, tuple(variants), part=number, outline=outline))
        return out

    def _job(
        self, piece: Wanted, copy: int, variants: tuple[Variant, ...], *, yields: int = 1, part: int = 1,
        outline: Outline | None = None,
    ) -> Job:  # fmt: skip
        group = piece.match.group if piece.match and self.cloth.repeat and part == 1 else None
        area = variants[0].shape.area_mm2 if variants else 0.0
        return Job(piece, copy, variants, part, outline, group, area, yields)

    def _variants(
        self, piece: Wanted, outline: Outline, ways: Sequence[Turn], *, layers: int = 1, pinned: bool = False,
        opened: bool = False, part: bool = False,
    ) -> list[Variant]:  # fmt: skip
        out: list[Variant] = []
        seen: set[tuple[int, tuple[tuple[float, float], ...]]] = set()
        guard = None if part else _opened_guard(piece) if opened else piece.flaw_free
        plain = guard is None and piece.match is None
        for turn in ways:
            shape = self._shape(outline, guard, turn)
            look = tuple(sorted({(round(float(x - shape.low[0]), 4), round(float(y - shape.low[1]), 4))
                                 for one in shape.parts for x, y in one}))  # fmt: skip
            for number, band in enumerate(self.bands):
                if plain and (number, look) in seen and not pinned:
                    continue
                variant = self._variant(piece, shape, turn, number, band, layers, pinned)
                if variant is not None:
                    seen.add((number, look))
                    out.append(variant)
        return out

    def _shape(self, outline: Outline, guard: tuple[Outline, ...] | None, turn: Turn) -> Shape:
        key = (outline, turn.mirrored, turn.angle_deg)
        if key not in self._shapes:
            self._shapes[key] = shape_of(outline, guard, turn)
        return self._shapes[key]

    def _variant(
        self, piece: Wanted, shape: Shape, turn: Turn, number: int, band: Band, layers: int, pinned: bool
    ) -> Variant | None:
        if layers == 2 and band.fold_at is None:
            return None
        low = [band.low[k] - shape.low[k] for k in (0, 1)]
        high = [band.high[k] - shape.high[k] for k in (0, 1)]
        if band.fold_at is not None and not pinned and self.cloth.gap_mm:
            if band.fold_is_high:
                high[band.axis] -= self.cloth.gap_mm / 2
            else:
                low[band.axis] += self.cloth.gap_mm / 2
        if pinned:
            at = _pin(piece, shape, turn, band)
            give = ON_FOLD_MM + ROUGH_MM
            if at is None or not low[band.axis] - give <= at <= high[band.axis] + give:
                return None
            low[band.axis] = high[band.axis] = at
        if low[0] > high[0] + 1e-6 or low[1] > high[1] + 1e-6:
            return None
        key = (number, layers)
        if key not in self._forbidden:
            self._forbidden[key] = forbidden(self.cloth, band, layers=layers, taken=self.taken)
        spot = turned((piece.match.point,), turn)[0] if piece.match and self.cloth.repeat else None
        return Variant(
            shape, turn.mirrored, turn.angle_deg, BOTH if layers == 2 else ONE, band, (low[0], low[1]),
            (high[0], high[1]), self._forbidden[key],
            None if spot is None else (float(spot[0]), float(spot[1])), pinned,
        )  # fmt: skip


def _pin(piece: Wanted, shape: Shape, turn: Turn, band: Band) -> float | None:
    """Return where the origin lies across the fold when the piece's fold edge is on it, None if it can't be."""
    ends = turned(piece.on_fold or (), turn)
    if abs(ends[0][band.axis] - ends[1][band.axis]) > 1e-6 * (1 + float(np.hypot(*(ends[0] - ends[1])))):
        return None
    line = float(ends[0][band.axis])
    outer = shape.high[band.axis] if band.fold_is_high else shape.low[band.axis]
    if abs(outer - line) > ON_FOLD_MM + ROUGH_MM or band.fold_at is None:
        return None
    return band.fold_at - line


def opened_out(piece: Wanted) -> Outline | None:
    """Return the whole outline of a piece that is drawn as half, None where its halves don't make one area."""
    other = _over(piece, piece.outline)
    return geometry.joined((piece.outline, other)) if other else piece.outline


def _opened_guard(piece: Wanted) -> tuple[Outline, ...] | None:
    if piece.flaw_free is None:
        return None
    return (*piece.flaw_free, *(_over(piece, one) for one in piece.flaw_free))


def _over(piece: Wanted, outline: Outline) -> Outline:
    """Return an outline reflected in a piece's fold edge; corners on the fold stay where they are."""
    if piece.on_fold is None:
        return ()
    (ax, ay), (bx, by) = piece.on_fold
    way = np.array([bx - ax, by - ay])
    way = way / np.hypot(*way)
    off = np.array(outline) - (ax, ay)
    aside = off[:, 0] * way[1] - off[:, 1] * way[0]
    aside = np.where(np.abs(aside) < 1e-6, 0.0, aside)
    out = np.array(outline) - 2 * aside[:, None] * np.array([way[1], -way[0]])
    return tuple((float(x), float(y)) for x, y in out[::-1])


def parts_of(piece: Wanted, cuts: tuple[float, ...]) -> list[Outline]:
    """Return the outlines of a piece cut across its longer way at shares of its length, seams included."""
    if piece.pieced is None:
        return [piece.outline]
    spots = np.array(piece.outline)
    axis = int(np.ptp(spots[:, 1]) > np.ptp(spots[:, 0]))
    low, high = float(spots[:, axis].min()), float(spots[:, axis].max())
    ends = [low, *(low + share * (high - low) for share in cuts), high]
    out = []
    for spot in range(len(ends) - 1):
        a = ends[spot] - (piece.pieced.seam_mm if spot else 0)
        b = ends[spot + 1] + (piece.pieced.seam_mm if spot < len(ends) - 2 else 0)
        part = geometry.part_between(piece.outline, axis, max(a, low), min(b, high))
        if part is None:
            return []
        out.append(part)
    return out


def plans(
    problem: Problem, reach_mm: float, taken: Sequence[Corners] = (), done: frozenset[Key] = frozenset()
) -> Iterator[Plan]:
    """Yield ways to cut a problem up into jobs, the plainest first; `done` copies are left out."""
    maker = _Maker(problem, reach_mm, taken)
    pairs = [piece.id for piece in problem.pieces if piece.mirrored_pair and piece.on_fold is None]
    singles: list[frozenset[str]] = [frozenset()]
    if problem.cloth.fold is Fold.PARTIAL and len(pairs) <= 6:
        singles += [frozenset(some) for many in range(1, len(pairs) + 1) for some in combinations(pairs, many)]
    tilted = [piece for piece in problem.pieces if piece.tilt_deg > 0 and piece.grain_deg is not None]
    for pieced in _piecings(problem):
        if pieced and tilted:
            yield Plan(maker.jobs(_Choice(tilts=TILTS), done))
            tilted = []
        for single in singles:
            jobs = maker.jobs(_Choice(pieced, single), done)
            yield Plan(jobs, sum(len(cuts) for _, cuts in pieced))
    if tilted:
        yield Plan(maker.jobs(_Choice(tilts=TILTS), done))


def _piecings(problem: Problem) -> Iterator[tuple[tuple[str, tuple[float, ...]], ...]]:
    """Yield which pieces to cut in parts and where, the fewest joints first."""
    yield ()
    able = [piece for piece in problem.pieces if piece.pieced is not None]
    for parts in (2, 3):
        for piece in able:
            if piece.pieced is None or piece.pieced.parts < parts:
                continue
            for cuts in CUTS[parts]:
                if parts_of(piece, cuts):
                    yield ((piece.id, cuts),)
    if len(able) > 1:
        yield tuple((piece.id, CUTS[2][0]) for piece in able)
