"""A crochet border: its first row is worked along edges, each later one uses up the row below it."""

from __future__ import annotations

from lastlook.finding import Span
from lastlook.knit.needle.live import Event
from lastlook.knit.needle.state import Count, Hands
from lastlook.leaflet.instruction import Group, Item, RowOf, Run, Taken, Work


def border_row(hands: Hands, step: RowOf) -> None:
    """Work one row of the border."""
    hands.done(step)
    run = step.run
    if step.like:
        entry = hands.book.get(step.like[0])
        run = entry.run if entry else ()
    first = not hands.parts
    if not run or all(
        (isinstance(item, Work) and item.name == "turnchain") or not isinstance(item, Work | Group | Taken)
        for item in run
    ):
        return
    if first and any(isinstance(item, Taken) for item in run):
        _foundation(hands, step, run)
        return
    if first:
        hands.begin(0)
        hands.cast_on = None
        return
    _later(hands, step, run)


def _foundation(hands: Hands, step: RowOf, run: Run) -> None:
    hands.begin(0)
    total = 0
    for item in run:
        if isinstance(item, Taken):
            count = hands.at(item.n)
            hands.sides.append(count)
            hands.picked.append((item.source, count))
            total += count
        elif isinstance(item, Work) and item.name == "corner":
            hands.corners += 1
            total += hands.at(item.n)
        elif isinstance(item, Work) and item.n is not None:
            total += hands.at(item.n) * item.gives
    hands.cast_on = total
    hands.add(0, total, (Event("pick up", "inside", total),), step.span, "crochet", hands.words_of(step.span))


def _later(hands: Hands, step: RowOf, run: Run) -> None:
    live = hands.live
    number = 0
    corner = next((spot for spot, item in enumerate(run) if isinstance(item, Work) and item.name == "corner-end"), None)
    if corner is not None and hands.sides:
        used, holes = _used(hands, run[: corner + 1])
        hands.crochet_holes = holes
        _check(hands, step.span, used, hands.sides[0])
    elif not any(isinstance(item, Work) and item.reach for item in run):
        used, holes = _used(hands, run)
        hands.crochet_holes = max(holes, hands.crochet_holes)
        if not any(isinstance(item, Group) and item.times is None for item in run):
            _check(hands, step.span, used, live.n)
    for item in run:
        if isinstance(item, Work) and item.name == "corner":
            number += hands.corners * (hands.at(item.n) - 1)
    hands.add(
        live.n,
        live.n + number,
        (Event("inc", "inside", number),) if number else (),
        step.span,
        "crochet",
        hands.words_of(step.span),
    )


def _check(hands: Hands, span: Span, used: int, there: int) -> None:
    if used != there and there:
        hands.trouble("row-short" if used < there else "row-long", span, used, there, "crochet")
    hands.counts.append(Count(span, used, there, hands.live.number, "uses"))


def _used(hands: Hands, run: tuple[Item, ...]) -> tuple[int, int]:
    """Return how many stitches of the row below a run uses, and how many holes it leaves."""
    total = holes = 0
    for item in run:
        if isinstance(item, Group):
            used, inner = _used(hands, item.items)
            times = hands.at(item.times) if item.times else 1
            if item.count == "unclear":
                times += hands.choose("times", item.span, (
                    (f"worked once and {times} times more: {times + 1} in all", 1), (f"{times} times in all", 0),
                ))  # fmt: skip
            elif item.count == "more":
                times += 1
            total += used * times
            holes += inner * times
        elif isinstance(item, Work):
            total += hands.at(item.n) * item.uses if item.n is not None else 0
            holes += item.name == "skip"
    return total, holes
