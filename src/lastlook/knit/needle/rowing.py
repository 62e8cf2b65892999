"""Rows told stitch by stitch: worked once, repeated, continued in the same manner; crochet rows on the same machine."""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Span
from lastlook.knit.needle import sides
from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.fabric import fabric_row, rows_to, take_up
from lastlook.knit.needle.live import Event, Live
from lastlook.knit.needle.solve import Solved, fixed_uses, solve
from lastlook.knit.needle.state import Hands, Recent
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Figure, Group, Item, Label, RowOf, Run, Step, Taken, Work

MOST = 1500
MOST_LISTED = 300


def in_order(steps: tuple[Step, ...]) -> list[Step]:
    """Return the steps with numbered rows in the order in which they are worked: '1st and 3rd row' twice."""
    out: list[Step] = []
    spot = 0
    steps = _by_needle(steps)
    while spot < len(steps):
        step = steps[spot]
        if not (isinstance(step, RowOf) and step.label and step.label.numbers):
            out.append(step)
            spot += 1
            continue
        stop = spot
        while stop < len(steps) and _belongs(steps, stop):
            stop += 1
        out += _listed(list(steps[spot:stop]))
        spot = stop
    return out


def _by_needle(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Put a round that is told needle by needle together."""
    out: list[Step] = []
    for step in steps:
        last = out[-1] if out else None
        on_needle = isinstance(step, RowOf) and step.label is not None and step.label.needle and bool(step.run)
        if on_needle and isinstance(step, RowOf) and isinstance(last, RowOf) and last.label and not last.run and (last.label.round or last.needles):
            out[-1] = replace(last, needles=(*last.needles, step.run), covers=(*last.covers, step.span))
        else:
            out.append(step)
    return tuple(out)


def _round_by_needle(hands: Hands, step: RowOf, needles: tuple[Run, ...]) -> None:
    live = hands.live
    counts = hands.needle_parts
    hands.done(step)
    if len(counts) != len(needles) or sum(counts) != live.n:
        counts = _guessed(live.n, len(needles))
    used = gives = 0
    after: list[int] = []
    for run, n in zip(needles, counts, strict=True):
        solved = solve(run, n, hands.world.size, "right")
        used += solved.used
        gives += solved.gives
        after.append(max(0, n - solved.used + solved.gives))
    events = (Event("dec" if gives < used else "inc", "inside", abs(used - gives)),) if used != gives else ()
    hands.add(min(used, live.n), gives, events, step.span, words=hands.words_of(step.span))
    hands.needle_parts = after


def _guessed(n: int, needles: int) -> list[int]:
    """Needles are as good as equal where the leaflet does not divide them; a foot has half on its instep needle."""
    if needles == 3:
        return [n // 4, n - 2 * (n // 4), n // 4]
    each = n // max(1, needles)
    return [each] * (needles - 1) + [n - each * (needles - 1)]


def _belongs(steps: tuple[Step, ...], spot: int) -> bool:
    step = steps[spot]
    if isinstance(step, RowOf):
        return step.label is None or bool(step.label.numbers)
    follows = any(isinstance(one, RowOf) and one.label and one.label.numbers for one in steps[spot + 1 : spot + 3])
    return isinstance(step, say.Printed | say.Nothing) and follows


def _listed(part: list[Step]) -> list[Step]:
    several = any(
        isinstance(one, RowOf) and one.label and (len(one.label.numbers) > 1 or one.label.every) for one in part
    )
    if not several:
        return part
    rows: dict[int, list[Step]] = {}
    now: list[Step] = []
    highest = max(
        (max(one.label.numbers) for one in part if isinstance(one, RowOf) and one.label and one.label.numbers),
        default=0,
    )
    fillers: list[tuple[int, RowOf]] = []
    for one in part:
        if isinstance(one, RowOf) and one.label and one.label.numbers:
            now = []
            pairwise = len(one.like) == len(one.label.numbers) > 1
            for place, number in enumerate(one.label.numbers[:MOST_LISTED]):
                if number in rows:
                    return part
                like = (one.like[place],) if pairwise else one.like
                rows[number] = now = [replace(one, label=replace(one.label, numbers=(number,)), like=like)]
            if one.label.every:
                fillers.append((one.label.numbers[-1], one))
        else:
            now.append(one)
    for first, filler in fillers:
        for number in range(first, highest + 1, 2):
            label = replace(filler.label or Label(), numbers=(number,))
            rows.setdefault(number, [replace(filler, label=label)])
    return [step for number in sorted(rows)[:MOST_LISTED] for step in rows[number]]


def row(hands: Hands, step: RowOf) -> None:
    """Work one row; a run without a label goes on with a row that is not full yet."""
    if step.label is None and hands.pending and step.run:
        hands.pending += step.run
        hands.done(step)
        _try(hands, step, tuple(hands.pending))
        return
    close(hands)
    if not hands.parts and not _starts(hands, step):
        return
    if step.needles:
        _round_by_needle(hands, step, step.needles)
        _remember(hands, step, ())
        return
    if step.run and all(isinstance(item, say.Turn) for item in step.run):
        hands.done(step)
        return
    if step.label is not None and step.label.name == "buttonhole" and hands.fixed_rows:
        hands.shown = hands.live.n
        _shown(hands, step)
        hands.shown = 0
        return
    if hands.live.ended in ("bound off", "fastened off", "drawn up"):
        _shown(hands, step)
        return
    if step.run and _rest_waits(hands, step):
        step = replace(step, run=(*step.run, say.Turn()))
    if step.like:
        _by_reference(hands, step)
        return
    if not step.run:
        if step.label:
            hands.done(step)
        return
    times = min(hands.at(step.label.rows, 1), 400) if step.label and step.label.rows else 1
    if step.label and step.label.side and not hands.live.rounds:
        _turn_to(hands, step)
    for _ in range(times):
        _try(hands, step, step.run)


def _rest_waits(hands: Hands, step: RowOf) -> bool:
    """'K 16; place the remaining 36 sts on a holder': what follows says that the row ends here."""
    after = hands.following
    if not isinstance(after, say.Hold) or after.which == "center" or any(isinstance(item, say.Turn | say.Held | say.BindOff) for item in step.run):
        return False
    if any(isinstance(item, Work | Group) and item.reach for item in step.run[-1:]):
        return False
    return 0 < fixed_uses(step.run, hands.world.size) < hands.live.n


def _shown(hands: Hands, step: RowOf) -> None:
    """A row told after the piece has ended shows how a part of it is worked: it is checked, not added."""
    if not step.run:
        return
    n = hands.shown or _shown_on(hands, step)
    solved = solve(step.run, n, hands.world.size, hands.live.start_edge())
    hands.done(step)
    if solved.left:
        _judge_on(hands, step, solved, n)
    for item, count in solved.taken:
        sides.take(hands, item, count)
    hands.shown = sum(solved.parts) + (n - solved.used if solved.left > 0 else 0)


def _shown_on(hands: Hands, step: RowOf) -> int:
    """Return how many stitches such a row is meant for: where stitches are held, those of the row that holds them."""
    if any(isinstance(item, say.Held) for item in step.run):
        for row_ in hands.parts[0].rows:
            if any(event.act == "hold" for event in row_.events):
                return row_.before
    return hands.parts[0].rows[-1].after if hands.parts[0].rows else hands.live.n


def _judge_on(hands: Hands, step: RowOf, solved: Solved, n: int) -> None:
    if _soft(step.run):
        return
    hands.trouble("row-short" if solved.left > 0 else "row-long", step.span, solved.used, n)


def _starts(hands: Hands, step: RowOf) -> bool:
    """A piece may begin with stitches that are picked up or come from holders."""
    if any(isinstance(item, Taken) for item in step.run):
        hands.begin(0)
        hands.cast_on = 0
        return True
    return False


def _turn_to(hands: Hands, step: RowOf) -> None:
    """A row that is said to be a right-side row is one, whatever was counted before."""
    wanted = step.label.side == "rs" if step.label else True
    if hands.live.rows or hands.live.base:
        if hands.live.next_right != wanted and step.label and 1 in step.label.numbers:
            hands.live.next_right = wanted
        return
    hands.live.next_right = wanted


def _try(hands: Hands, step: RowOf, run: Run) -> None:
    if len(hands.lives) > 1 and any(isinstance(item, say.CastOnInRow) for item in run):
        sides.merge(hands)
    if hands.cast_on != 0 and hands.parts and any(isinstance(item, Taken) for item in run) and not any(isinstance(item, say.Held) for item in run):
        _gather(hands, step, run)
        return
    one = run[0] if len(run) == 1 else None
    if isinstance(one, say.BindOff) and one.n is not None and hands.at(one.n) >= hands.live.n > 0:
        sides.finish(hands, say.Finish("bound off", one.n, span=step.span))
        hands.done(step)
        return
    live = hands.live
    ahead = live.n - live.behind
    if _is_last_stitch(hands, run, ahead):
        hands.done(step)
        return
    solved = solve(run, ahead, hands.world.size, live.start_edge(), _more(hands, run, step.span), marks_ahead(live))
    if solved.left < 0 and step.label is None:
        cut = _full_at(run, ahead, hands.world.size)
        if cut:
            _try(hands, step, run[:cut])
            _try(hands, step, run[cut:])
            return
    full = solved.left <= 0 or solved.reached or solved.turned or solved.parted or bool(solved.held)
    if not full and step.label is None and not hands.cast_on == 0:
        hands.pending, hands.pending_step = list(run), step
        if run == step.run:
            hands.pending = list(step.run)
        return
    hands.pending, hands.pending_step = [], None
    hands.done(step)
    commit(hands, step, run, solved)


def _gather(hands: Hands, step: RowOf, run: Run) -> None:
    """Stitches are picked up beside live ones, or taken from a holder, as at the gusset of a heel."""
    hands.done(step)
    live, more = hands.live, 0
    for item in run:
        if not isinstance(item, Taken):
            continue
        count = hands.at(item.n)
        waits = hands.held[0] if hands.held and not item.picked_up else None
        if waits is not None:
            compare(hands, item.span, count, waits.n, "held")
            more += waits.n
            hands.held.pop(0)
            live.rounds = live.rounds or hands.was_round
        elif not item.picked_up and any(word in item.source for word in ("heel", "sole", "of <")):
            continue
        else:
            more += count
            hands.picked.append((item.source, count))
    if more:
        last = live.rows[-1] if live.rows else None
        if last is not None and last.span.start <= step.span.start and any(event.act == "pick up" for event in last.events) and last.section == hands.section:
            last.gives += more
            last.after += more
            live.n += more
        else:
            hands.add(live.n, live.n + more, (Event("pick up", "inside", more),), step.span, words=hands.words_of(step.span))


def _is_last_stitch(hands: Hands, run: Run, ahead: int) -> bool:
    """'K 2 tog and fasten off' over all that is left is the end of the piece, not a row of it."""
    ends = (
        isinstance(hands.following, say.Finish) and hands.following.how == "fastened off" and hands.following.n is None
    )
    one = run[0] if len(run) == 1 else None
    return ends and isinstance(one, Work) and one.n is not None and one.uses == ahead and one.gives == 1 and ahead > 1


def _full_at(run: Run, ahead: int, size: int) -> int:
    """Return after how many items an unlabelled run has used up the row exactly; 0 where it never does."""
    for spot in range(1, len(run)):
        if any(isinstance(item, Work) and item.reach for item in run[:spot]):
            return 0
        if fixed_uses(run[:spot], size) == ahead:
            return spot
    return 0


def _more(hands: Hands, run: Run, span: Span) -> int:
    """Ask whether 'repeat from * n times' means n more or n in all."""
    unclear = _unclear(run)
    if unclear is None:
        return 1
    times = hands.at(unclear.times)
    return hands.choose("times", unclear.span, (
        (f"worked once and {times} times more", 1), (f"{times} times in all", 0),
    ))  # fmt: skip


def _unclear(run: Run) -> Group | None:
    for item in run:
        if isinstance(item, Group):
            if item.times is not None and item.count == "unclear":
                return item
            inner = _unclear(item.items)
            if inner:
                return inner
    return None


def close(hands: Hands) -> None:
    """End a row that was begun; what it leaves unworked is told where the row is labelled, and else set aside."""
    step, run = hands.pending_step, tuple(hands.pending)
    hands.pending, hands.pending_step = [], None
    if step is None or not run:
        return
    live = hands.live
    solved = solve(run, live.n - live.behind, hands.world.size, live.start_edge())
    if live.rounds and step.label is None and solved.used == solved.gives:
        hands.done(step)
        return
    if solved.used * 2 >= live.n > 0 or step.label is not None:
        commit(hands, step, run, solved)
        hands.done(step)


def commit(hands: Hands, step: RowOf, run: Run, solved: Solved) -> None:
    """Enter a row that was laid over the stitches."""
    live = hands.live
    if solved.turned and solved.left > 0:
        _short_row(hands, step, solved)
    elif len(solved.parts) > 1:
        _judge(hands, step, solved)
        sides.part(hands, solved, step.span)
    else:
        _judge(hands, step, solved)
        used = min(solved.used, live.n)
        before = live.n
        hands.add(used, solved.gives, tuple(solved.events), step.span, words=hands.words_of(step.span))
        live.behind = 0
        keep_marks(live, solved)
        if solved.held and not solved.taken:
            hands.kept["held"] = hands.kept.get("held", 0) + sum(solved.held)
        if any(event.act == "bind off" for event in solved.events):
            _note_offs(hands, solved, before, step.span)
    for item, count in solved.taken:
        sides.take(hands, item, count)
    if hands.cast_on == 0 and len(hands.live.rows) == 1:
        hands.picked_up = solved.gives
    _remember(hands, step, run)


def marks_ahead(live: Live) -> tuple[int, ...]:
    """Return the markers as they come in the next row."""
    if live.rounds or live.next_right:
        return live.marks
    return tuple(sorted(live.n - mark for mark in live.marks))


def keep_marks(live: Live, solved: Solved) -> None:
    """Markers that a row named hang where it left them; those it did not name stay."""
    if solved.marks:
        was_right = live.rounds or not live.next_right
        live.marks = tuple(solved.marks) if was_right else tuple(sorted(live.n - mark for mark in solved.marks))


def _note_offs(hands: Hands, solved: Solved, before: int, span: Span) -> None:
    for event in solved.events:
        if event.act == "bind off" and event.edge in ("left", "right"):
            sides.check_edge(hands, event.edge, event.n, span)
            at_side = hands.live.outer in ("", event.edge) and hands.section not in ("neck", "shoulder")
            if hands.armhole_row is None and event.n >= 2 and at_side and before > 3 * event.n:
                hands.armhole_row = hands.live.number - 1 - (0 if hands.live.number % 2 else 1)


def _judge(hands: Hands, step: RowOf, solved: Solved) -> None:
    """Tell a row that uses fewer or more stitches than there are."""
    n = hands.live.n - hands.live.behind
    if solved.left == 0 or hands.cast_on == 0 and solved.taken:
        return
    where = step.span
    if solved.left < 0:
        if _lifted(solved, -solved.left):
            return
        hands.trouble("row-long", where, solved.used, n)
    elif solved.spare and solved.repeat and _soft(step.run):
        return
    elif solved.spare and solved.repeat:
        hands.trouble("repeat-does-not-fit", where, n - solved.left, n, str(solved.repeat))
    elif not solved.turned:
        hands.trouble("row-short", where, solved.used, n)


def _lifted(solved: Solved, missing: int) -> bool:
    """An increase without a method may take no stitch of the row: then the row fits (lifted increases)."""
    incs = sum(event.n for event in solved.events if event.act == "inc")
    if incs and incs == missing:
        solved.used -= missing
        solved.left = 0
        return True
    return False


def _soft(run: Run) -> bool:
    """A rib or texture on a count that does not divide is let pass in print."""
    return all(
        isinstance(one, Group)
        and all(isinstance(item, Work) and item.uses == item.gives for item in one.items)
        or (isinstance(one, Work) and one.uses == one.gives)
        for one in run
    )


def _short_row(hands: Hands, step: RowOf, solved: Solved) -> None:
    """Turn before the end: what is left stays on the needle, unworked."""
    live = hands.live
    behind, left = live.behind, solved.left
    total = live.n
    row_ = hands.add(solved.used, solved.gives, tuple(solved.events), step.span, words=hands.words_of(step.span))
    row_.used = solved.used
    live.behind = left
    live.n = total - solved.used + solved.gives
    row_.after = live.n
    del behind
    hands.sections.setdefault("turned", row_.number)


def _remember(hands: Hands, step: RowOf, run: Run) -> None:
    number = step.label.numbers[0] if step.label and step.label.numbers else 0
    entry = Recent(run, step.span, number, needles=step.needles)
    if number == 1:
        hands.book = {}
    if number:
        hands.book[number] = entry
    hands.recent.append(entry)
    del hands.recent[:-80]


def _by_reference(hands: Hands, step: RowOf) -> None:
    hands.done(step)
    for number in step.like:
        entry = hands.book.get(number)
        if entry is None:
            hands.trouble("row-not-there", step.span, 0, number)
            return
        again = RowOf(step.label, entry.run, span=step.span)
        if entry.run:
            _try(hands, again, entry.run)


def repeat(hands: Hands, step: Step) -> None:
    """Work rows again: so many times, until so many stitches, to a length, or for pattern."""
    if not isinstance(step, say.RepeatRows):
        return
    cycle = _cycle(hands, step)
    if not cycle or not hands.parts:
        if step.piece:
            sides.repeat_of(hands, step)
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
        for number in range(min(rows, MOST)):
            _again(hands, cycle[number % len(cycle)], step.span)
        hands.cycle = [entry.run for entry in cycle]
        hands.cycle_spans = [entry.span for entry in cycle]


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
        _round_by_needle(hands, RowOf(None, (), span=entry.span), entry.needles)
        return
    if not entry.run:
        fabric_row(hands, (), entry.span)
        return
    live = hands.live
    solved = solve(entry.run, live.n - live.behind, hands.world.size, live.start_edge(), _more(hands, entry.run, entry.span), marks_ahead(live))
    step = RowOf(None, entry.run, span=entry.span)
    recent, book = list(hands.recent), dict(hands.book)
    if solved.turned and solved.left > 0:
        _short_row(hands, step, solved)
    elif len(solved.parts) > 1:
        sides.part(hands, solved, entry.span)
    else:
        if solved.left:
            _judge(hands, step, solved)
        hands.add(
            min(solved.used, live.n), solved.gives, tuple(solved.events), entry.span, words=hands.words_of(entry.span)
        )
        live.behind = 0
        keep_marks(live, solved)
    hands.recent, hands.book = recent, book


def _until(hands: Hands, step: say.RepeatRows, cycle: list[Recent]) -> None:
    from lastlook.knit.needle.state import Count

    live = hands.live
    goal = hands.at(step.goal.until)
    start = live.n
    ends_on = step.ending.row
    if step.goal.until_what.startswith("<"):
        _until_needle(hands, step, cycle, goal)
        return
    for number in range(MOST):
        at_end = number % len(cycle) == 0
        if live.n == goal and (at_end or ends_on in ("k", "rs")):
            break
        if at_end and number and live.n == start:
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
    if live.n != goal:
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
    from lastlook.knit.needle.state import Count

    hands.counts.append(
        Count(step.span, goal, hands.needle_parts[0] if hands.needle_parts else goal, hands.live.number, "until")
    )


def _change(hands: Hands, entry: Recent) -> int:
    if entry.needles:
        return 0
    if not entry.run:
        return 0
    live = hands.live
    solved = solve(entry.run, live.n - live.behind, hands.world.size, live.start_edge())
    return solved.gives - solved.used


def progress(hands: Hands, step: Step) -> None:
    """Continue in the same manner with one stitch more or less each time."""
    if not isinstance(step, say.Progress) or not hands.parts or not hands.recent:
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
    from lastlook.knit.needle.state import Count

    hands.counts.append(Count(step.span, goal, live.n, live.number, "until"))
    if live.n != goal:
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
        _short_row(hands, RowOf(None, runs[at], span=step.span), solved)
    live.behind = 0
    if step.ending.row:
        hands.live.next_right = step.ending.row in ("p", "ws")


def crochet_row(hands: Hands, step: Step) -> None:
    """A row of a crochet border: the first is worked along edges, the others use up the row below."""
    from lastlook.knit.needle.border import border_row

    if isinstance(step, RowOf):
        border_row(hands, step)


__all__ = ["Event", "close", "compare", "crochet_row", "in_order", "progress", "repeat", "row", "take_up"]
