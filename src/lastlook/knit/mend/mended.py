"""Corrections tried: each is worked like the printed text; what leaves the least standing open wins, then the smallest.

The one that is offered is read once more from the corrected text, from the start.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook import leaflet as paper
from lastlook.finding import Cure, Edit, Span
from lastlook.knit.assemble import plan
from lastlook.knit.choose import Choice, Outcome, Reader, refers, total
from lastlook.knit.mend.change import Change, changed_leaflet
from lastlook.knit.mend.likely import candidates
from lastlook.knit.needle import Trouble
from lastlook.knit.tell.attempt import Attempt

MOST_CANDIDATES = 160
"""How many corrections are tried at most for one leaflet."""
MOST_ROWS = 130_000
"""How many rows are worked for them at most."""
LONGEST = 40_000
"""A text with more characters is no single leaflet; nothing is mended in it."""
NEAR_WEIGHT = 0.6
"""Corrections less likely than the best by more than this are not looked for once the best puts all right."""


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
    held: list[tuple[float, Change]] = []
    for after, weight, _, change in sorted(good, key=lambda one: one[:3])[:8]:
        if len(held) == 3:
            break
        near = not held or (after == held[0][0] and weight <= held[0][1].weight + NEAR_WEIGHT)
        if near and change.step not in {one.step for _, one in held} and _holds(reader, change, chosen, score):
            held.append((after, change))
    if not held:
        return None
    after, first = held[0]
    said = [_said(reader, change, left) for left, change in held]
    return Mended(first, after, _joined(said))


def _joined(said: list[Attempt]) -> Attempt:
    """Offer the best first, and the others that do as well."""
    if len(said) == 1:
        return said[0]
    also = "; or ".join(
        one.say[0].lower() + one.say[1:].split(": everything")[0].split(": this much")[0] for one in said[1:]
    )
    return Attempt(
        f"{said[0].say.removesuffix('.')}. Just as well: {also}.", tuple(cure for one in said for cure in one.cures)
    )


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
    rest = sum(one.score() for n, one in enumerate(outcomes) if n not in sizes)
    left = rest + sum(trial.work_size(n, chosen).score() for n in sizes)
    spent.rows += trial.rows + 100 + sum(len(made.tasks[n].steps) for n in touched) * 10
    return round(left, 4)


def _said(reader: Reader, change: Change, left: float) -> Attempt:
    text, sizes = reader.leaflet.source.text, reader.leaflet.sizes
    old = ", ".join(text[spot.start : spot.end] for spot, _ in change.spots)
    new = ", ".join(value for _, value in change.spots)
    span = change.phrase or change.step
    phrase = " ".join(text[span.start : span.end].split())
    lead = f"In size {change.sizes[0]}, read" if len(change.sizes) == 1 < len(sizes) else "Read"
    context = _context(text, change)
    others = [name for name in sizes if name not in change.sizes]
    then = "everything then adds up" if left < 1 else "this much then adds up"
    cross = f"; size {' and '.join(others)} works as printed" if others and len(change.sizes) == 1 else ""
    piece = _piece_of(reader, change)
    edit = Edit(f"corrections.{piece}: {phrase}", change.text(text, span))
    sentence = f"{lead} {new} for {old}{context}: {then}{cross}."
    return Attempt(sentence, (Cure(sentence, (edit,)),))


def _context(text: str, change: Change) -> str:
    """Show the words round the figure as they would read: '(K 2, * yo)'."""
    spot = change.spots[0][0]
    words = change.phrase or change.step
    start = max(words.start, text.rfind(" ", 0, max(0, spot.start - 14)) + 1)
    stop = text.find(" ", min(len(text), change.spots[-1][0].end + 12))
    piece = change.text(text, Span(start, max(spot.end, min(words.end, stop if stop > 0 else len(text)))))
    return f" (“{' '.join(piece.split())}”)"


def _piece_of(reader: Reader, change: Change) -> str:
    for task in reader.plan.tasks:
        if any(step.span == change.step for step in task.steps):
            return task.name.lower()
    return reader.leaflet.parts[change.part].name.lower()


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
