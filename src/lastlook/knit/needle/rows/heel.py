"""Turned heels: each row goes as far as the turn before and one stitch across it, until all or enough are worked.

The two sides are worked alike, knit on one and purl on the other; where stitches follow the decrease, each row is so
many longer than the one before.
"""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Span
from lastlook.knit.needle.rows.ahead import short_row
from lastlook.knit.needle.sight import restart
from lastlook.knit.needle.solve import Solved, fixed_uses, is_filling, solve
from lastlook.knit.needle.state import Count, Hands, Recent
from lastlook.leaflet import Figure
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import RowOf, Run, Turn, Work

MOST = 160
SWAP = {"k": "p", "p": "k", "k2tog": "p2tog", "p2tog": "k2tog", "skp": "p2tog", "ssk": "p2tog"}


def is_turning(hands: Hands) -> bool:
    """Whether the last row was turned before its end, after a decrease."""
    entry = hands.recent[-1] if hands.recent else None
    return entry is not None and _is_short(entry) and hands.live.behind > 0


def _is_short(entry: Recent) -> bool:
    return any(isinstance(item, Turn) for item in entry.run) and not any(is_filling(item) for item in entry.run)


def turn_on(hands: Hands, span: Span, goal: say.Goal, ending: say.Ending) -> None:
    """Go on turning until the goal: so many stitches, so many unworked at each side, or all of them worked."""
    live = hands.live
    entry = hands.recent[-1]
    until = hands.at(goal.until) if goal.until is not None else None
    waits = until if goal.until_what == "unworked" else None
    total = until if waits is None else None
    run = entry.run
    for _ in range(MOST):
        if _is_reached(hands, waits, total):
            break
        run = _next(run, hands)
        solved = _laid(hands, run)
        if solved is None:
            break
        short_row(hands, RowOf(None, run, span=span), solved)
    _prove(hands, span, waits, total)
    if waits is None and (live.behind == 0 or live.beyond == 0):
        live.behind = live.beyond = 0
    if ending.row:
        live.next_right = ending.row in ("p", "ws")


def _is_reached(hands: Hands, waits: int | None, total: int | None) -> bool:
    live = hands.live
    if waits is not None:
        return live.behind <= waits and live.beyond <= waits
    return live.n <= total if total is not None else live.behind == live.beyond == 0


def _laid(hands: Hands, run: Run) -> Solved | None:
    """Lay the row over what lies ahead; at the very end nothing is left to work after the decrease."""
    live = hands.live
    ahead = live.n - live.behind
    for one in (run, _without_tail(run)):
        solved = solve(one, ahead, hands.world.size, live.start_edge())
        if solved.left >= 0:
            solved.turned = True
            return solved
    return None


def _without_tail(run: Run) -> Run:
    last = max((spot for spot, item in enumerate(run) if isinstance(item, Work) and item.uses > item.gives), default=-1)
    last = max((spot for spot, item in enumerate(run) if isinstance(item, Work) and item.name == "psso"), default=last)
    return (*run[: last + 1], Turn())


def _next(run: Run, hands: Hands) -> Run:
    """Return the row of the other side, which goes up to the turn of the one before and across it."""
    size = hands.world.size
    tail = fixed_uses(run, size) - fixed_uses(_without_tail(run), size)
    body = [item for item in run if not isinstance(item, Turn)]
    taken = [spot for spot, item in enumerate(body) if isinstance(item, Work) and item.uses > item.gives]
    taken = taken or [spot for spot, item in enumerate(body) if isinstance(item, Work) and item.name == "psso"]
    first = taken[-1] if taken else len(body)
    between = hands.live.n - hands.live.behind - hands.live.beyond
    out = []
    for item in body:
        swapped = replace(item, name=SWAP.get(item.name, item.name)) if isinstance(item, Work) else item
        out.append(swapped)
    head = [spot for spot in range(first) if _is_plain(out[spot])]
    if not head:
        return (*out, Turn())
    longest = max(head, key=lambda spot: _figure(out[spot], size))
    others = sum(_used(out[spot], size) for spot in range(first + 1) if spot != longest and spot < len(out))
    # The row goes up to the turn before and, with its decrease, one stitch across it, or as many as were told.
    plain = between + (hands.live.across or 1) - others if between else _figure(out[longest], size) + tail
    work = out[longest]
    if isinstance(work, Work):
        out[longest] = replace(work, n=Figure((float(max(0, plain)),)))
    return (*out, Turn())


def _is_plain(item: object) -> bool:
    return isinstance(item, Work) and item.name in ("k", "p")


def _figure(item: object, size: int) -> int:
    return item.n.whole(size) if isinstance(item, Work) and item.n is not None else 0


def _used(item: object, size: int) -> int:
    return _figure(item, size) * item.uses if isinstance(item, Work) else 0


def _prove(hands: Hands, span: Span, waits: int | None, total: int | None) -> None:
    live = hands.live
    if waits is not None:
        worked = max(live.behind, live.beyond)
        hands.counts.append(Count(span, waits, worked, live.number, "unworked"))
    elif total is not None:
        hands.counts.append(Count(span, total, live.n, live.number, "until"))
        if live.n == total:
            restart(hands, total)
        else:
            hands.trouble("goal-unreachable", span, live.n, total)
            hands.off_by.add(live.n - total)
