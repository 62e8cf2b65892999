"""Rows worked again: so often, until so many stitches, to a length, for pattern."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.finding import Span
from lastlook.knit.needle.fabric import fabric_row, rows_to
from lastlook.knit.needle.parts.copying import rows_of
from lastlook.knit.needle.parts.divide import part
from lastlook.knit.needle.rows.ahead import keep_marks, marks_ahead, more_of, round_by_needle, short_row
from lastlook.knit.needle.rows.heel import is_turning, turn_on
from lastlook.knit.needle.rows.proof import judge
from lastlook.knit.needle.sight import restart
from lastlook.knit.needle.solve import solve
from lastlook.knit.needle.state import Count, Hands, Recent
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import RowOf, Step

MOST = 1500
MOST_LISTED = 300


def repeat(hands: Hands, step: Step) -> None:
    """Work rows again: so many times, until so many stitches, to a length, or for pattern."""
    if not isinstance(step, say.RepeatRows):
        return
    if _one_row(hands, step):
        return
    if step.goal.until is not None and step.goal.until_what in ("", "unworked") and hands.parts and is_turning(hands):
        hands.done(step)
        turn_on(hands, step.span, step.goal, step.ending)
        return
    if step.piece:
        _of_other(hands, step)
        return
    cycle = _cycle(hands, step)
    if not cycle or not hands.parts:
        return
    hands.done(step)
    goal = step.goal
    if step.pattern or goal == say.Goal():
        hands.cycle = [entry.run for entry in cycle]
        hands.cycle_spans = [entry.span for entry in cycle]
        hands.cycle_spot = 0
        hands.fabric = "pattern"
        if goal == say.Goal():
            return
    if goal.times is not None:
        _so_often(hands, step, cycle)
    elif goal.until is not None:
        _until(hands, step, cycle)
    else:
        rows = rows_to(hands, goal, step.ending, step.span)
        if rows == 0 and (goal.like == "?" or goal.optional):
            rows = len(cycle)  # However long it is to be, the rows come round at least once more.
        for number in range(min(rows, MOST)):
            _again(hands, cycle[number % len(cycle)], step.span)
        hands.cycle = [entry.run for entry in cycle]
        hands.cycle_spans = [entry.span for entry in cycle]


def _of_other(hands: Hands, step: say.RepeatRows) -> None:
    """'Work the 2 raglan rows of back until 8 sts remain'."""
    rows = rows_of(hands, step)
    if rows:
        hands.recent = rows
        repeat(hands, replace(step, piece="", last=say.Figure((float(len(rows)),))))


def _one_row(hands: Hands, step: say.RepeatRows) -> bool:
    """'Next row: Repeat dec row': the last row that shaped, once more."""
    words = hands.words_of(step.span).lower()
    said = re.fullmatch(r"(?:repeat|rep\.?|work) (?:the )?(dec|inc)\w*\.? (?:row|rnd|round)\.?", words)
    if said is None or step.goal != say.Goal() or step.piece or not hands.parts:
        return False
    spans = [row.span for row in hands.live.rows if any(event.act == said[1] for event in row.events)]
    entry = next((one for one in reversed(hands.recent) if one.span in spans), None)
    if entry is None:
        return False
    hands.done(step)
    _again(hands, entry, step.span)
    return True


def _cycle(hands: Hands, step: say.RepeatRows) -> list[Recent]:
    if step.rows:
        numbers = step.rows
        if len(numbers) == 1 and len(hands.book) > 1:
            numbers = tuple(number for number in sorted(hands.book) if number >= numbers[0])
        return [hands.book[number] for number in numbers if number in hands.book]
    count = hands.at(step.last) if step.last is not None else len(hands.book)
    if step.last is not None and step.pattern and len(hands.book) >= count:
        return [hands.book[number] for number in sorted(hands.book)][-count:]
    return hands.recent[-count:] if 0 < count <= len(hands.recent) else hands.recent[-count:] if count else []


def _so_often(hands: Hands, step: say.RepeatRows, cycle: list[Recent]) -> None:
    times = hands.at(step.goal.times)
    if step.goal.count == "in all":
        times -= 1
    elif step.goal.count == "unclear":
        more = hands.choose("times", step.span, ((f"{times} times more", 0), (f"{times} times in all", -1)))
        times += more
    for _ in range(max(0, min(times, 400))):
        for entry in cycle:
            _again(hands, entry, step.span)


def _again(hands: Hands, entry: Recent, span: Span) -> None:
    if entry.needles:
        round_by_needle(hands, RowOf(None, (), span=entry.span), entry.needles)
        return
    if not entry.run:
        fabric_row(hands, (), entry.span)
        return
    live = hands.live
    solved = solve(
        entry.run,
        live.n - live.behind,
        hands.world.size,
        live.start_edge(),
        more_of(hands, entry.run, entry.span),
        marks_ahead(live),
    )
    step = RowOf(None, entry.run, span=entry.span)
    recent, book = list(hands.recent), dict(hands.book)
    if solved.turned and solved.left > 0:
        short_row(hands, step, solved)
    elif len(solved.parts) > 1:
        part(hands, solved, entry.span)
    else:
        if solved.left or solved.spare:
            judge(hands, step, solved)
        hands.add(
            min(solved.used, live.n), solved.gives, tuple(solved.events), entry.span, words=hands.words_of(entry.span)
        )
        live.behind = live.beyond = 0
        keep_marks(live, solved)
    hands.recent, hands.book = recent, book


def _until(hands: Hands, step: say.RepeatRows, cycle: list[Recent]) -> None:
    live = hands.live
    goal = hands.at(step.goal.until)
    start = live.n
    ends_on = step.ending.row
    if step.goal.until_what.startswith("<"):
        _until_needle(hands, step, cycle, goal)
        return
    if step.goal.until_what == "between" and len(live.marks) > 1:
        goal += live.n - (live.marks[1] - live.marks[0])
    for number in range(MOST):
        at_end = number % len(cycle) == 0
        if live.n == goal and (at_end or ends_on in ("k", "rs")):
            break
        if at_end and number and (live.n == start or abs(live.n - goal) > abs(start - goal)):
            break
        if at_end:
            start = live.n
        change = _change(hands, cycle[number % len(cycle)])
        if change and (live.n - goal) * (live.n + change - goal) < 0:
            break
        _again(hands, cycle[number % len(cycle)], step.span)
    if ends_on or step.ending.edge:
        rows = rows_to(hands, say.Goal(), step.ending, step.span)
        for _ in range(rows):
            fabric_row(hands, (), step.span)
    hands.counts.append(Count(step.span, goal, live.n, live.number, "until"))
    if live.n == goal:
        restart(hands, goal)
    else:
        hands.trouble("goal-unreachable", step.span, live.n, goal)
        hands.off_by.add(live.n - goal)


def _until_needle(hands: Hands, step: say.RepeatRows, cycle: list[Recent], goal: int) -> None:
    """'Until 14 sts remain on first needle': the total follows; it is compared with the count printed after it."""
    for _ in range(200):
        part = hands.needle_parts
        if not part or part[0] <= goal:
            break
        for entry in cycle:
            _again(hands, entry, step.span)
        if hands.needle_parts and hands.needle_parts[0] >= part[0]:
            break
    hands.counts.append(
        Count(step.span, goal, hands.needle_parts[0] if hands.needle_parts else goal, hands.live.number, "until")
    )


def _change(hands: Hands, entry: Recent) -> int:
    live = hands.live
    if entry.needles:
        return _change_by_needle(hands, entry)
    if not entry.run:
        return 0
    solved = solve(entry.run, live.n - live.behind, hands.world.size, live.start_edge())
    return solved.gives - solved.used


def _change_by_needle(hands: Hands, entry: Recent) -> int:
    counts = hands.needle_parts
    if len(counts) != len(entry.needles) or sum(counts) != hands.live.n:
        return 0
    laid = [solve(run, n, hands.world.size, "right") for run, n in zip(entry.needles, counts, strict=True)]
    return sum(one.gives - one.used for one in laid)
