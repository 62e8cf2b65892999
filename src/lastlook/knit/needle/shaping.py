"""Schedules of increases and decreases over one row counter, alone or together; binding off at row beginnings."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Span
from lastlook.knit.needle.fabric import ASSUMED_ROWS_PER_MM, fabric_row, plain, rows_to
from lastlook.knit.needle.live import Event
from lastlook.knit.needle.parts.edge import check_edge, edges
from lastlook.knit.needle.rows.remember import remember_evenly, remember_shaped
from lastlook.knit.needle.sight import restart
from lastlook.knit.needle.state import Count, Hands
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Cadence, Shape, Step

MOST = 1200
LONGEST = 3000
"""No piece is knitted longer than so many rows."""


@dataclass
class Plan:
    """One shaping's schedule: on which row it comes next, and how often still."""

    step: Shape
    edges: list[str]
    n: int
    cadences: list[Cadence]
    next_row: int = 0
    every: int = 1
    other: int = 0
    left: int | None = None
    until: int | None = None
    waits: int = 0
    over: bool = False
    bounded: bool = True
    done: int = 0


def shape_together(hands: Hands, steps: list[Shape]) -> None:
    """Work shapings side by side until all that have an end have come to it."""
    if not hands.parts:
        return
    if len(steps) == 1 and steps[0].edge in ("evenly", "inside", "") and not _timed(steps[0]):
        evenly(hands, steps[0])
        return
    since = hands.live.number
    plans = [_plan(hands, step) for step in steps]
    bounded = [plan for plan in plans if plan.bounded]
    if not bounded:
        _open(hands, plans)
        return
    guard = 0
    while any(not plan.over for plan in bounded) and guard < MOST and hands.live.number < LONGEST:
        guard += 1
        if not _row(hands, plans):
            break
    for step in steps:
        if step.ending.row or step.ending.edge:
            plain(hands, rows_to(hands, say.Goal(), step.ending, step.span), step.span)
    remember_shaped(hands, since, steps[0].span)
    _judge(hands, plans)


def _timed(step: Shape) -> bool:
    return any(cadence.every or cadence.mm for cadence in step.cadences) and step.edge not in ("evenly",)


def _plan(hands: Hands, step: Shape) -> Plan:
    places = list(edges(hands, step.edge or "both"))
    n = hands.at(step.n)
    cadences = list(step.cadences) or [Cadence(same=True)]
    key = places[0] if places else ""
    cadences = [_as_before(hands, one, key) for one in cadences]
    hands.cadences[key] = cadences[-1]
    if len(places) == 2:
        hands.cadences["left"] = hands.cadences["right"] = cadences[-1]
    plan = Plan(step, places * step.places if step.edge == "inside" else places, n, cadences)
    if step.start is not None:
        plan.waits = hands.live.number + rows_to(hands, step.start.goal, step.start.ending, step.span)
    _next_cadence(hands, plan, first=True)
    plan.bounded = plan.left is not None or plan.until is not None
    return plan


def _as_before(hands: Hands, cadence: Cadence, edge: str) -> Cadence:
    if not cadence.same and (cadence.every or cadence.mm):
        return cadence
    before = hands.cadences.get(edge) or hands.cadences.get("right") or Cadence(every=say.Figure((2.0,)), on="rs")
    return Cadence(before.every, before.mm, before.on, None, None, cadence.goal)


def _next_cadence(hands: Hands, plan: Plan, first: bool = False) -> None:
    """Go over to the next stretch of the schedule."""
    if not plan.cadences:
        plan.over = True
        return
    cadence = plan.cadences.pop(0)
    plan.every, plan.other = _interval(hands, cadence), hands.at(cadence.alternate, 0)
    goal = cadence.goal
    plan.left = _times(hands, plan, cadence)
    plan.until = hands.at(goal.until) if goal.until is not None else None
    start = max(hands.live.number, plan.waits)
    if cadence.first is not None:
        plan.next_row = start + hands.at(cadence.first)
    elif not first:
        plan.next_row = max(start + 1, plan.next_row)
    else:
        plan.next_row = start + _first(hands, plan, cadence)
    if goal.mm is not None and plan.left is None and plan.until is None:
        rows = rows_to(hands, goal, say.Ending(), plan.step.span)
        plan.left = max(0, rows // max(1, plan.every))
    if plan.left == 0:
        _next_cadence(hands, plan, first)


def _interval(hands: Hands, cadence: Cadence) -> int:
    if cadence.mm is not None:
        per_mm = hands.world.rows_per_mm
        if per_mm is None:
            hands.lengths_unknown = True
            per_mm = ASSUMED_ROWS_PER_MM
        rows = cadence.mm.at(hands.world.size) * per_mm
        return max(1, 2 * round(rows / 2) if rows >= 2 else 1)
    every = hands.at(cadence.every, 2)
    return max(every, 2) if cadence.on and not hands.live.rounds else max(1, every)


def _times(hands: Hands, plan: Plan, cadence: Cadence) -> int | None:
    goal = cadence.goal
    if goal.times is None:
        return None
    times = hands.at(goal.times)
    if goal.count == "more":
        return times + (1 if cadence.first is not None else 0)
    named = cadence.first is not None and cadence.every is not None and hands.at(cadence.every) > 1
    if goal.count == "unclear" and named and "and" in hands.words_of(plan.step.span):
        span = plan.step.span
        more = hands.choose("times", span, (
            (f"the row named, then {times} more: {times + 1} in all", 1),
            (f"{times} in all, the row named being the first", 0),
        ))  # fmt: skip
        return times + more
    return times


def _first(hands: Hands, plan: Plan, cadence: Cadence) -> int:
    """Return how many rows on the first shaping comes where the leaflet does not say."""
    right = hands.live.next_right or hands.live.rounds
    if cadence.on:
        want = cadence.on == "rs"
        return 1 if right == want or hands.live.rounds else 2
    if cadence.mm is not None or plan.every > 2:
        at_once = hands.choose("first", plan.step.span, (
            (f"first on the {_ordinal(plan.every)} row", 0), ("first on the next row", 1),
        ), "rows")  # fmt: skip
        return 1 if at_once else plan.every
    if plan.every == 2:
        return 1 if right else 2
    return 1


def _ordinal(number: int) -> str:
    ending = "th" if 10 <= number % 100 <= 20 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def _row(hands: Hands, plans: list[Plan]) -> bool:
    """Work one row with whatever falls on it; say whether anything can still come."""
    row = hands.live.number + 1
    events: list[Event] = []
    due = []
    for plan in plans:
        if plan.over or row <= plan.waits or row < plan.next_row:
            continue
        if plan.until is not None and not _may(hands, plan, events):
            plan.over = True
            continue
        due.append(plan)
        sign = plan.step.act
        events += [Event(sign, edge, plan.n) for edge in plan.edges]
    if all(plan.over for plan in plans if plan.bounded) and not due:
        return False
    if hands.live.n + sum(event.n if event.act == "inc" else -event.n for event in events) < 0:
        hands.trouble("goal-unreachable", plans[0].step.span, hands.live.n, 0)
        return False
    hands.parts_shaped = hands.parts_shaped or bool(events)
    fabric_row(hands, tuple(events), plans[0].step.span)
    for plan in due:
        plan.done += 1
        step = plan.every
        if plan.other and plan.done % 2:
            step = plan.other
        plan.next_row = row + step
        if plan.left is not None:
            plan.left -= 1
            if plan.left <= 0:
                _move_on(hands, plan, row)
        if plan.until is not None and _reached(hands, plan):
            plan.over = True
    return True


def _move_on(hands: Hands, plan: Plan, row: int) -> None:
    if not plan.cadences:
        plan.over = True
        return
    following = plan.cadences[0]
    _next_cadence(hands, plan)
    if following.first is None:
        plan.next_row = row + plan.every
        if following.on and not hands.live.rounds:
            right = (plan.next_row - hands.live.number) % 2 == (1 if hands.live.next_right else 0)
            if right != (following.on == "rs"):
                plan.next_row += 1
    if plan.until is not None and _reached(hands, plan):
        plan.over = True


def _reached(hands: Hands, plan: Plan) -> bool:
    if plan.until is None:
        return False
    return hands.live.n <= plan.until if plan.step.act == "dec" else hands.live.n >= plan.until


def _may(hands: Hands, plan: Plan, events: list[Event]) -> bool:
    """Whether one more shaping does not overshoot the goal."""
    if plan.until is None:
        return True
    change = plan.n * len(plan.edges)
    now = hands.live.n + sum(event.n if event.act == "inc" else -event.n for event in events)
    return now - change >= plan.until if plan.step.act == "dec" else now + change <= plan.until


def _judge(hands: Hands, plans: list[Plan]) -> None:
    """Put the goals beside what was reached."""
    for plan in plans:
        if plan.until is not None:
            hands.counts.append(Count(plan.step.span, plan.until, hands.live.n, hands.live.number, "until"))
            if hands.live.n == plan.until:
                restart(hands, plan.until)
            else:
                hands.trouble("goal-unreachable", plan.step.span, hands.live.n, plan.until)
                hands.off_by.add(hands.live.n - plan.until)


def _open(hands: Hands, plans: list[Plan]) -> None:
    """A shaping without an end: it goes on with what follows; one row of it is worked here if it names its row."""
    for plan in plans:
        hands.cadences[plan.edges[0] if plan.edges else ""] = (plan.step.cadences or (Cadence(same=True),))[-1]
    once = [plan for plan in plans if not plan.step.cadences and not plan.step.same_time]
    if once:
        events = tuple(Event(plan.step.act, edge, plan.n) for plan in once for edge in plan.edges)
        if hands.live.n >= sum(event.n for event in events):
            since = hands.live.number
            fabric_row(hands, events, once[0].step.span)
            remember_shaped(hands, since, once[0].step.span)


def evenly(hands: Hands, step: Shape) -> None:
    """Increase or decrease across a row: the one just worked where it is the last, the next otherwise."""
    live = hands.live
    n = hands.at(step.n) * (step.places if step.edge == "inside" else 1)
    if step.to is not None:
        n = abs(hands.at(step.to) - live.n)
    sign = 1 if step.act == "inc" else -1
    event = Event(step.act, "inside", n)
    text = hands.words_of(step.span).lower()
    begins, hands.row_begun = hands.row_begun, False
    if (
        live.rows
        and not begins
        and ("last" in text or "next" not in text)
        and live.rows[-1].before == live.rows[-1].after
        and live.n + sign * n >= 0
    ):
        last = live.rows[-1]
        last.gives += sign * n
        last.after += sign * n
        last.events = (*last.events, event)
        live.n = last.after
        remember_evenly(hands, last)
    elif live.n + sign * n >= 0:
        since = live.number
        fabric_row(hands, (event,), step.span)
        remember_shaped(hands, since, step.span)
    else:
        hands.trouble("row-long", step.span, n, live.n)


def bind_offs(hands: Hands, step: Step) -> None:
    """Bind off at the beginning of the next rows, or at a named edge as often as told."""
    if not isinstance(step, say.BindOffs) or not hands.parts:
        return
    hands.done(step)
    n, live = hands.at(step.n), hands.live
    if n == 0:
        return
    if step.cadence is not None and step.cadence.goal.until is not None:
        _off_until(hands, step, n, hands.at(step.cadence.goal.until))
        return
    times = hands.at(step.times) if step.times is not None else 1
    if step.cadence is not None and step.times is not None and step.cadence.goal.count == "unclear":
        more = hands.choose("times", step.span, (
            (f"the next row and {times - 1} after it: {times} in all", 0), (f"{times - 1} in all", -1),
        ))  # fmt: skip
        times = max(1, times + more)
    if step.edge in ("beg", "both") or not step.edge:
        whole = live.outer == "" and live.inner == ""
        rows = hands.at(step.rows) if step.rows is not None else times
        if step.edge == "both" and not whole:
            _at_edge(hands, step, n, times)
            return
        every_row = step.rows is not None
        for number in range(min(rows, 200)):
            if number and not every_row:
                fabric_row(hands, (), step.span)
            check_edge(hands, live.start_edge(), n, step.span)
            if not off_row(hands, n, live.start_edge(), step.span):
                return
        return
    _at_edge(hands, step, n, times)


def _off_until(hands: Hands, step: say.BindOffs, n: int, goal: int) -> None:
    """'Bind off 8 sts at beg of each row until 56 remain', or until none is left."""
    live = hands.live
    where = edges(hands, step.edge) if step.edge not in ("", "beg", "both") else []
    one = where[0] if len(where) == 1 else ""
    for _ in range(MOST):
        if live.n <= goal or (goal == 0 and live.n <= n):
            break
        if one in ("left", "right") and live.start_edge() != one and not live.rounds:
            fabric_row(hands, (), step.span)
        if live.n - n < goal or not off_row(hands, n, one or live.start_edge(), step.span):
            break
    if goal == 0:
        live.ended = hands.ended = "bound off"
        return
    hands.counts.append(Count(step.span, goal, live.n, live.number, "until"))
    if live.n == goal:
        restart(hands, goal)
    else:
        hands.trouble("goal-unreachable", step.span, live.n, goal)


def _at_edge(hands: Hands, step: say.BindOffs, n: int, times: int) -> None:
    where = edges(hands, step.edge)
    live = hands.live
    if len(where) == 2:
        for _ in range(min(2 * times, 200)):
            if not off_row(hands, n, live.start_edge(), step.span):
                return
        return
    edge = where[0] if where else live.start_edge()
    hands.last_edge = edge
    for _ in range(min(times, 200)):
        if edge in ("left", "right") and live.start_edge() != edge and not live.rounds:
            fabric_row(hands, (), step.span)
        if not off_row(hands, n, edge, step.span):
            return


def off_row(hands: Hands, n: int, edge: str, span: Span) -> bool:
    """Bind off n at an edge in one row; say whether there were as many."""
    live = hands.live
    if n > live.n:
        hands.trouble("row-long", span, n, live.n, "bind off")
        if live.n:
            hands.settle_last()
        return False
    if n == live.n and (live.outer or live.inner):
        live.ended = "bound off"
        hands.ended = "bound off"
        return False
    if hands.armhole_row is None and n >= 2 and _at_side(hands, edge):
        hands.armhole_row = live.number - (0 if live.next_right or live.rounds else 1)
    hands.parts_shaped = True
    fabric_row(hands, (Event("bind off", edge, n),), span)
    return True


def _at_side(hands: Hands, edge: str) -> bool:
    return hands.live.outer in ("", edge) and hands.section not in ("neck", "shoulder")
