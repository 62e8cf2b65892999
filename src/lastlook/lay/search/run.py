"""Search for a lay: construct one, loosen what overlaps, push apart what nearly fits, then make it shorter."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from enum import Enum

import numpy as np

from lastlook.finding import Finding
from lastlook.lay.clash import Plan, plans
from lastlook.lay.judge import judge
from lastlook.lay.measure import laid_outlines, left_over
from lastlook.lay.placement import Lay, Placement, Progress
from lastlook.lay.search.hunt import GoOn, Hunt, is_endless, may_shorten
from lastlook.lay.search.never import never_fits, not_found, wasted
from lastlook.lay.search.runner import Runner
from lastlook.lay.wanted import Problem

EXTRA_PASSES = 150
"""How long a lay on a given cloth is still made shorter once it fits, for the sake of what is left over."""
PLAN_PASSES = 200
FIRST_PASSES = 30
"""How long a plan is loosened at most of its turns; at every fourth it is done for longer."""
DEFAULT_PASSES = 2000
"""How long a search goes on if nobody says when to stop."""


class Goal(Enum):
    """When a search is done."""

    FIT = "fit"
    LEFT_OVER = "left over"
    SHORTEST = "shortest"


def search(
    problem: Problem,
    *,
    seed: int = 1,
    passes: int | None = None,
    may_go_on: GoOn | None = None,
    locked: tuple[Placement, ...] = (),
    made: tuple[Placement, ...] = (),
    start: Lay | None = None,
    goal: Goal | None = None,
) -> Lay:
    """Return the best lay found in so many passes, or until `may_go_on` says no; the judge has seen it.

    What is `locked` stays where it is, what is `made` is cut already; `start` is a lay to begin from.
    """
    if passes is None and may_go_on is None:
        passes = DEFAULT_PASSES
    locked = (*made, *locked)
    hunt = Hunt(problem, seed, passes, may_go_on or _always, locked, made)
    goal = goal or (Goal.SHORTEST if is_endless(problem.cloth) else Goal.LEFT_OVER)
    if start is not None and start.placements:
        hunt.offer([one for one in start.placements if one not in locked])
    queue = _Queue(problem, locked)
    never = never_fits(problem, queue.at(0) or queue.first)
    if not never:
        _hunt(hunt, goal, queue)
    return _answer(hunt, never)


def search_many(
    seeds: Sequence[int], run: Callable[[Callable[[int], Lay], Iterable[int]], Iterable[Lay]], one: Callable[[int], Lay]
) -> Lay:
    """Return the best of several searches, one a seed; `run` maps `one` over the seeds, on several cores or one."""
    return best_of(list(run(one, seeds)))


def best_of(lays: Sequence[Lay]) -> Lay:
    """Return the lay that fits in the shortest length; where none fits, the one that lays most."""
    return min(lays, key=lambda lay: (not lay.fits, lay.used_length_mm if lay.fits else -lay.used_share, lay.seed))


class _Queue:
    """The plans of a problem, worked out one by one as they are asked for; those with a job without place are left."""

    def __init__(self, problem: Problem, locked: tuple[Placement, ...]) -> None:
        taken = [np.array(one) for one in laid_outlines(problem, locked)]
        done = frozenset(key for one in locked for key in _keys(problem, one))
        self._source = plans(problem, _reach_mm(problem), taken, done)
        self.first = next(self._source)
        self._known = [] if self.first.lacking() else [self.first]

    def at(self, spot: int) -> Plan | None:
        """Return the plan of that number, the last where there are fewer, None where none can work."""
        while len(self._known) <= spot:
            plan = next(self._source, None)
            if plan is None:
                break
            if not plan.lacking():
                self._known.append(plan)
        return self._known[min(spot, len(self._known) - 1)] if self._known else None


def _always(progress: Progress) -> bool:
    return True


def _keys(problem: Problem, one: Placement) -> list[tuple[str, int, int]]:
    piece = problem.piece(one.id)
    pair = one.layer == "both" and piece is not None and piece.on_fold is None
    return [(one.id, one.copy, one.part)] + ([(one.id, one.copy + 1, one.part)] if pair else [])


def _reach_mm(problem: Problem) -> float:
    """Return how far along an endless cloth a search may lay; a given cloth's own length."""
    cloth = problem.cloth
    if cloth.length_mm is not None:
        return cloth.length_mm
    area = longest = 0.0
    for piece in problem.pieces:
        xs, ys = zip(*piece.outline, strict=True)
        wide, high = max(xs) - min(xs), max(ys) - min(ys)
        area += wide * high * piece.quantity * (2 if piece.on_fold else 1)
        longest = max(longest, math.hypot(wide, high) * (2 if piece.on_fold else 1))
    return area / (cloth.width_mm - 2 * cloth.selvedge_mm) * 1.5 + 2 * longest + cloth.gap_mm * 20


def _hunt(hunt: Hunt, goal: Goal, queue: _Queue) -> None:
    runners: dict[int, Runner] = {}
    reach, turn = _reach_mm(hunt.problem), 0
    runner: Runner | None = None
    while not hunt.stopped and (runner is None or hunt.best is None):
        plan = queue.at(_which(turn))
        if plan is None or not plan.jobs:
            hunt.offer(())
            return
        if id(plan) not in runners:
            runners[id(plan)] = Runner(hunt, plan, reach)
        runner = runners[id(plan)]
        if hunt.best is not None or (turn == 0 and runner.start(reach)) or runner.build(reach, turn):
            break
        budget = FIRST_PASSES if turn % 4 else PLAN_PASSES
        if runner.loosen(reach, budget):
            break
        turn += 1
    if runner is None or hunt.best is None or hunt.stopped or goal is Goal.FIT or not may_shorten(hunt.cloth):
        return
    runner.shorten(EXTRA_PASSES if goal is Goal.LEFT_OVER else None)


def _which(turn: int) -> int:
    """Return which plan to try at a turn: the first most often, later ones now and then (1 1 2 1 1 2 1 1 3 ...)."""
    spot = 0
    while turn % 3 == 2:
        turn //= 3
        spot += 1
    return spot


def _answer(hunt: Hunt, never: tuple[Finding, ...]) -> Lay:
    lay = hunt.best
    if lay is not None:
        judgement = judge(hunt.problem, lay.placements, hunt.made)
        rest = left_over(hunt.problem, lay.placements)
        told = (*judgement.findings, *wasted(hunt.problem, lay))
        good = judgement.proven
        return replace(lay, fits=good, proven=good, findings=told, left_over=rest, passes=hunt.passes)
    part = hunt.part or Lay(False, False, hunt.locked)
    findings = never or not_found(hunt.problem, part, hunt.passes)
    return replace(part, fits=False, proven=False, findings=findings, seed=hunt.seed, passes=hunt.passes)
