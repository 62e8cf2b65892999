"""One plan being searched: first arrangements, loosening, and making it shorter."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from lastlook.lay.clash import Board, Plan, placement_of
from lastlook.lay.placement import Placement
from lastlook.lay.search.build import Builder, Half, taste
from lastlook.lay.search.hunt import Hunt
from lastlook.lay.search.loosen import construct, disturb, sweep, throw_in
from lastlook.lay.search.separate import Apart, Separator
from lastlook.lay.search.state import State

Floats = NDArray[np.float64]
Pooled = tuple[float, int, tuple[list[int], list[tuple[int, int]]]]
"""A near solution: what overlap it had, when it was found, and where everything lay."""
CELLS = 10_000
"""Lattice places over the whole cloth: about 12 mm on a home cutter's length; pushing apart does the rest."""
FINE_CELLS = 60_000
SLACK = 1.0
"""How much of a step may overlap on the lattice, because it can be pushed apart."""
FEW_JOBS = 30
MANY_JOBS = 120
"""With more, pieces are laid clear of each other on the lattice; pushing so many apart would take too long."""
STRIKE_PASSES = 120
LEFT_MM = 1e-3
"""Overlap that may be left for the judge to have a look at all."""
ORDERS = 4
BREADTHS = (4, 4, 8, 4, 16)
"""How many half-built lays are kept, from turn to turn."""
TRIES = 12
FOLLOWED = 3
"""How many of the lays that were built are loosened when they are not whole."""
PUSHED = 24
"""How many of the whole lays that were built are pushed apart."""
FOLLOW_PASSES = 60
PULLS = 16
ANEW = 0.1
POOL = 8


class Runner:
    """Searches one plan on one board."""

    def __init__(self, hunt: Hunt, plan: Plan, reach_mm: float) -> None:
        self.hunt = hunt
        self.plan = plan
        area = sum(job.area_mm2 for job in plan.jobs) * 1.3
        bands = {id(one.band): one.band for job in plan.jobs for one in job.variants}
        wide = sum(one.high[1] - one.low[1] for one in bands.values())
        ground = area if hunt.cloth.length_mm is None else min(wide * reach_mm, area * 2)
        cells, slack = (CELLS, SLACK) if len(plan.jobs) <= FEW_JOBS else (FINE_CELLS, 0.0)
        self.board = Board(hunt.cloth, plan.jobs, math.sqrt(max(ground, 1.0) / cells), slack)
        self.state = State(self.board, reach_mm, hunt.chance)
        self._builder: Builder | None = None
        self._built_mm = 0.0
        self._new_phases()

    def _new_phases(self) -> None:
        groups = sorted({job.group for job in self.board.jobs if job.group})
        mx, my = self.board.phases
        chance = self.hunt.chance
        self.state.phase = {one: (chance.randrange(mx), chance.randrange(my)) for one in groups}

    def start(self, length_mm: float) -> bool:
        """Construct from a corner in a few orders; return whether one became a lay."""
        self.state.length_mm = length_mm
        jobs = range(len(self.board.jobs))
        for attempt in range(ORDERS):

            def size(job: int, attempt: int = attempt) -> float:
                return -self.board.jobs[job].area_mm2 * (1 if not attempt else self.hunt.chance.uniform(0.6, 1.4))

            left = construct(self.state, sorted(jobs, key=size), 0, self.hunt.may_still)
            if not left and self._settle(length_mm):
                return True
            if left:
                self._offer_part(left)
            if not self.hunt.go(len(left)):
                return False
        throw_in(self.state, left)
        self.state.note_all()
        return False

    def build(self, length_mm: float, turn: int) -> bool:
        """Build lays up; push apart the whole ones, loosen the others; return whether one became a lay."""
        state = self.state
        state.length_mm = length_mm
        builder = self._builder
        if builder is None or self._built_mm != length_mm:
            builder = self._builder = Builder(self.board, state.columns, length_mm)
            self._built_mm = length_mm
        by = taste(BREADTHS[turn % len(BREADTHS)], TRIES, self.hunt.chance)
        halves = builder.build(by, self.hunt.chance, self.hunt.go)
        for spot, half in enumerate(halves[:PUSHED]):
            whole = not any(half.left)
            if not (whole or spot < FOLLOWED):
                break
            if not self._lie(builder, half):
                continue
            if whole and self._settle(length_mm):
                return True
            if spot < FOLLOWED and self.loosen(length_mm, FOLLOW_PASSES):
                return True
            if not self.hunt.may_still():
                return False
        return False

    def _lie(self, builder: Builder, half: Half) -> bool:
        """Lay everything as it was built, and throw the rest in; return whether all has a place."""
        state = self.state
        state.variant = [-1] * len(state.variant)
        state.weights[:] = 1
        left = [list(jobs) for jobs in builder.kinds]
        for kind, number, place in half.lying:
            job = left[kind].pop(0)
            state.variant[job], state.place[job] = number, place
        state.phase = {**state.phase, **dict(half.phase)}
        rest = [job for jobs in left for job in jobs]
        rest.sort(key=lambda job: -self.board.jobs[job].area_mm2)
        ok = throw_in(state, rest)
        state.note_all()
        return ok

    def _offer_part(self, left: list[int]) -> None:
        jobs = [job for job in range(len(self.board.jobs)) if job not in left]
        if not jobs or len(jobs) > MANY_JOBS:
            return
        spots = self.state.spots()[jobs]
        variants = [self.state.variant[job] for job in jobs]
        apart = Separator(self.board, variants, self.state.length_mm, spots, jobs).apart(spots)
        if apart.left_mm <= LEFT_MM:
            self.hunt.offer_part([self._placed(job, spot) for job, spot in zip(jobs, apart.spots, strict=True)])

    def _placed(self, job: int, spot: Floats) -> Placement:
        variant = self.board.variants[self.state.variant[job]]
        return placement_of(self.board.jobs[job], variant, spot[0], spot[1])

    def _settle(self, length_mm: float) -> bool:
        """Push the arrangement apart; return whether the judge then proves it."""
        apart = self._push(length_mm, self.state.spots())
        return self._take(apart)

    def _push(self, length_mm: float, spots: Floats) -> Apart:
        if len(self.board.jobs) > MANY_JOBS:
            self.state.note_all()
            left = math.inf if self.state.overlap.any() or length_mm < self.state.length_mm else 0.0
            return Apart(spots, left, np.zeros((0, 2), np.int64))
        return Separator(self.board, self.state.variant, length_mm, spots).apart(spots)

    def _take(self, apart: Apart) -> bool:
        if apart.left_mm > LEFT_MM:
            return False
        jobs = range(len(self.board.jobs))
        return self.hunt.offer([self._placed(job, apart.spots[job]) for job in jobs])

    def loosen(self, length_mm: float, passes: int) -> bool:
        """Search with overlap for so many passes; return whether a lay was found."""
        state = self.state
        if self.hunt.stopped or (any(number < 0 for number in state.variant) and not self._begin_anew()):
            return False
        lowest, since, tried = math.inf, 0, math.inf
        low_state = state.kept()
        pool: list[Pooled] = []
        for _ in range(passes):
            total = sweep(state)
            if total < lowest - 1e-6:
                lowest, since = total, 0
                low_state = state.kept()
            else:
                since += 1
            if total == 0 or (self._is_few() and total < tried and self._is_near()):
                tried = total
                apart = self._push(length_mm, state.spots())
                if self._take(apart):
                    self._snap(apart.spots)
                    return True
                if total == 0:
                    self._snap(apart.spots)
                    if not state.overlap.any():
                        disturb(state)
                    tried = math.inf
            if not self.hunt.go(int(np.count_nonzero(state.overlap.any(1)))):
                return False
            if since > STRIKE_PASSES:
                if POOL:
                    pool.append((lowest, len(pool), low_state))
                    pool.sort(key=lambda one: one[:2])
                    del pool[POOL:]
                self._strike(pool)
                lowest, since, tried = math.inf, 0, math.inf
        return False

    def _is_near(self) -> bool:
        """Whether so little overlaps that pushing apart is worth its time."""
        return float(self.state.overlap.max()) <= 4 * self.board.step[0]

    def _begin_anew(self) -> bool:
        chance = self.hunt.chance
        order = sorted(
            range(len(self.board.jobs)), key=lambda job: -self.board.jobs[job].area_mm2 * chance.uniform(0.5, 1.5)
        )
        left = construct(self.state, order, chance.randrange(8), self.hunt.may_still)
        ok = throw_in(self.state, left)
        self.state.weights[:] = 1
        if ok:
            self.state.note_all()
        return ok

    def _strike(self, pool: list[Pooled]) -> None:
        """Leave a dead end: mostly by swapping two large jobs, sometimes by beginning anew at another phase."""
        if self.hunt.chance.random() < ANEW:
            self._new_phases()
            if self._begin_anew():
                return
        if pool:
            spot = min(int(abs(self.hunt.chance.gauss(0, 1)) * len(pool) / 2.5), len(pool) - 1)
            self.state.restore(pool[spot][2])
        disturb(self.state)

    def _snap(self, spots: Floats) -> None:
        """Put every job on the free lattice place nearest to where it was pushed."""
        for job, number in enumerate(self.state.variant):
            place = self.state.nearest(job, number, spots[job])
            if place is not None:
                self.state.place[job] = place
        self.state.note_all()

    def shorten(self, passes: int | None) -> None:
        """Make the best lay shorter, until told to stop or for so many passes."""
        hunt, state = self.hunt, self.state
        if hunt.best is None:
            return
        until = math.inf if passes is None else hunt.passes + passes
        ratio, turn = 0.02, 0
        self._pull_in()
        while not hunt.stopped and hunt.passes < until:
            kept = state.kept()
            before = hunt.best.used_length_mm
            length = before * (1 - ratio)
            state.length_mm = length
            self._clamp()
            budget = int(min(STRIKE_PASSES * 2, until - hunt.passes))
            if self.loosen(length, budget) or (passes is None and self._is_few() and self.build(length, turn)):
                self._pull_in()
                ratio = min(ratio * 1.3, 0.03)
            else:
                state.length_mm = before
                state.restore(kept)
                if hunt.chance.random() < 0.5:
                    disturb(state)
                ratio = max(ratio * 0.6, 0.0005)
            state.weights[:] = 1
            turn += 1

    def _is_few(self) -> bool:
        return len(self.board.jobs) <= FEW_JOBS

    def _pull_in(self) -> None:
        """Shorten the lay just found without changing who lies beside whom, by ever smaller steps."""
        best = self.hunt.best
        if best is None:
            return
        spots = self._spots_of_best()
        if spots is None:
            return
        step, length = best.used_length_mm * 0.01, best.used_length_mm
        for _ in range(self._pulls()):
            if not self.hunt.may_still():
                break
            apart = self._push(length - step, spots)
            if self._take(apart):
                spots, length = apart.spots, length - step
                step *= 2
            else:
                step /= 3
            if step < 0.05:
                break
        self._snap(spots)

    def _pulls(self) -> int:
        """Return how often to try to pull a lay shorter: less often the more there is to push."""
        many = len(self.board.jobs)
        return 0 if many > MANY_JOBS else max(3, min(PULLS, 240 // many))

    def _spots_of_best(self) -> Floats | None:
        """Return where the best lay has the jobs, if it lies as the state has it."""
        best = self.hunt.best
        if best is None:
            return None
        lying = {(one.id, one.copy, one.part): one for one in best.placements}
        out = np.zeros((len(self.board.jobs), 2))
        for job, wanted in enumerate(self.board.jobs):
            one = lying.get((wanted.wanted.id, wanted.copy, wanted.part))
            if one is None:
                return None
            match = [
                number
                for number in self.board.of_job[job]
                if self.board.variants[number].angle_deg == one.angle_deg
                and self.board.variants[number].mirrored == one.mirrored
                and self.board.variants[number].layer == one.layer
            ]
            if not match:
                return None
            self.state.variant[job] = match[0]
            out[job] = (one.x, one.y)
        return out

    def _clamp(self) -> None:
        """Bring jobs that lie beyond the length back to the nearest place inside."""
        spots = self.state.spots()
        for job, number in enumerate(self.state.variant):
            place = self.state.nearest(job, number, spots[job])
            if place is not None:
                self.state.place[job] = place
        self.state.note_all()
