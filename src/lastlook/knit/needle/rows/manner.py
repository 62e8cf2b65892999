"""Going on in the same manner with one stitch more or less each time; heels."""

from __future__ import annotations

from dataclasses import replace

from lastlook.knit.needle.fabric import fabric_row
from lastlook.knit.needle.rows.ahead import short_row
from lastlook.knit.needle.sight import lose, regain
from lastlook.knit.needle.solve import fixed_uses, solve
from lastlook.knit.needle.state import Count, Hands
from lastlook.leaflet import Figure
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Group, Item, RowOf, Run, Step, Work


def progress(hands: Hands, step: Step) -> None:
    """Continue in the same manner with one stitch more or less each time."""
    if not isinstance(step, say.Progress) or not hands.parts or not hands.recent:
        return
    if step.change > 0 and step.goal.until_what != "all":
        lose(hands, step.span)
        return
    hands.done(step)
    if step.goal.until_what == "all":
        _turns(hands, step)
        return
    shaped = [
        entry
        for entry in hands.recent
        if entry.run and fixed_uses(entry.run, hands.world.size) and _is_shaped(entry.run)
    ]
    if not shaped or step.goal.until is None:
        return
    last = shaped[-1]
    between = next((entry for entry in reversed(hands.recent) if entry.run and not _is_shaped(entry.run)), None)
    goal = hands.at(step.goal.until)
    run = last.run
    every_other = hands.recent[-1] is last and (
        between is not None or (step.every is not None and hands.at(step.every) == 2)
    )
    live = hands.live
    for _ in range(400):
        if live.n <= goal:
            break
        if every_other and live.n != goal:
            fabric_row(hands, (), between.span if between else step.span)
        run = _stepped(run, step.change)
        solved = solve(run, live.n, hands.world.size, live.start_edge())
        net = solved.gives - solved.used
        if net >= 0 or live.n + net < goal or solved.left < 0:
            break
        hands.add(
            min(solved.used, live.n), solved.gives, tuple(solved.events), step.span, words=hands.words_of(step.span)
        )
        every_other = every_other or step.every is not None
    hands.counts.append(Count(step.span, goal, live.n, live.number, "until"))
    if live.n == goal:
        regain(hands, goal)
    else:
        hands.trouble("goal-unreachable", step.span, live.n, goal)
        hands.off_by.add(live.n - goal)


def _is_shaped(run: Run) -> bool:
    for item in run:
        if isinstance(item, Work) and item.uses != item.gives:
            return True
        if isinstance(item, Group) and _is_shaped(item.items):
            return True
    return False


def _stepped(run: Run, change: int) -> Run:
    """Return the run with its longest plain stretch changed."""
    best, most = -1, -1.0
    for spot, item in enumerate(run):
        if isinstance(item, Work) and item.n is not None and item.uses == item.gives == 1 and item.n.values[0] > most:
            best, most = spot, item.n.values[0]
    out: list[Item] = []
    for spot, item in enumerate(run):
        if isinstance(item, Group) and best < 0:
            out.append(replace(item, items=_stepped(item.items, change)))
        elif spot == best and isinstance(item, Work) and item.n is not None:
            values = tuple(max(0.0, value + change) for value in item.n.values)
            out.append(replace(item, n=Figure(values)))
        else:
            out.append(item)
    return tuple(out)


def _turns(hands: Hands, step: say.Progress) -> None:
    """Turn a heel: each row one stitch longer, until no stitch is left unworked on either side."""
    live = hands.live
    pairs = [entry for entry in hands.recent if any(isinstance(item, say.Turn) for item in entry.run)][-2:]
    if len(pairs) < 2:
        return
    runs = [entry.run for entry in pairs]
    ends = [1, 1]
    for number in range(120):
        if ends == [0, 0]:
            break
        at = number % 2
        runs[at] = _stepped(runs[at], 2)
        solved = solve(runs[at], live.n - live.behind, hands.world.size, live.start_edge())
        if solved.left < 0:
            without = tuple(item for item in runs[at][:-2]) + runs[at][-1:]
            solved = solve(without, live.n - live.behind, hands.world.size, live.start_edge())
            if solved.left < 0:
                break
        ends = [ends[1], solved.left]
        short_row(hands, RowOf(None, runs[at], span=step.span), solved)
    live.behind = 0
    if step.ending.row:
        hands.live.next_right = step.ending.row in ("p", "ws")
