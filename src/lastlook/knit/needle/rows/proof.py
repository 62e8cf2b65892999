"""Rows that do not use up their stitches; and rows that are only shown after the piece has ended."""

from __future__ import annotations

import re

from lastlook.finding import Span
from lastlook.knit.needle.parts.holder import take
from lastlook.knit.needle.solve import Solved, fixed_uses, is_soft, solve
from lastlook.knit.needle.state import Count, Hands
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Group, RowOf, Run


def judge(hands: Hands, step: RowOf, solved: Solved) -> None:
    """Tell a row that uses fewer or more stitches than there are."""
    n = hands.live.n - hands.live.behind
    where = step.span
    if solved.left == 0 and solved.spare and solved.repeat and not is_soft(step.run) and not hands.parts_shaped:
        hands.trouble("repeat-does-not-fit", where, n - solved.spare, n, str(solved.repeat))
        return
    if solved.left == 0 or (hands.cast_on == 0 and solved.taken):
        return
    if solved.left < 0:
        if _lifted(solved, -solved.left):
            return
        hands.trouble("row-long", where, solved.used, n)
        _near(hands, step.run)
    elif solved.spare and solved.repeat and is_soft(step.run):
        return
    elif solved.spare and solved.repeat:
        hands.trouble("repeat-does-not-fit", where, n - solved.left, n, str(solved.repeat))
    elif not solved.turned and not _folded(hands, step, solved):
        hands.trouble("row-short", where, solved.used, n)
        _near(hands, step.run)


def _near(hands: Hands, run: Run) -> None:
    """A row that is one or two of its own counted repeats out is no misreading."""
    last = hands.troubles[-1]
    gap = abs(last.worked - last.stated)
    sizes = [fixed_uses(item.items, hands.world.size) for item in run if isinstance(item, Group) and item.times]
    if last.far and any(size and gap in (size, 2 * size) for size in sizes):
        hands.settle_last()


def _folded(hands: Hands, step: RowOf, solved: Solved) -> bool:
    """'K 46. Fold work in half and graft the 46 sts on each needle': both halves must be so many."""
    after = hands.world.words[step.span.end : step.span.end + 140]
    said = re.search(r"graft (?:together )?the (\d+) st", " ".join(after.split()))
    if said is None or "fold" not in after.lower():
        return False
    first = after.index("graft")
    span = Span(step.span.end + first, step.span.end + first + 5)
    for half in (solved.used, solved.left):
        hands.counts.append(Count(span, int(said[1]), half, hands.live.number, "needle"))
    return solved.used == solved.left == int(said[1])


def _lifted(solved: Solved, missing: int) -> bool:
    """An increase without a method may take no stitch of the row: then the row fits (lifted increases)."""
    incs = sum(event.n for event in solved.events if event.act == "inc")
    if incs and incs == missing:
        solved.used -= missing
        solved.left = 0
        return True
    return False


def show(hands: Hands, step: RowOf) -> None:
    """A row told after the piece has ended shows how a part of it is worked: it is checked, not added."""
    if not step.run:
        return
    n = hands.shown or _shown_on(hands, step)
    solved = solve(step.run, n, hands.world.size, hands.live.start_edge())
    hands.done(step)
    if solved.left:
        judge_on(hands, step, solved, n)
    for item, count in solved.taken:
        take(hands, item, count)
    hands.shown = sum(solved.parts) + (n - solved.used if solved.left > 0 else 0)


def _shown_on(hands: Hands, step: RowOf) -> int:
    """Return how many stitches such a row is meant for: where stitches are held, those of the row that holds them."""
    if any(isinstance(item, say.Held) for item in step.run):
        for row_ in hands.parts[0].rows:
            if any(event.act == "hold" for event in row_.events):
                return row_.before
    return hands.parts[0].rows[-1].after if hands.parts[0].rows else hands.live.n


def judge_on(hands: Hands, step: RowOf, solved: Solved, n: int) -> None:
    if is_soft(step.run):
        return
    hands.trouble("row-short" if solved.left > 0 else "row-long", step.span, solved.used, n)
