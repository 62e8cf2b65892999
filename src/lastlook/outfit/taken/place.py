"""The edges of a foreign outline, each with its name."""

from __future__ import annotations

from collections.abc import Mapping

from lastlook.geometry import Path
from lastlook.paper.take import guess, runs_of


def runs_named(path: Path, said: Mapping[int, str]) -> tuple[tuple[Path, str], ...]:
    """Return the runs of an outline, each with its name: as the maker says, numbered from 1, else as guessed."""
    runs = runs_of(path)
    guessed = enumerate(zip(runs, guess(runs), strict=True), 1)
    return tuple((run, said.get(number, name)) for number, (run, name) in guessed)
