"""A second search on the other core, with another seed, in a process of its own: started, asked, ended.

It is only worth its start where the first search has not laid everything after some seconds.
"""

from __future__ import annotations

import multiprocessing
from multiprocessing.connection import Connection
from multiprocessing.synchronize import Event

from lastlook import lay

SEED_APART = 1000
LEAST_CORES = 2


class Second:
    """One search that runs beside the first."""

    def __init__(
        self, problem: lay.Problem, seed: int, locked: tuple[lay.Placement, ...], made: tuple[lay.Placement, ...]
    ) -> None:
        """Start it."""
        context = multiprocessing.get_context("spawn")
        self._ended = context.Event()
        self._answer, tells = context.Pipe(duplex=False)
        asked = (problem, seed + SEED_APART, locked, made)
        self._process = context.Process(target=_search, args=(asked, self._ended, tells), daemon=True)
        self._process.start()
        tells.close()
        self._found: lay.Lay | None = None

    def found(self, wait_s: float = 0.0) -> lay.Lay | None:
        """Return what it found, None while it goes on or where it broke."""
        try:
            if self._found is None and self._answer.poll(wait_s):
                self._found = self._answer.recv()
        except (EOFError, OSError):
            return None
        return self._found

    def end(self, wait_s: float) -> lay.Lay | None:
        """Ask it to end, and return the best it has."""
        self._ended.set()
        found = self.found(wait_s)
        self._process.join(0.2)
        if self._process.is_alive():
            self._process.terminate()
        return found


def is_worth_it() -> bool:
    """Whether there is a core for it."""
    return multiprocessing.cpu_count() >= LEAST_CORES


def _search(
    asked: tuple[lay.Problem, int, tuple[lay.Placement, ...], tuple[lay.Placement, ...]],
    ended: Event,
    tells: Connection,
) -> None:
    problem, seed, locked, made = asked

    def may_go_on(progress: lay.Progress) -> bool:
        return not ended.is_set() and not (progress.best is not None and progress.best.fits)

    tells.send(lay.search(problem, seed=seed, may_go_on=may_go_on, locked=locked, made=made))
    tells.close()
