"""Which corrections are likely, the likeliest first: small ones, near the trouble, of the size of the difference.

A *weight* is how unlikely a correction is. A row that is named wrongly ('as 4th row') and a cadence that is off by two
rows are common slips of print, for all that is counted by them stays as printed; 'dec 1 st' for two is a rare one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from lastlook.finding import Span
from lastlook.knit.choose import Outcome, Reader
from lastlook.knit.mend.change import FACTORS, Change, places
from lastlook.knit.mend.figures import Printed, as_printed, printed
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step
from lastlook.piece import Meets

NO_STITCHES = frozenset({"length-too-short", "buttonholes-do-not-fit", "wrong-edge", "row-not-there"})
"""Troubles whose two figures are no stitches, so that their difference says nothing of a slip."""
INTERVALS = frozenset({"every", "alternate"})
REFERENCES = frozenset({"like"})
MOVES: dict[str, tuple[tuple[float, float], ...]] = {
    "interval": ((2, 0.1), (-2, 0.1), (1, 0.3), (-1, 0.3), (4, 0.4), (-4, 0.4)),
    "reference": ((-2, -0.2), (2, -0.2), (-1, 0.0), (1, 0.0), (-3, 0.1), (3, 0.1)),
    "length": ((1, 0.15), (-1, 0.15), (0.5, 0.2), (-0.5, 0.2), (2, 0.3), (-2, 0.3), (3, 0.5), (-3, 0.5)),
}
"""By how much a figure of this sort may be off, and how unlikely that is."""


@dataclass(frozen=True)
class _Near:
    """A step that may hold the slip."""

    part: int
    step: Step
    figures: list[Printed]
    far: float
    """How far from the trouble it is."""


def candidates(reader: Reader, outcomes: list[Outcome]) -> list[Change]:
    """Return changes, the likeliest first: the phrase in trouble, its piece, the pieces that share its seams."""
    bad = [n for n, one in enumerate(outcomes) if one.score() >= 1]
    gaps = _gaps(outcomes)
    seen: set[tuple[tuple[Span, str], ...]] = set()
    out: list[Change] = []
    for near in _steps(reader, outcomes):
        for change in _of_step(reader, near, bad, gaps):
            if change.spots not in seen:
                seen.add(change.spots)
                out.append(replace(change, weight=change.weight + near.far))
    return sorted(out, key=lambda one: one.weight)


def _gaps(outcomes: list[Outcome]) -> set[int]:
    """Return the differences that stand open: each is a likely size of the slip, whole or halved."""
    out: set[int] = set()
    for outcome in outcomes:
        for hands in outcome.pieces.values():
            for one in hands.troubles[:2]:
                if one.kind in NO_STITCHES:
                    continue
                gap = abs(round(one.worked - one.stated))
                out |= {gap, gap // 2} if gap < 200 else set()
        for seam in outcome.seams:
            if seam.meets is Meets.NO:
                gap = abs(round(seam.difference))
                out |= {gap, gap // 2} if gap < 60 else set()
    return out - {0}


def _just_before(reader: Reader, spans: set[Span]) -> set[Span]:
    """Return the instruction before each that is in trouble: a count that is wrong was often made there."""
    out: set[Span] = set()
    for part in reader.leaflet.parts:
        moving = [step.span for step in part.steps if not isinstance(step, say.Nothing | say.Unread | say.Section)]
        out |= {a for a, b in pairwise(moving) if b in spans}
    return out


def _names(outcomes: list[Outcome]) -> set[str]:
    """Return the pieces that are in trouble, and those that share a seam that does not meet."""
    names = {one.piece.lower() for outcome in outcomes for hands in outcome.pieces.values() for one in hands.troubles}
    for outcome in outcomes:
        for seam in outcome.seams:
            if seam.meets is Meets.NO:
                names |= {seam.mate.a.piece.lower(), seam.mate.b.piece.lower(), seam.mate.b.piece.lower().split()[-1]}
                names |= {"sleeve", "back", "front"} if seam.mate.a.piece == "Body" else set()
    copied = {hands.copied for one in outcomes for name, hands in one.pieces.items() if name in names and hands.copied}
    return names | copied


def _steps(reader: Reader, outcomes: list[Outcome]) -> Iterator[_Near]:
    """Yield the steps that may hold the slip with how far they are from the trouble."""
    troubles = [
        one for outcome in outcomes for hands in outcome.pieces.values() for one in hands.troubles if not one.follows
    ]
    spans = {one.span for one in troubles}
    names = _names(outcomes)
    mine = {step.span for task in reader.plan.tasks if task.name.lower() in names for step in task.steps}
    last = max((span.start for span in spans), default=0)
    apart = any(seam.meets is Meets.NO for one in outcomes for seam in one.seams)
    before = _just_before(reader, spans)
    for number, part in enumerate(reader.leaflet.parts):
        pattern = part.kind == "pattern" and any(step.span in spans for step in part.steps)
        if not pattern and not any(step.span in mine for step in part.steps):
            continue
        for step, figures in printed(reader.leaflet, number):
            if isinstance(step, say.Nothing | say.Unread | say.Section) or not (step.span in mine or pattern):
                continue
            if not spans or step.span.start <= last or apart:
                far = 0.0 if step.span in spans else 0.2 if step.span in before else 0.5
                yield _Near(number, step, figures, far)


def _of_step(reader: Reader, near: _Near, bad: list[int], gaps: set[int]) -> Iterator[Change]:
    text, sizes = reader.leaflet.source.text, reader.leaflet.sizes
    counted: dict[tuple[float, ...], int] = {}
    single = [one.values[0] for one in near.figures if len(one.values) == 1]
    for one in near.figures:
        nth = counted.get(one.values, 0)
        counted[one.values] = nth + 1
        sort, rare = _sort(near.step, one.values, nth)
        if len(one.values) == len(sizes) > 1 and len(bad) < len(sizes):
            for size in bad:
                for new, weight in _in_list(one.values, size, sort, gaps):
                    fresh = tuple(new if number == size else value for number, value in enumerate(one.values))
                    smooth = 0.1 * (_roughness(fresh) >= _roughness(one.values))
                    yield _change(text, near, one, (fresh, nth), weight + smooth + rare, (sizes[size],))
        elif len(one.values) == 1:
            for new, likely in _near(one.values[0], sort, gaps, list(one.values)):
                weight = likely - 0.05 * (new in single) + 0.05 * (single.count(one.values[0]) > 1) + rare
                yield _change(text, near, one, ((new,), nth), weight, sizes)
        elif len(one.values) == len(sizes):
            for move in _moves(sort, gaps):
                if all(value + move >= 0 for value in one.values):
                    moved = tuple(value + move for value in one.values)
                    yield _change(text, near, one, (moved, nth), 1.0 + abs(move) / 10 + rare, sizes)
    yield from _words(text, near, sizes)


def _moves(sort: str, gaps: set[int]) -> list[float]:
    """Return by how much a figure may be off in every size at once."""
    if sort == "length":
        return [move for move, _ in MOVES["length"][:4]]
    return [float(gap * sign) for gap in sorted(gaps | {1, 2})[:4] for sign in (1, -1)]


def _change(
    text: str, near: _Near, one: Printed, new: tuple[tuple[float, ...], int], weight: float, sizes: tuple[str, ...]
) -> Change:  # fmt: skip
    values, nth = new
    spots = tuple(
        (spot, as_printed(text[spot.start : spot.end], value))
        for spot, value, old in zip(one.spots, values, one.values, strict=True)
        if value != old
    )
    return Change(near.part, near.step.span, spots, weight, sizes, one.values, values, nth=nth)


def _sort(step: Step, values: tuple[float, ...], nth: int) -> tuple[str, float]:
    """Return what a figure says, 'count' where nothing else is known, and how rarely print is wrong in such a one."""
    alike = [
        name
        for name, held in places(step)
        if any(held == tuple(value * factor for value in values) for factor in FACTORS)
    ]
    if nth >= len(alike):
        return "count", 0.0
    name = alike[nth]
    if name in INTERVALS:
        return "interval", 0.0
    if name in ("mm", "first"):
        return "length" if name == "mm" else "interval", 0.1
    if name in REFERENCES or (name == "rows" and isinstance(step, say.RepeatRows) and step.rows):
        return "reference", 0.0
    if isinstance(step, say.Shape) and name == "n":
        return "count", 0.6 if step.edge not in ("evenly", "inside") else 0.0
    if isinstance(step, say.BindOffs) and name == "rows":
        return "count", 0.4
    return "count", 0.0


def _near(value: float, sort: str, gaps: set[int], others: list[float]) -> Iterator[tuple[float, float]]:
    """Yield other values for a figure with how unlikely each is."""
    seen = {value}
    if sort in MOVES:
        for move, weight in MOVES[sort]:
            if value + move > 0:
                yield value + move, weight
        return
    if not float(value).is_integer() or value > 999:
        return
    digits = str(int(value))
    steps = [1, -1, 2, -2] + [sign * gap for gap in sorted(gaps) for sign in (1, -1)]
    for step in steps:
        new = value + step
        if new not in seen and new >= 0 and abs(step) <= 60:
            seen.add(new)
            likely = 0.05 if abs(step) in gaps else abs(step) / 10
            yield new, likely + (0.0 if _fits(new, others) else 0.3) + (0.0 if new else 0.4)
    turned = float(digits[::-1])
    if len(digits) == 2 and digits[1] != "0" and turned not in seen:
        yield turned, 0.8


def _in_list(
    values: tuple[float, ...], size: int, sort: str, gaps: set[int]
) -> Iterator[tuple[float, float]]:  # fmt: skip
    """Yield other values for one size: those near its own, and those that its neighbours lead to expect."""
    others = [value for number, value in enumerate(values) if number != size]
    seen: set[float] = set()
    for new, weight in _near(values[size], sort, gaps, others):
        seen.add(new)
        yield new, weight
    beside = [values[at] for at in (size - 1, size + 1) if 0 <= at < len(values)]
    for new in (*beside, sum(beside) / len(beside)):
        if new not in seen and new != values[size] and (new.is_integer() or sort == "length"):
            seen.add(new)
            yield new, 0.3


def _roughness(values: tuple[float, ...]) -> float:
    """Return how unevenly figures go from size to size: 0 where every step is alike."""
    steps = [b - a for a, b in pairwise(values)]
    return sum(abs(b - a) for a, b in pairwise(steps))


def _fits(value: float, others: list[float]) -> bool:
    """Whether a value lies among those of the other sizes, or next to them."""
    return not others or min(others) - 8 <= value <= max(others) + 8


SIDES = (
    ("wrong", "right"),
    ("right", "wrong"),
    ("p", "k"),
    ("P", "K"),
    ("purl", "knit"),
    ("k", "p"),
    ("K", "P"),
    ("knit", "purl"),
)


def _words(text: str, near: _Near, sizes: tuple[str, ...]) -> Iterator[Change]:
    """Yield the other side of the row for an ending: 'wrong side row' for 'right side row'."""
    step = near.step
    if not (isinstance(step, say.WorkOn | say.RepeatRows | say.Copy | say.Shape) and step.ending.row):
        return
    span = step.ending.span if step.ending.span.end else step.span
    for old, new in SIDES:
        match = re.search(rf"\b{old}\b(?=[\s.-]*(?:side|row))", text[span.start : span.end])
        if match:
            spot = Span(span.start + match.start(), span.start + match.end())
            yield Change(near.part, step.span, ((spot, new),), 0.2, sizes, phrase=span)
            return
