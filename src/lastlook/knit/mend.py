"""The smallest correction that makes it add up, tried before it is offered.

A candidate changes one printed figure, in one size or in all, or one word for the side of a row; it is worked in every
size like the printed text. What leaves the least standing open wins, then the smallest change.
"""

from __future__ import annotations

import re

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass, replace

from lastlook import leaflet as paper
from lastlook.finding import Cure, Edit, Span
from lastlook.knit.assemble import plan
from lastlook.knit.choose import Choice, Outcome, Reader, decide, refers, total
from lastlook.knit.needle import Trouble
from lastlook.knit.tell.attempt import Attempt
from lastlook.leaflet import instruction as say
from lastlook.leaflet import Figure, Leaflet
from lastlook.leaflet.instruction import Step
from lastlook.piece import Meets

MOST_CANDIDATES = 260
"""How many corrections are tried at most for one leaflet."""


@dataclass(frozen=True)
class Change:
    """Figures or words of one phrase, to be read otherwise."""

    part: int
    step: Span
    spots: tuple[tuple[Span, str], ...]
    weight: float
    sizes: tuple[str, ...]
    old: tuple[float, ...] = ()
    """The values of the figure as printed; empty where a word changes."""
    new: tuple[float, ...] = ()
    phrase: Span | None = None
    """The words that are quoted; those of the step where None."""
    nth: int = 0
    """Which of the figures with these values in the step it is."""

    def figures(self, step: Step) -> Step | None:
        """Return the step with its figure changed."""
        if not self.old:
            return _other_ending(step)
        changed, seen = _swapped(step, self.old, self.new, self.nth)
        return changed if seen > self.nth and isinstance(changed, Step) else None

    def text(self, text: str, span: Span | None = None) -> str:
        """Return the text, or a stretch of it, with the change made."""
        start, end = (span.start, span.end) if span else (0, len(text))
        out, at = "", start
        for spot, new in self.spots:
            out += text[at : spot.start] + new
            at = spot.end
        return out + text[at:end]


@dataclass(frozen=True)
class Mended:
    """A change that was tried, with what it leaves open."""

    change: Change
    score: float
    attempt: Attempt


def mend(reader: Reader, outcomes: list[Outcome], decided: list[Choice]) -> Mended | None:
    """Return the best correction where something does not add up; None where nothing was found."""
    score = total(outcomes)
    if score < 1:
        return None
    chosen = {one.point.key: one.taken for one in decided}
    best: tuple[float, float, int] | None = None
    good: list[tuple[float, float, int, Change]] = []
    tried = 0
    for change in _candidates(reader, outcomes):
        if tried >= MOST_CANDIDATES or (best is not None and change.weight > best[1] + 6 and best[0] == 0):
            break
        tried += 1
        after = _try(reader, outcomes, change, chosen)
        if after <= score - 1 + 1e-6:
            good.append((after, change.weight, tried, change))
            best = min(best, good[-1][:3]) if best else good[-1][:3]
    for after, _, _, change in sorted(good, key=lambda one: one[:3])[:3]:
        if _holds(reader, change, chosen, score):
            return Mended(change, after, _said(reader, change, after))
    return None


def _holds(reader: Reader, change: Change, chosen: dict[str, int], score: float) -> bool:
    """Read the corrected text from the start and see that it does what was found."""
    leaflet = paper.read(change.text(reader.leaflet.source.text))
    trial = Reader(leaflet, plan(leaflet), reader.gauge)
    return len(leaflet.sizes) == len(reader.leaflet.sizes) and total(trial.work(chosen)) <= score - 1 + 1e-6


def _try(reader: Reader, outcomes: list[Outcome], change: Change, chosen: dict[str, int]) -> float:
    """Work the pieces that the change touches, in the sizes it touches; the rest stays as it was."""
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
    return round(rest + sum(trial.work_size(n, chosen).score() for n in sizes), 4)


def changed_leaflet(leaflet: Leaflet, change: Change) -> Leaflet | None:
    """Return the leaflet with the figures of one step changed; None where the figure has no place of its own in it."""
    part = leaflet.parts[change.part]
    out = []
    for step in part.steps:
        if step.span != change.step:
            out.append(step)
            continue
        new = change.figures(step)
        if new is None:
            return None
        out.append(new)
    parts = (*leaflet.parts[: change.part], replace(part, steps=tuple(out)), *leaflet.parts[change.part + 1 :])
    return replace(leaflet, parts=parts)


def _candidates(reader: Reader, outcomes: list[Outcome]) -> Iterator[Change]:
    """Yield changes, the likeliest first: the phrase in trouble, its piece, the pieces that share its seams."""
    sizes = reader.leaflet.sizes
    bad = [n for n, one in enumerate(outcomes) if one.score() >= 1]
    gaps = _gaps(outcomes)
    seen: set[tuple[tuple[Span, str], ...]] = set()
    out: list[Change] = []
    for number, step, near in _steps(reader, outcomes):
        for change in _of_step(reader, number, step, bad, gaps):
            if change.spots not in seen:
                seen.add(change.spots)
                out.append(replace(change, weight=change.weight + near))
    del sizes
    yield from sorted(out, key=lambda one: one.weight)


def _swapped(value: object, old: tuple[float, ...], new: tuple[float, ...], nth: int) -> tuple[object, int]:
    """Return a value with the nth figure of these values replaced, and how many there were up to it."""
    if isinstance(value, Figure):
        for factor in (1.0, 25.4, 10.0, 2.0):
            if value.values == tuple(one * factor for one in old):
                return (Figure(tuple(one * factor for one in new)) if nth == 0 else value), 1
        return value, 0
    seen = 0
    if isinstance(value, tuple):
        out = []
        for one in value:
            fresh, found = _swapped(one, old, new, nth - seen) if nth >= seen else (one, 0)
            out.append(fresh)
            seen += found
        return tuple(out), seen
    if is_dataclass(value) and not isinstance(value, type | Span):
        changes = {}
        for one in fields(value):
            inner = getattr(value, one.name)
            if not isinstance(inner, tuple | Figure) and not is_dataclass(inner):
                continue
            fresh, found = _swapped(inner, old, new, nth - seen) if nth >= seen else (inner, 0)
            seen += found
            if fresh is not inner:
                changes[one.name] = fresh
        return (replace(value, **changes) if changes else value), seen
    return value, 0


def _other_ending(step: Step) -> Step | None:
    if isinstance(step, say.WorkOn | say.RepeatRows | say.Copy | say.Shape) and step.ending.row:
        other = {"p": "k", "k": "p", "ws": "rs", "rs": "ws"}.get(step.ending.row, "")
        return replace(step, ending=replace(step.ending, row=other))
    return None


def _gaps(outcomes: list[Outcome]) -> set[int]:
    """Return the differences that stand open: each is a likely size of the slip, whole or halved."""
    out: set[int] = set()
    for outcome in outcomes:
        for hands in outcome.pieces.values():
            for one in hands.troubles[:2]:
                gap = abs(round(one.worked - one.stated))
                out |= {gap, gap // 2} if gap < 200 else set()
        for seam in outcome.seams:
            if seam.meets is Meets.NO:
                gap = abs(round(seam.difference))
                out |= {gap, gap // 2} if gap < 60 else set()
    return out - {0}


def _steps(reader: Reader, outcomes: list[Outcome]) -> Iterator[tuple[int, Step, float]]:
    """Yield the steps that may hold the slip with how far they are from the trouble."""
    troubles = [one for outcome in outcomes for hands in outcome.pieces.values() for one in hands.troubles if not one.follows]
    spans = {one.span for one in troubles}
    names = {one.piece.lower() for one in troubles}
    for outcome in outcomes:
        for seam in outcome.seams:
            if seam.meets is Meets.NO:
                names |= {seam.mate.a.piece.lower(), seam.mate.b.piece.lower(), seam.mate.b.piece.lower().split()[-1]}
                names |= {"sleeve", "back", "front"} if seam.mate.a.piece == "Body" else set()
    copied = {hands.copied for outcome in outcomes for name, hands in outcome.pieces.items() if name in names and hands.copied}
    mine = {step.span for task in reader.plan.tasks if task.name.lower() in names | copied for step in task.steps}
    last = max((span.start for span in spans), default=0)
    for number, part in enumerate(reader.leaflet.parts):
        pattern = part.kind == "pattern" and any(step.span in spans for step in part.steps)
        for step in part.steps:
            if isinstance(step, say.Nothing | say.Unread | say.Section) or not (step.span in mine or pattern):
                continue
            if spans and step.span.start > last and not any(seam.meets is Meets.NO for one in outcomes for seam in one.seams):
                continue
            yield number, step, 0.0 if step.span in spans else 0.5


def _of_step(reader: Reader, part: int, step: Step, bad: list[int], gaps: set[int]) -> Iterator[Change]:
    text, sizes = reader.leaflet.source.text, reader.leaflet.sizes
    counted: dict[tuple[int, ...], int] = {}
    for spots in paper.numbers(text, step.span, len(sizes)):
        values = [_value(text, spot) for spot in spots]
        if any(value is None for value in values):
            continue
        whole = [value or 0 for value in values]
        nth = counted.get(tuple(whole), 0)
        counted[tuple(whole)] = nth + 1
        if len(spots) == len(sizes) > 1 and len(bad) < len(sizes):
            yield from _one_size((part, step, nth), spots, whole, (bad, gaps), sizes)
        elif len(spots) == 1:
            for new, weight in _near(whole[0], gaps, whole):
                yield Change(part, step.span, ((spots[0], _written(text, spots[0], new)),), weight, sizes, (float(whole[0]),), (float(new),), nth)
        elif len(spots) == len(sizes):
            for gap in sorted(gaps | {1, 2})[:4]:
                for sign in (1, -1):
                    moved = tuple((spot, _written(text, spot, value + sign * gap)) for spot, value in zip(spots, whole, strict=True))
                    if all(value + sign * gap >= 0 for value in whole):
                        yield Change(part, step.span, moved, 2.0 + gap / 10, sizes, tuple(map(float, whole)), tuple(float(value + sign * gap) for value in whole), nth)
    yield from _words(text, part, step, sizes)


def _one_size(place: tuple[int, Step, int], spots: tuple[Span, ...], values: list[int], where: tuple[list[int], set[int]], sizes: tuple[str, ...]) -> Iterator[Change]:
    part, step, nth = place
    bad, gaps = where
    for size in bad:
        others = [value for number, value in enumerate(values) if number != size]
        for new, weight in _near(values[size], gaps, others):
            fresh = tuple(float(new if number == size else value) for number, value in enumerate(values))
            yield Change(part, step.span, ((spots[size], str(new)),), weight, (sizes[size],), tuple(map(float, values)), fresh, nth)


def _near(value: int, gaps: set[int], others: list[int]) -> Iterator[tuple[int, float]]:
    """Yield other values for a figure with how unlikely each is."""
    seen = {value}
    digits = str(value)
    swapped = int(digits[::-1]) if len(digits) == 2 and digits[::-1][0] != "0" else value
    steps = [1, -1, 2, -2] + [sign * gap for gap in sorted(gaps) for sign in (1, -1)]
    for step in steps:
        new = value + step
        if new not in seen and new >= 0 and abs(step) <= 60:
            seen.add(new)
            likely = 0.15 if abs(step) in gaps else abs(step) / 10
            yield new, likely + (0.0 if _fits(new, others) else 0.3)
    if swapped not in seen:
        yield swapped, 0.8


def _fits(value: int, others: list[int]) -> bool:
    """Whether a value lies among those of the other sizes, or next to them."""
    return not others or min(others) - 8 <= value <= max(others) + 8


def _value(text: str, spot: Span) -> int | None:
    digits = "".join(sign for sign in text[spot.start : spot.end] if sign.isdigit())
    plain = text[spot.start : spot.end].rstrip("stndrh")
    return int(digits) if digits and plain == digits and len(digits) < 5 else None


def _written(text: str, spot: Span, value: int) -> str:
    tail = text[spot.start : spot.end].lstrip("0123456789")
    if not tail:
        return str(value)
    return f"{value}" + ("th" if 10 <= value % 100 <= 20 else {1: "st", 2: "nd", 3: "rd"}.get(value % 10, "th"))


SIDES = (("wrong", "right"), ("right", "wrong"), ("p", "k"), ("P", "K"), ("purl", "knit"), ("k", "p"), ("K", "P"), ("knit", "purl"))


def _words(text: str, part: int, step: Step, sizes: tuple[str, ...]) -> Iterator[Change]:
    """Yield the other side of the row for an ending: 'wrong side row' for 'right side row'."""
    if not (isinstance(step, say.WorkOn | say.RepeatRows | say.Copy | say.Shape) and step.ending.row):
        return
    span = step.ending.span if step.ending.span.end else step.span
    for old, new in SIDES:
        match = re.search(rf"\b{old}\b(?=[\s.-]*(?:side|row))", text[span.start : span.end])
        if match:
            spot = Span(span.start + match.start(), span.start + match.end())
            yield Change(part, step.span, ((spot, new),), 0.2, sizes, phrase=span)
            return


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


def mends(reader: Reader, outcomes: list[Outcome], decided: list[Choice]) -> tuple[dict[Trouble, Attempt], dict[str, Attempt], Mended | None]:
    """Return what to read instead: for the troubles, for the seams by size, and the change itself."""
    found = mend(reader, outcomes, decided)
    if found is None:
        return {}, {}, None
    touched = set(found.change.sizes)
    names = reader.leaflet.sizes
    troubles = {one: found.attempt for n, outcome in enumerate(outcomes) if names[n] in touched for hands in outcome.pieces.values() for one in hands.troubles}
    seams = {name: found.attempt for n, name in enumerate(names) if name in touched}
    return troubles, seams, found


__all__ = ["Change", "Mended", "decide", "mend", "mends"]
