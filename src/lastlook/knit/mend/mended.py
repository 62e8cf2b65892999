"""Corrections tried: each is worked like the printed text; what leaves the least standing open wins, then the smallest.

A size that does not add up is tried first; only a correction that helps it is tried in the others. The ones that are
offered are read once more from the corrected text, from the start.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook import leaflet as paper
from lastlook.knit.assemble import plan
from lastlook.knit.choose import Choice, Outcome, Reader, refers, total
from lastlook.knit.mend.change import Change, changed_leaflet
from lastlook.knit.mend.likely import candidates
from lastlook.knit.mend.said import joined, said
from lastlook.knit.needle import Trouble
from lastlook.knit.tell.attempt import Attempt

MOST_CANDIDATES = 320
"""How many corrections are looked at most for one leaflet."""
MOST_ROWS = 180_000
"""How many rows are worked for them at most; about a second."""
MOST_READ = 5
"""How many corrected texts are read from the start at most."""
LONGEST = 40_000
"""A text with more characters is no single leaflet; nothing is mended in it."""
NEAR_WEIGHT = 0.6
"""Corrections less likely than the best by more than this are not looked for once the best puts all right."""
OFFERED = 3


@dataclass(frozen=True)
class Mended:
    """A change that was tried, with what it leaves open."""

    change: Change
    score: float
    attempt: Attempt


@dataclass
class Spent:
    """What the trials have cost so far."""

    rows: int = 0


def mend(reader: Reader, outcomes: list[Outcome], decided: list[Choice]) -> Mended | None:
    """Return the best correction where something does not add up; None where nothing was found."""
    score = total(outcomes)
    if score < 1 or len(reader.leaflet.source.text) > LONGEST:
        return None
    chosen = {one.point.key: one.taken for one in decided}
    best: tuple[float, float, int] | None = None
    spent = Spent()
    good: list[tuple[float, float, int, Change]] = []
    for tried, change in enumerate(candidates(reader, outcomes)):
        enough = best is not None and best[0] < 0.5 and change.weight > best[1] + NEAR_WEIGHT
        if tried >= MOST_CANDIDATES or enough or spent.rows > MOST_ROWS:
            break
        after = _try(reader, outcomes, change, (chosen, spent))
        if after <= max(0.5, score / 2):
            good.append((after, change.weight, tried, change))
            best = min(best, good[-1][:3]) if best else good[-1][:3]
    held = _held(reader, good, chosen, score)
    if not held:
        return None
    after, first = held[0]
    return Mended(first, after, joined([said(reader, change, left) for left, change in held]))


def _held(
    reader: Reader, good: list[tuple[float, float, int, Change]], chosen: dict[str, int], score: float
) -> list[tuple[float, Change]]:
    """Return the best that hold when the corrected text is read from the start, no two in one phrase."""
    held: list[tuple[float, Change]] = []
    read = 0
    for after, weight, _, change in sorted(good, key=lambda one: one[:3]):
        if len(held) == OFFERED or read == MOST_READ:
            break
        near = not held or (after == held[0][0] and weight <= held[0][1].weight + NEAR_WEIGHT)
        if near and change.step not in {one.step for _, one in held}:
            read += 1
            if _holds(reader, change, chosen, score):
                held.append((after, change))
    return held


def _holds(reader: Reader, change: Change, chosen: dict[str, int], score: float) -> bool:
    """Read the corrected text from the start and see that it does what was found."""
    leaflet = paper.read(change.text(reader.leaflet.source.text))
    trial = Reader(leaflet, plan(leaflet), reader.gauge)
    return len(leaflet.sizes) == len(reader.leaflet.sizes) and total(trial.work(chosen)) <= score - 1 + 1e-6


def _try(reader: Reader, outcomes: list[Outcome], change: Change, given: tuple[dict[str, int], Spent]) -> float:
    """Work the pieces that the change touches, in the sizes it touches; the rest stays as it was."""
    chosen, spent = given
    leaflet = changed_leaflet(reader.leaflet, change)
    if leaflet is None:
        return float("inf")
    made = plan(leaflet)
    trial = Reader(leaflet, made, reader.gauge)
    if len(made.tasks) != len(reader.plan.tasks):
        return float("inf")
    touched = {n for n, (a, b) in enumerate(zip(reader.plan.tasks, made.tasks, strict=True)) if a.steps != b.steps}
    if touched:
        first = min(touched)
        later = {n for n, task in enumerate(made.tasks) if n > first and refers(task)}
        trial.made = {key: hit for key, hit in reader.made.items() if key[1] not in touched | later}
    names = reader.leaflet.sizes
    sizes = [n for n, name in enumerate(names) if name in change.sizes]
    left = sum(one.score() for n, one in enumerate(outcomes) if n not in sizes)
    for n in sorted(sizes, key=lambda n: -outcomes[n].score()):
        after = trial.work_size(n, chosen).score()
        spent.rows += 150 + trial.rows + sum(len(made.tasks[n].steps) for n in touched) * 10
        trial.rows = 0
        left += after
        if after >= 1 and after > outcomes[n].score() - 0.5:
            return float("inf")
    return round(left, 4)


def mends(
    reader: Reader, outcomes: list[Outcome], decided: list[Choice]
) -> tuple[dict[Trouble, Attempt], dict[str, Attempt], Mended | None]:
    """Return what to read instead: for the troubles, for the seams by size, and the change itself."""
    found = mend(reader, outcomes, decided)
    if found is None:
        return {}, {}, None
    touched = set(found.change.sizes)
    names = reader.leaflet.sizes
    troubles = {
        one: found.attempt
        for n, outcome in enumerate(outcomes)
        if names[n] in touched
        for hands in outcome.pieces.values()
        for one in hands.troubles
    }
    seams = {name: found.attempt for n, name in enumerate(names) if name in touched}
    return troubles, seams, found
