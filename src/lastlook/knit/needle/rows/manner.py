"""Going on in the same manner: the last row that shaped, again and again, with so many stitches more or less each time.

How many rows lie between is printed, or is what lay between the last two rows that shaped.
"""

from __future__ import annotations

from dataclasses import replace

from lastlook.knit.needle.fabric import fabric_row
from lastlook.knit.needle.rows.heel import is_turning, turn_on
from lastlook.knit.needle.sight import lose, restart
from lastlook.knit.needle.solve import Solved, solve
from lastlook.knit.needle.state import Count, Hands, Recent
from lastlook.leaflet import Figure
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Group, Item, Run, Step, Work

MOST = 400


def progress(hands: Hands, step: Step) -> None:
    """Continue in the same manner until the goal."""
    if not isinstance(step, say.Progress) or not hands.parts or not hands.recent:
        return
    if is_turning(hands):
        hands.done(step)
        turn_on(hands, step.span, step.goal, step.ending)
        return
    shaped = [one for one in hands.recent if one.run and _is_shaped(one.run)]
    goal = _goal(hands, step, shaped)
    if not shaped or (goal is None and step.goal.times is None):
        lose(hands, step.span)
        return
    hands.done(step)
    _on(hands, step, shaped, goal)
    if goal is None:
        return
    live = hands.live
    stated = hands.at(step.goal.until) if step.goal.until is not None and not step.goal.until_what else goal
    hands.counts.append(Count(step.span, stated, live.n, live.number, "until"))
    if live.n == goal:
        restart(hands, goal)
    else:
        hands.trouble("goal-unreachable", step.span, live.n, goal)
        hands.off_by.add(live.n - goal)


def _on(hands: Hands, step: say.Progress, shaped: list[Recent], goal: int | None) -> None:
    live, run = hands.live, _sized(shaped[-1].run, hands.world.size)
    change, gap = step.change or _change(hands, shaped), _gap(hands, step, shaped)
    last = _row_of(hands, shaped[-1])
    plain = next((one for one in reversed(hands.recent) if one.run and not _is_shaped(one.run)), None)
    for _ in range(MOST if goal is not None else hands.at(step.goal.times)):
        if live.n == goal:
            return
        found = _next(hands, run, change)
        if found is None:
            return
        if goal is not None and (live.n - goal) * (live.n + found[1].gives - found[1].used - goal) < 0:
            return
        while live.number - last < gap - 1:
            fabric_row(hands, (), plain.span if plain else step.span)
        run, solved = found
        hands.add(
            min(solved.used, live.n), solved.gives, tuple(solved.events), step.span, words=hands.words_of(step.span)
        )
        last = live.number


def _next(hands: Hands, run: Run, change: int) -> tuple[Run, Solved] | None:
    """Return the next row that shapes: every longest stretch is changed, or only the first where that fits."""
    live = hands.live
    for one in (_stepped(run, change, each=99), _stepped(run, change, each=1), run):
        solved = solve(one, live.n - live.behind, hands.world.size, live.start_edge())
        if solved.left == 0 and not solved.spare and solved.gives != solved.used:
            return one, solved
    return None


def _goal(hands: Hands, step: say.Progress, shaped: list[Recent]) -> int | None:
    """Return how many stitches there are in the end; a count between the shapings is turned into one of all."""
    if step.goal.until is None:
        return None
    until = hands.at(step.goal.until)
    if not step.goal.until_what:
        return until
    after = hands.following
    if isinstance(after, say.Printed) and after.of == "":
        return hands.at(after.n)
    if not shaped:
        return None
    inner = max((_plain(item, hands.world.size) for item in shaped[-1].run), default=0)
    return hands.live.n + until - inner - 2


def _plain(item: Item, size: int) -> int:
    return item.n.whole(size) if isinstance(item, Work) and item.uses == item.gives == 1 and item.n is not None else 0


def _flat(run: Run) -> list[Item]:
    return [inner for item in run for inner in (_flat(item.items) if isinstance(item, Group) else [item])]


def _change(hands: Hands, shaped: list[Recent]) -> int:
    """Return by how much the longest stretch changed from one row that shaped to the next."""
    if len(shaped) < 2:
        return 0
    size = hands.world.size
    before, after = ([_plain(item, size) for item in _flat(one.run)] for one in shaped[-2:])
    if len(before) != len(after):
        return 0
    return next((b - a for a, b in zip(before, after, strict=True) if a != b), 0)


def _gap(hands: Hands, step: say.Progress, shaped: list[Recent]) -> int:
    if step.every is not None:
        return max(1, hands.at(step.every))
    numbers = [_row_of(hands, one) for one in shaped[-2:]]
    if len(numbers) == 2 and 0 < numbers[0] < numbers[1]:
        return numbers[1] - numbers[0]
    return max(1, hands.live.number - numbers[-1] + 1)


def _row_of(hands: Hands, entry: Recent) -> int:
    """Return the number of the last row worked from these words."""
    return next((row.number for row in reversed(hands.live.rows) if row.span == entry.span), hands.live.number)


def _is_shaped(run: Run) -> bool:
    for item in run:
        if isinstance(item, Work) and item.uses != item.gives:
            return True
        if isinstance(item, Group) and _is_shaped(item.items):
            return True
    return False


def _sized(run: Run, size: int) -> Run:
    """Return the run with the figures of one size only."""
    out: list[Item] = []
    for item in run:
        if isinstance(item, Group):
            out.append(replace(item, items=_sized(item.items, size)))
        elif isinstance(item, Work) and item.n is not None:
            out.append(replace(item, n=Figure((float(item.n.whole(size)),))))
        else:
            out.append(item)
    return tuple(out)


def _stepped(run: Run, change: int, *, each: int) -> Run:
    """Return the run with its longest plain stretches changed, as many of them as `each`."""
    most = max(
        (item.n.values[0] for item in run if isinstance(item, Work) and item.n and item.uses == item.gives == 1),
        default=-1.0,
    )
    out: list[Item] = []
    for item in run:
        if isinstance(item, Group) and most < 2:
            out.append(replace(item, items=_stepped(item.items, change, each=each)))
        elif isinstance(item, Work) and item.n and item.uses == item.gives == 1 and item.n.values[0] == most and each:
            each -= 1
            out.append(replace(item, n=Figure(tuple(max(0.0, value + change) for value in item.n.values))))
        else:
            out.append(item)
    return tuple(out)
