"""Guided local search on overlap: let pieces overlap, move one at a time where it overlaps least.

Pairs that stay stuck weigh more from pass to pass, so that the search leaves a dead end by itself (Umetani et al.
2009; weights by severity as in Gardeyn et al. 2025).
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from lastlook.lay.search.state import State

HEAVIER = (1.2, 2.0)
"""What the weight of an overlapping pair is multiplied by: the shallowest and the deepest of a pass."""
LIGHTER = 0.95


def construct(state: State, order: list[int], corner: int, may_go_on: Callable[[], bool]) -> list[int]:
    """Lay jobs one after another where they overlap nothing; return those that found no such place."""
    left: list[int] = []
    for job in order:
        state.variant[job] = -1
    for spot, job in enumerate(order):
        if spot % 16 == 15 and not may_go_on():
            return left + order[spot:]
        found = state.scan(job, corner)
        if found is None or found.cost > 0:
            left.append(job)
        else:
            state.variant[job], state.place[job] = found.variant, found.place
    return left


def throw_in(state: State, jobs: list[int]) -> bool:
    """Lay jobs where they overlap least; False if one has no place at all."""
    for job in jobs:
        found = state.scan(job, state.chance.randrange(8))
        if found is None:
            return False
        state.variant[job], state.place[job] = found.variant, found.place
    return True


def sweep(state: State) -> float:
    """Move every overlapping job once, in random order; return how much overlap is left, in mm."""
    jobs = [int(job) for job in np.flatnonzero(state.overlap.sum(1) > 0)]
    state.chance.shuffle(jobs)
    for job in jobs:
        if not state.overlap[job].any():
            continue
        found = state.scan(job, state.chance.randrange(8))
        if found is None:
            continue
        if (found.variant, found.place) != (state.variant[job], state.place[job]):
            state.put(job, found.variant, found.place)
    weigh(state)
    return float(state.overlap.sum()) / 2


def weigh(state: State) -> None:
    """Make pairs that overlap heavier, and let the others grow lighter again."""
    deep = state.overlap
    most = float(deep.max(initial=0.0))
    if most > 0:
        heavier = HEAVIER[0] + (HEAVIER[1] - HEAVIER[0]) * deep / most
        state.weights = np.where(deep > 0, state.weights * heavier, np.maximum(1.0, state.weights * LIGHTER)).astype(
            np.float32
        )
    if float(state.weights.max(initial=1.0)) > 1e5:
        state.weights = np.maximum(1.0, state.weights * np.float32(1e-2))


def disturb(state: State) -> None:
    """Swap two large jobs, and throw one small one anew; weights start again."""
    state.weights[:] = 1
    sizes = [state.board.jobs[job].area_mm2 for job in range(len(state.variant))]
    order = sorted(range(len(sizes)), key=lambda job: -sizes[job])
    large = order[: max(2, (len(order) * 2 + 2) // 3)]
    if len(large) >= 2:
        a, b = state.chance.sample(large, 2)
        spots = state.spots()
        for job, spot in ((a, spots[b]), (b, spots[a])):
            number = state.chance.choice(state.board.of_job[job])
            place = state.nearest(job, number, spot)
            if place is not None:
                state.variant[job], state.place[job] = number, place
    job = state.chance.randrange(len(sizes))
    found = state.scan(job, state.chance.randrange(8))
    if found is not None:
        state.variant[job], state.place[job] = found.variant, found.place
    state.note_all()
