"""A piece divides into groups, and groups come together again."""

from __future__ import annotations

from lastlook.finding import Span
from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.live import Live
from lastlook.knit.needle.parts.edge import OTHER
from lastlook.knit.needle.solve import Solved
from lastlook.knit.needle.state import Hands
from lastlook.leaflet.instruction import Step


def part(hands: Hands, solved: Solved, span: Span) -> None:
    """A row that leaves two groups or more: the first is worked on, or both where a second ball is joined."""
    live = hands.live
    counts = [count for count in solved.parts if count > 0] or [0]
    start = live.start_edge()
    first_round = live.rounds
    if solved.turned and solved.left > 0:
        counts.append(solved.left)
    left_over = live.n - solved.used + solved.gives - sum(counts)
    if not solved.turned and left_over > 0:
        counts[-1] += left_over
    hands.add(solved.used, solved.gives, tuple(solved.events), span, words=hands.words_of(span))
    live.ended = "joined"
    if solved.held:
        hands.kept["center"] = solved.held[0]
    groups = []
    for number, count in enumerate(counts):
        outer = start if number == 0 else OTHER[start] if number == len(counts) - 1 else ""
        new = Live(
            count, next_right=live.next_right, base=live.number, outer=outer, inner=OTHER[outer], name=hands.name
        )
        new.rounds = first_round and len(counts) == 1
        groups.append(new)
    at = 0.0
    ordered = groups if start == "right" else groups[::-1]
    gaps = [event.n for event in solved.events if event.edge == "inside" and event.act in ("bind off", "hold")]
    for number, new in enumerate(ordered):
        new.offset = at
        at += new.n + (gaps[number] if number < len(gaps) else 0)
    hands.parts += groups
    both = solved.parted or (len(solved.parts) > 1 and not solved.turned)
    hands.lives = groups if both else groups[:1]
    hands.held = [] if both else groups[1:]
    hands.live = hands.lives[0]


def split_rest(hands: Hands, n: int | None, span: Span) -> None:
    """'Turn, leaving the rest on a holder' after a short row: the unworked stitches become a group that waits."""
    live = hands.live
    rest = live.behind
    if rest <= 0:
        return
    if n is not None:
        compare(hands, span, n, rest, "held")
    start = OTHER[live.start_edge()]
    live.behind = 0
    worked = live.n - rest
    live.ended = "joined"
    first = Live(worked, next_right=live.next_right, base=live.number, outer=start, inner=OTHER[start], name=hands.name)
    second = Live(
        rest, next_right=not live.next_right, base=live.number - 1, outer=OTHER[start], inner=start, name=hands.name
    )
    if start == "right":
        second.offset = float(worked)
    else:
        first.offset = float(rest)
    hands.parts += [first, second]
    hands.lives, hands.held, hands.live = [first], [second], first


def merge(hands: Hands) -> None:
    """Groups that were parted come together again on one needle: an opening is closed over."""
    total = sum(live.n for live in hands.lives)
    first = hands.lives[0]
    if not any(live.rows for live in hands.lives):
        parent = hands.parts[0] if len(hands.parts) == len(hands.lives) + 1 else None
        if parent is not None:
            hands.parts = [parent]
            parent.n, parent.ended = total, "open"
            hands.lives, hands.live = [parent], parent
            return
    new = Live(total, next_right=first.next_right, base=max(live.number for live in hands.lives), name=hands.name)
    for live in hands.lives:
        live.ended = "joined"
    hands.parts.append(new)
    hands.lives, hands.live = [new], new


def apart(hands: Hands, step: Step) -> None:
    """Both sides are worked at once."""
    hands.done(step)
    if hands.held and hands.parts:
        hands.lives = [hands.live, *hands.held]
        hands.held = []


def leave_rest(hands: Hands, solved: Solved, span: Span) -> None:
    """A row is worked up to the stitches that the next words go on with; those before them wait or are bound off."""
    live, rest = hands.live, solved.left
    hands.add(solved.used, solved.gives, tuple(solved.events), span, words=hands.words_of(span))
    live.ended = "joined"
    start = live.start_edge()
    kept = live.n - rest
    if solved.held:
        hands.kept["center"] = hands.kept.get("center", 0) + sum(solved.held)
    new = Live(rest, next_right=live.next_right, base=live.number, outer=start, inner=OTHER[start], name=hands.name)
    hands.parts.append(new)
    hands.lives, hands.live, hands.held = [new], new, []
    if kept > 0:
        waits = Live(
            kept, next_right=live.next_right, base=live.number, outer=OTHER[start], inner=start, name=hands.name
        )
        hands.parts.append(waits)
        hands.held = [waits]
