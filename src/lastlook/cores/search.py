"""Search for a lay on every core, watched and stopped from outside; the best of what they find is the answer.

Each core has a process of its own with a seed of its own. They tell how far they are through a queue, and are asked
to end through an event; when one has a lay and needs no more time, the others end too.
"""

from __future__ import annotations

import contextlib
import multiprocessing
import os
import queue
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # each core has a search of its own; set before numpy starts

from lastlook import lay

CORES = 2
SEEDS_APART = 1000
"""Each further core searches with this much more added to the seed."""
TELL_S = 0.1
"""How often a search tells how far it is."""
LISTEN_S = 0.02
ENDING_S = 1.5
"""How long after its time a search may still tell what it has before it is ended."""

Watch = Callable[[lay.Progress], bool]


@dataclass(frozen=True)
class Asked:
    """What to search for, and how."""

    problem: lay.Problem
    seconds: float
    seed: int = 1
    locked: tuple[lay.Placement, ...] = ()
    made: tuple[lay.Placement, ...] = ()
    goal: lay.Goal | None = None


def search(asked: Asked, watch: Watch | None = None) -> lay.Lay:
    """Return the best lay found in the time asked for; `watch` sees the progress and says whether to go on."""
    cores = min(CORES, os.cpu_count() or 1)
    until = time.monotonic() + max(asked.seconds, 0.0)
    if cores == 1:
        return _alone(asked, until, watch)
    # A process that has threads may not be forked safely.
    forked = "fork" in multiprocessing.get_all_start_methods() and threading.active_count() == 1
    context: Any = multiprocessing.get_context("fork" if forked else "spawn")
    ended, told = context.Event(), context.Queue()
    jobs = [replace(asked, seed=asked.seed + core * SEEDS_APART) for core in range(cores)]
    workers = [context.Process(target=_work, args=(job, until, ended, told), daemon=True) for job in jobs]
    for worker in workers:
        worker.start()
    try:
        lays = _gather(workers, told, ended, until, watch)
    finally:
        ended.set()
        for worker in workers:
            worker.join(0.2)
            if worker.is_alive():
                worker.terminate()
    return lay.best_of(lays) if lays else _alone(asked, until, watch)


def _alone(asked: Asked, until: float, watch: Watch | None) -> lay.Lay:
    def may_go_on(progress: lay.Progress) -> bool:
        return time.monotonic() < until and (watch is None or watch(progress))

    return _searched(asked, may_go_on)


def _searched(asked: Asked, may_go_on: Watch) -> lay.Lay:
    return lay.search(
        asked.problem, seed=asked.seed, may_go_on=may_go_on, locked=asked.locked, made=asked.made, goal=asked.goal
    )


def _work(asked: Asked, until: float, ended: Any, told: Any) -> None:
    """Search in a process of its own; tell now and then how far, and at last the lay."""
    last = [0.0]

    def may_go_on(progress: lay.Progress) -> bool:
        now = time.monotonic()
        if now - last[0] > TELL_S:
            last[0] = now
            told.put(progress)
        return now < until and not ended.is_set()

    with contextlib.suppress(KeyboardInterrupt):
        told.put(_searched(asked, may_go_on))


def _gather(workers: list[Any], told: Any, ended: Any, until: float, watch: Watch | None) -> list[lay.Lay]:
    """Return the lays that the searches end with, telling their progress to the watcher on the way."""
    lays: list[lay.Lay] = []
    best: lay.Lay | None = None
    passes = 0
    while len(lays) < len(workers) and time.monotonic() < until + ENDING_S:
        try:
            heard = told.get(timeout=LISTEN_S)
        except queue.Empty:
            if not any(worker.is_alive() for worker in workers) and told.empty():
                break
            continue
        if isinstance(heard, lay.Lay):
            lays.append(heard)
            if heard.fits:
                ended.set()
            continue
        passes = max(passes, heard.passes)
        best = heard.best if best is None or (heard.best is not None and _is_better(heard.best, best)) else best
        if watch is not None and not watch(replace(heard, passes=passes, best=best)):
            ended.set()
    return lays


def _is_better(one: lay.Lay, other: lay.Lay) -> bool:
    return lay.best_of([other, one]) is one
