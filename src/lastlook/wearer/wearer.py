"""A body by its measures: what was measured, and what can be said of the rest.

Nothing is silently filled in: a measure that was not taken is estimated only where the survey of the same name
predicts it well, is then marked as an estimate with its range, and is otherwise `Missing`.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.quantity import Missing
from lastlook.wearer.estimate import estimate
from lastlook.wearer.measure import NAMES, Measure


@dataclass(frozen=True)
class Wearer:
    """A body, by the measures that were taken of it."""

    name: str
    measures: tuple[Measure, ...]

    def taken(self, name: str) -> Measure | None:
        """Return the measure of that name if it was taken."""
        return next((one for one in self.measures if one.name == name), None)


def measure(w: Wearer, name: str) -> Measure | Missing:
    """Return a measure: as taken, else estimated, else Missing with how to take it."""
    taken = w.taken(name)
    if taken is not None:
        return taken
    found = estimate(w.measures, name)
    if isinstance(found, Measure):
        return found
    entry = NAMES.get(name)
    if entry is None:
        return Missing(name.replace("_", " "), "Measure it; the surveys have no such length.")
    return Missing(entry.words, f"{entry.take} {found}".strip())
