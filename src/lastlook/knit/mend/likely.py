"""Which corrections are likely, the likeliest first: small ones, near the trouble, of the size of the difference."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from lastlook import leaflet as paper
from lastlook.finding import Span
from lastlook.knit.choose import Outcome, Reader
from lastlook.knit.mend.change import Change
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step
from lastlook.piece import Meets

NO_STITCHES = frozenset({"length-too-short", "buttonholes-do-not-fit", "wrong-edge", "row-not-there"})
"""Troubles whose two figures are no stitches, so that their difference says nothing of a slip."""


def candidates(reader: Reader, outcomes: list[Outcome]) -> Iterator[Change]:
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


def _steps(reader: Reader, outcomes: list[Outcome]) -> Iterator[tuple[int, Step, float]]:
    """Yield the steps that may hold the slip with how far they are from the trouble."""
    troubles = [
        one for outcome in outcomes for hands in outcome.pieces.values() for one in hands.troubles if not one.follows
    ]
    spans = {one.span for one in troubles}
    names = {one.piece.lower() for one in troubles}
    for outcome in outcomes:
        for seam in outcome.seams:
            if seam.meets is Meets.NO:
                names |= {seam.mate.a.piece.lower(), seam.mate.b.piece.lower(), seam.mate.b.piece.lower().split()[-1]}
                names |= {"sleeve", "back", "front"} if seam.mate.a.piece == "Body" else set()
    copied = {
        hands.copied for outcome in outcomes for name, hands in outcome.pieces.items() if name in names and hands.copied
    }
    mine = {step.span for task in reader.plan.tasks if task.name.lower() in names | copied for step in task.steps}
    last = max((span.start for span in spans), default=0)
    before = _just_before(reader, spans)
    for number, part in enumerate(reader.leaflet.parts):
        pattern = part.kind == "pattern" and any(step.span in spans for step in part.steps)
        for step in part.steps:
            if isinstance(step, say.Nothing | say.Unread | say.Section) or not (step.span in mine or pattern):
                continue
            if (
                spans
                and step.span.start > last
                and not any(seam.meets is Meets.NO for one in outcomes for seam in one.seams)
            ):
                continue
            yield number, step, 0.0 if step.span in spans else 0.2 if step.span in before else 0.5


def _of_step(reader: Reader, part: int, step: Step, bad: list[int], gaps: set[int]) -> Iterator[Change]:
    text, sizes = reader.leaflet.source.text, reader.leaflet.sizes
    counted: dict[tuple[int, ...], int] = {}
    listed = paper.numbers(text, step.span, len(sizes))
    others = [_value(text, spots[0]) for spots in listed if len(spots) == 1]
    for spots in listed:
        values = [_value(text, spot) for spot in spots]
        if any(value is None for value in values):
            continue
        whole = [value or 0 for value in values]
        nth = counted.get(tuple(whole), 0)
        counted[tuple(whole)] = nth + 1
        if len(spots) == len(sizes) > 1 and len(bad) < len(sizes):
            yield from _one_size((part, step, nth), spots, whole, (bad, gaps), sizes)
        elif len(spots) == 1:
            for new, likely in _near(whole[0], gaps, whole):
                weight = likely - 0.05 * (new in others) + 0.05 * (others.count(whole[0]) > 1)
                yield Change(
                    part,
                    step.span,
                    ((spots[0], _written(text, spots[0], new)),),
                    weight,
                    sizes,
                    (float(whole[0]),),
                    (float(new),),
                    nth=nth,
                )
        elif len(spots) == len(sizes):
            for gap in sorted(gaps | {1, 2})[:4]:
                for sign in (1, -1):
                    moved = tuple(
                        (spot, _written(text, spot, value + sign * gap))
                        for spot, value in zip(spots, whole, strict=True)
                    )
                    if all(value + sign * gap >= 0 for value in whole):
                        yield Change(
                            part,
                            step.span,
                            moved,
                            2.0 + gap / 10,
                            sizes,
                            tuple(map(float, whole)),
                            tuple(float(value + sign * gap) for value in whole),
                            nth=nth,
                        )
    yield from _words(text, part, step, sizes)


def _one_size(
    place: tuple[int, Step, int],
    spots: tuple[Span, ...],
    values: list[int],
    where: tuple[list[int], set[int]],
    sizes: tuple[str, ...],
) -> Iterator[Change]:
    part, step, nth = place
    bad, gaps = where
    for size in bad:
        others = [value for number, value in enumerate(values) if number != size]
        for new, weight in _near(values[size], gaps, others):
            fresh = tuple(float(new if number == size else value) for number, value in enumerate(values))
            yield Change(
                part,
                step.span,
                ((spots[size], str(new)),),
                weight,
                (sizes[size],),
                tuple(map(float, values)),
                fresh,
                nth=nth,
            )


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
            likely = 0.05 if abs(step) in gaps else abs(step) / 10
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
