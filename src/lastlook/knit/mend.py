"""The smallest correction that makes it add up, tried before it is offered.

A candidate changes one printed figure, in one size or in all, or one word for the side of a row; it is worked in every
size like the printed text. What leaves the least standing open wins, then the smallest change.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lastlook import leaflet as paper
from lastlook.finding import Cure, Edit, Span
from lastlook.knit.assemble import plan
from lastlook.knit.choose import Choice, Outcome, Reader, decide, total
from lastlook.knit.needle import Trouble
from lastlook.knit.tell.attempt import Attempt
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step
from lastlook.piece import Meets

MOST_CANDIDATES = 150
"""How many corrections are tried at most for one leaflet."""


@dataclass(frozen=True)
class Change:
    """Figures or words of one phrase, to be read otherwise."""

    part: int
    step: Span
    spots: tuple[tuple[Span, str], ...]
    weight: float
    sizes: tuple[str, ...]

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
    found: Change | None = None
    tried = 0
    for change in _candidates(reader, outcomes):
        if tried >= MOST_CANDIDATES or (best is not None and change.weight > best[1] + 6 and best[0] == 0):
            break
        tried += 1
        after = _try(reader, change, chosen)
        rank = (after, change.weight, tried)
        if after <= score - 1 + 1e-6 and (best is None or rank < best):
            best, found = rank, change
    if found is None or best is None:
        return None
    return Mended(found, best[0], _said(reader, found, best[0]))


def _try(reader: Reader, change: Change, chosen: dict[str, int]) -> float:
    text = reader.leaflet.source.text
    changed = change.text(text)
    same = len(changed) == len(text)
    leaflet = paper.reread(reader.leaflet, changed, change.part) if same else paper.read(changed)
    made = plan(leaflet)
    trial = Reader(leaflet, made, reader.gauge)
    if same:
        first = next((n for n, (a, b) in enumerate(zip(reader.plan.tasks, made.tasks, strict=False)) if a.steps != b.steps), 0)
        trial.made = {key: hit for key, hit in reader.made.items() if isinstance(key[1], int) and key[1] < first}
    return total(trial.work(chosen))


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
                out.append(Change(change.part, change.step, change.spots, change.weight + near, change.sizes))
    del sizes
    yield from sorted(out, key=lambda one: one.weight)


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
    for spots in paper.numbers(text, step.span, len(sizes)):
        values = [_value(text, spot) for spot in spots]
        if any(value is None for value in values):
            continue
        whole = [value or 0 for value in values]
        if len(spots) == len(sizes) > 1 and len(bad) < len(sizes):
            yield from _one_size(part, step, spots, whole, bad, gaps, sizes)
        elif len(spots) == 1:
            for new, weight in _near(whole[0], gaps, whole):
                yield Change(part, step.span, ((spots[0], _written(text, spots[0], new)),), weight, sizes)
        elif len(spots) == len(sizes):
            for gap in sorted(gaps | {1, 2})[:4]:
                for sign in (1, -1):
                    moved = tuple((spot, _written(text, spot, value + sign * gap)) for spot, value in zip(spots, whole, strict=True))
                    if all(value + sign * gap >= 0 for value in whole):
                        yield Change(part, step.span, moved, 2.0 + gap / 10, sizes)
    yield from _words(text, part, step, sizes)


def _one_size(part: int, step: Step, spots: tuple[Span, ...], values: list[int], bad: list[int], gaps: set[int], sizes: tuple[str, ...]) -> Iterator[Change]:
    for size in bad:
        others = [value for number, value in enumerate(values) if number != size]
        for new, weight in _near(values[size], gaps, others):
            yield Change(part, step.span, ((spots[size], str(new)),), weight, (sizes[size],))


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
            yield new, abs(step) / 10 + (0.0 if _fits(new, others) else 0.3)
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


def _words(text: str, part: int, step: Step, sizes: tuple[str, ...]) -> Iterator[Change]:
    """Yield the other side of the row for an ending: 'wrong side row' for 'right side row'."""
    ends = isinstance(step, say.WorkOn | say.RepeatRows) and bool(step.ending.row)
    if not ends:
        return
    words = text[step.span.start : step.span.end]
    for old, new in (("wrong side", "right side"), ("right side", "wrong side"), ("wrong-side", "right-side"), ("p row", "k row"), ("P. row", "K. row"), ("purl row", "knit row"), ("k row", "p row"), ("knit row", "purl row")):
        spot = words.rfind(old)
        if spot >= 0:
            start = step.span.start + spot
            yield Change(part, step.span, ((Span(start, start + len(old)), new),), 0.2, sizes)
            return
        flat = " ".join(words.split())
        if old in flat:
            first, _, second = old.partition(" ")
            at = words.rfind(first)
            if at >= 0 and first != new.partition(" ")[0] and words[at + len(first) :].split()[:1] == [second]:
                start = step.span.start + at
                yield Change(part, step.span, ((Span(start, start + len(first)), new.partition(" ")[0]),), 0.2, sizes)
                return


def _said(reader: Reader, change: Change, left: float) -> Attempt:
    text, sizes = reader.leaflet.source.text, reader.leaflet.sizes
    old = ", ".join(text[spot.start : spot.end] for spot, _ in change.spots)
    new = ", ".join(value for _, value in change.spots)
    phrase = " ".join(text[change.step.start : change.step.end].split())
    lead = f"In size {change.sizes[0]}, read" if len(change.sizes) == 1 < len(sizes) else "Read"
    context = _context(text, change)
    others = [name for name in sizes if name not in change.sizes]
    then = "everything then adds up" if left < 1 else "this much then adds up"
    cross = f"; size {' and '.join(others)} works as printed" if others and len(change.sizes) == 1 else ""
    piece = _piece_of(reader, change)
    edit = Edit(f"corrections.{piece}: {phrase}", change.text(text, change.step))
    sentence = f"{lead} {new} for {old}{context}: {then}{cross}."
    return Attempt(sentence, (Cure(sentence, (edit,)),))


def _context(text: str, change: Change) -> str:
    """Show the words round the figure as they would read: '(K 2, * yo)'."""
    spot = change.spots[0][0]
    start = max(change.step.start, text.rfind(" ", 0, max(0, spot.start - 14)) + 1)
    stop = text.find(" ", min(len(text), change.spots[-1][0].end + 12))
    piece = change.text(text, Span(start, min(change.step.end, stop if stop > 0 else len(text))))
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
