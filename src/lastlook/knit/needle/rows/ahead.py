"""What lies ahead in a row: markers, turns, needles of a round, repeats that may be meant in two ways."""

from __future__ import annotations

from lastlook.finding import Span
from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.live import Event, Live
from lastlook.knit.needle.solve import Solved, fixed_uses, solve
from lastlook.knit.needle.state import Hands
from lastlook.leaflet.instruction import Group, Held, RowOf, Run, Taken, Turn, Work


def more_of(hands: Hands, run: Run, span: Span) -> int:
    """Ask whether 'repeat from * n times' means n more or n in all."""
    unclear = unclear_of(run)
    if unclear is None:
        return 1
    times = hands.at(unclear.times)
    return hands.choose("times", unclear.span, (
        (f"worked once and {times} times more", 1), (f"{times} times in all", 0),
    ))  # fmt: skip


def unclear_of(run: Run) -> Group | None:
    for item in run:
        if isinstance(item, Group):
            if item.times is not None and item.count == "unclear":
                return item
            inner = unclear_of(item.items)
            if inner:
                return inner
    return None


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
    elif live.marks and solved.events:
        _moved(live, solved)


def _moved(live: Live, solved: Solved) -> None:
    """Markers that a row does not name go along with what it takes and gives before them."""
    forward = live.rounds or not live.next_right
    start = "right" if forward else "left"
    before = live.n - solved.gives + solved.used
    marks = live.marks if forward else tuple(sorted(before - mark for mark in live.marks))
    out = []
    for mark in marks:
        for event in solved.events:
            at_start = event.edge == start or (event.edge == "inside" and event.inset < mark)
            if at_start and event.act in ("dec", "bind off", "inc", "cast on"):
                mark += event.n if event.act in ("inc", "cast on") else -event.n
        out.append(max(0, mark))
    live.marks = tuple(out) if forward else tuple(sorted(live.n - mark for mark in out))


def own_stitches(run: Run, ahead: int, size: int) -> Run:
    """'K across 58 sts of back, slip next 46 sts on a holder': what is named are the stitches on the needle."""
    if not any(isinstance(item, Held) for item in run):
        return run
    own = tuple(
        Work("k", item.n, span=item.span) if isinstance(item, Taken) and not item.picked_up and item.n else item
        for item in run
    )
    return own if fixed_uses(own, size) == ahead else run


def short_row(hands: Hands, step: RowOf, solved: Solved) -> None:
    """Turn before the end: what is left stays on the needle, unworked."""
    live = hands.live
    left = solved.left
    total = live.n
    _across(hands, step, solved)
    row_ = hands.add(solved.used, solved.gives, tuple(solved.events), step.span, words=hands.words_of(step.span))
    row_.used = solved.used
    live.behind, live.beyond = left, live.behind
    live.n = total - solved.used + solved.gives
    row_.after = live.n
    hands.sections.setdefault("turned", row_.number)


def _across(hands: Hands, step: RowOf, solved: Solved) -> None:
    """A row of a heel goes up to the turn before and goes as far across it as the rows before did."""
    live = hands.live
    body = [item for item in step.run if not isinstance(item, Turn)]
    if live.behind <= 0 or live.beyond <= 0 or not all(isinstance(item, Work) and item.n for item in body):
        return
    shaped = [spot for spot, item in enumerate(body) if _takes(item)]
    before = hands.recent[-1].run if hands.recent else ()
    if not shaped or not any(_takes(item) for item in before):
        return
    size = hands.world.size
    reached = fixed_uses(tuple(body[: shaped[-1] + 1]), size)
    across = reached - (live.n - live.behind - live.beyond)
    if live.across and across != live.across and abs(across - live.across) <= 2:
        wanted = solved.used + live.across - across
        hands.trouble("row-short" if across < live.across else "row-long", step.span, solved.used, wanted, "turn")
    live.across = live.across or across


def _takes(item: object) -> bool:
    return isinstance(item, Work) and (item.gives < item.uses or item.name == "psso")


def round_by_needle(hands: Hands, step: RowOf, needles: tuple[Run, ...]) -> None:
    live = hands.live
    counts = hands.needle_parts
    hands.done(step)
    if len(counts) == 3 and sum(counts) != live.n and counts[1] < live.n:
        # More was picked up at both sides of the instep since it was joined.
        counts = [live.n - counts[1] - (live.n - counts[1]) // 2, counts[1], (live.n - counts[1]) // 2]
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


def _go_on(hands: Hands) -> None:
    """What was put on a holder comes together with more stitches: from here it is a part of its own."""
    old = hands.live
    old.ended = "joined"
    new = Live(old.n, next_right=old.next_right, base=max(live.number for live in hands.parts), name=hands.name)
    hands.parts.append(new)
    hands.lives, hands.live = [new], new


def gather(hands: Hands, step: RowOf, run: Run) -> None:
    """Stitches are picked up beside live ones, or taken from a holder, as at the gusset of a heel."""
    hands.done(step)
    instep = 0
    if hands.live.ended == "on holder":
        _go_on(hands)
    live, more = hands.live, 0
    for item in run:
        if not isinstance(item, Taken):
            continue
        count = hands.at(item.n)
        waits = hands.held[0] if hands.held and not item.picked_up else None
        if waits is not None:
            compare(hands, item.span, count, waits.n, "held")
            more, instep = more + waits.n, waits.n
            hands.held.pop(0)
            live.rounds = live.rounds or hands.was_round
        elif not item.picked_up and any(word in item.source for word in ("heel", "sole", "of <")):
            hands.heel_taken = count
            continue
        else:
            more += count
            hands.picked.append((item.source, count))
    if more:
        last = live.rows[-1] if live.rows else None
        if (
            last is not None
            and last.span.start <= step.span.start
            and any(event.act == "pick up" for event in last.events)
            and last.section == hands.section
        ):
            last.gives += more
            last.after += more
            live.n += more
        else:
            hands.add(
                live.n, live.n + more, (Event("pick up", "inside", more),), step.span, words=hands.words_of(step.span)
            )
    if instep and live.rounds:
        rest = live.n - instep
        hands.needle_parts = [rest - rest // 2, instep, rest // 2]
