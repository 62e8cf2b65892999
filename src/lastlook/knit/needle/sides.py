"""Edges, parts and other pieces: which edge is meant, what waits, what is copied, and how a piece ends."""

from __future__ import annotations

from lastlook.finding import Span
from lastlook.knit.needle import copying
from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.fabric import fabric_row
from lastlook.knit.needle.live import Event, Live
from lastlook.knit.needle.solve import Solved
from lastlook.knit.needle.state import Hands, World
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step, Taken

OUTER = frozenset({"armhole", "side", "raglan", "sleeve", "outer", "underarm", "shoulder", "seam", "back"})
INNER = frozenset({"neck", "front", "center", "inner", "center front", "opposite"})
OTHER = {"left": "right", "right": "left", "": "", "inside": "inside"}
find_piece = copying.find_piece
landmark = copying.landmark
repeat_of = copying.repeat_of


def place_edges(hands: Hands) -> None:
    """A left front, worn, has its side at the right edge of the fabric; a right front the other way round."""
    low = hands.name.lower()
    if "front" in low or "back" in low:
        if "left" in low:
            left_front = "front" in low
            hands.live.outer, hands.live.inner = ("right", "left") if left_front else ("left", "right")
        elif "right" in low:
            right_front = "front" in low
            hands.live.outer, hands.live.inner = ("left", "right") if right_front else ("right", "left")


def edges(hands: Hands, word: str) -> list[str]:
    """Return the edges that a word means on the live group: 'left', 'right' or 'inside'."""
    live = hands.live
    if word == "beg":
        return [live.start_edge()]
    if word == "end":
        return [live.end_edge()]
    if word in ("same", "that", "this") and hands.last_edge:
        return [hands.last_edge]
    if word in ("inside", "evenly"):
        return ["inside"]
    found = ""
    if word in OUTER:
        found = live.outer
    elif word in INNER:
        found = live.inner
    elif word == "alt" and hands.last_edge:
        found = OTHER[hands.last_edge]
    elif word in ("left", "right"):
        found = word
    if found:
        hands.last_edge = found
        return [found]
    return ["right", "left"]


def check_edge(hands: Hands, edge: str, n: int, span: Span) -> None:
    """A neck is bound off at the neck edge; where it falls at the side the front is not mirrored."""
    live = hands.live
    begun = hands.sections.get("neck", 0)
    shaped = any(event.edge == live.inner for row in live.rows if row.number >= begun for event in row.events)
    if len(hands.parts) > 1 or shaped:
        return
    if hands.section == "neck" and live.inner and edge in ("left", "right") and edge != live.inner and n > 1:
        known = any(one.kind == "wrong-edge" for one in hands.troubles)
        if not known and not hands.mirrored:
            hands.trouble("wrong-edge", span, live.number + 1, 0, f"{edge}|{live.inner}")


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


def take(hands: Hands, item: Taken, count: int) -> None:
    """Stitches from a holder must be as many as wait there."""
    if item.picked_up:
        hands.picked.append((item.source, count))
        return
    waiting = _waiting(hands, item.source)
    hands.picked.append((item.source, count))
    if waiting is not None and count != waiting:
        compare(hands, item.span, count, waiting, "holder")
        hands.world.holders_checked.add(item.span)
    elif waiting is not None:
        hands.counts.append(copying.count_of(item.span, count, waiting, hands.live.number, "holder"))


def _waiting(hands: Hands, source: str) -> int | None:
    holders = hands.world.holders
    words = source.split()
    if "sleeve" in words:
        return holders.get("sleeve")
    if "front" in words:
        return holders.get("front center", holders.get("front"))
    if "back" in words:
        return holders.get("back")
    if "lining" in words or "pocket" in words:
        return next((count for name, count in holders.items() if "pocket" in name and "center" not in name), None)
    if "hold" in words:
        waiting = [count for name, count in holders.items() if name not in hands.world.used_holders]
        return waiting[0] if len(waiting) == 1 else None
    return None


def hold(hands: Hands, step: Step) -> None:
    """Stitches go to a holder."""
    from lastlook.knit.needle.rows import close

    if not isinstance(step, say.Hold):
        return
    n = hands.at(step.n) if step.n is not None else None
    pending = bool(hands.pending)
    if pending and step.which == "instep":
        hands.worked.add(hands.pending_step.span if hands.pending_step else step.span)
        hands.pending, hands.pending_step, pending = [], None, False
    if pending:
        _hold_rest_of_row(hands, step, n)
        return
    close(hands)
    if not hands.parts:
        return
    hands.done(step)
    live = hands.live
    if live.behind > 0:
        split_rest(hands, n, step.span)
        return
    if hands.held and step.which in ("center", "next") and n is not None:
        rest = hands.held[0]
        if n > rest.n:
            hands.trouble("row-long", step.span, n, rest.n)
            return
        rest.n -= n
        hands.kept["center"] = hands.kept.get("center", 0) + n
        return
    if hands.held and n is not None and n == hands.held[0].n:
        compare(hands, step.span, n, hands.held[0].n, "held")
        return
    if step.which == "instep" and n is not None and n < live.n:
        _instep(hands, n, step.span)
        return
    if step.which == "next" and n is not None and n < live.n:
        live.n -= n
        hands.kept["center"] = n
        if live.rows:
            live.rows[-1].after -= n
            live.rows[-1].gives -= n
        return
    if n is not None:
        compare(hands, step.span, n, live.n, "hold")
    for one in hands.lives:
        one.ended = "on holder"
    hands.ended = "on holder"


def _instep(hands: Hands, n: int, span: Span) -> None:
    """Part of the round waits while the heel is worked back and forth on the rest."""
    live = hands.live
    hands.was_round = live.rounds
    waits = Live(n, next_right=True, base=live.number, name=hands.name)
    live.n -= n
    if hands.claimed is not None:
        compare(hands, hands.claimed[0], hands.claimed[1], live.n, "part")
    hands.counts.append(copying.count_of(span, n, n, live.number, "part"))
    live.rounds = False
    if live.rows:
        live.rows[-1].after -= n
        live.rows[-1].gives -= n
    hands.held = [waits]


def _hold_rest_of_row(hands: Hands, step: say.Hold, n: int | None) -> None:
    """'K 16; place remaining 36 sts on a holder and turn': a row that ends where the rest is put away."""
    from lastlook.knit.needle import rows

    run = (*hands.pending, say.Turn())
    row = hands.pending_step
    hands.pending, hands.pending_step = [], None
    if row is None:
        return
    hands.done(row)
    hands.done(step)
    rows.attempt(hands, row, run)
    split_rest(hands, n, step.span)


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


def resume(hands: Hands, step: Step) -> None:
    """Go on with the stitches that wait, or with the first ones."""
    if not isinstance(step, say.Resume) or not (hands.parts or step.n):
        return
    hands.done(step)
    n = hands.at(step.n) if step.n is not None else None
    if not hands.parts and n is not None:
        hands.begin(n)
        hands.picked_up = n
        return
    live = hands.live
    if live.behind > 0:
        split_rest(hands, None, step.span)
        live = hands.live
    if len(hands.lives) > 1 and n is not None and any(one.n == n for one in hands.lives):
        group = [one for one in hands.lives if one.n == n]
        mine = group[-1] if " last " in f" {hands.words_of(step.span).lower()} " else group[0]
        hands.held = [one for one in hands.lives if one is not mine]
        hands.lives, hands.live = [mine], mine
        compare(hands, step.span, n, mine.n, "on")
        return
    if step.which == "first" or not hands.held:
        if n is not None:
            compare(hands, step.span, n, live.n, "on")
        return
    new = hands.held.pop(0)
    if live.ended == "open":
        live.ended = "joined" if live is hands.parts[0] else live.ended
    hands.lives, hands.live = [new], new
    hands.section = "neck" if "neck" in hands.sections else hands.section
    if n is not None:
        compare(hands, step.span, n, new.n, "rem")


def apart(hands: Hands, step: Step) -> None:
    """Both sides are worked at once."""
    hands.done(step)
    if hands.held and hands.parts:
        hands.lives = [hands.live, *hands.held]
        hands.held = []


def copy(hands: Hands, step: Step) -> None:
    """Work as another piece, or a part of one."""
    if isinstance(step, say.Copy):
        copying.copy(hands, step)


def other_side(hands: Hands, step: Step) -> None:
    """The second side is the first one mirrored, from the row after those it has."""
    if not isinstance(step, say.OtherSide) or not hands.parts:
        return
    hands.done(step)
    if hands.held:
        new = hands.held.pop(0)
        hands.lives, hands.live = [new], new
    second = hands.live
    first = next((one for one in hands.parts[1:] if one is not second), None)
    if first is not None:
        copying.mirror_rows(hands, first, second, step.span)
        second.ended = first.ended


def finish(hands: Hands, step: Step) -> None:
    """End what is live."""
    from lastlook.knit.needle.rows import close

    close(hands)
    if not isinstance(step, say.Finish) or not hands.parts:
        return
    hands.done(step)
    live = hands.live
    n = hands.at(step.n) if step.n is not None else None
    if step.how == "bound off but":
        _all_but(hands, step, n or 0)
        return
    if n is not None and (live.n > 0):
        compare(hands, step.span, n, live.n, "rest")
    if step.how == "grafted" and step.parts:
        total = sum(hands.at(one) for one in step.parts)
        if len(step.parts) == 2:
            a, b = (hands.at(one) for one in step.parts)
            compare(hands, step.span, a, b, "graft")
        compare(hands, step.span, total, live.n, "graft")
    how = {"grafted": "joined"}.get(step.how, step.how)
    live.ended = how if live.ended == "open" else live.ended
    hands.ended = live.ended


def _all_but(hands: Hands, step: say.Finish, keep: int) -> None:
    live = hands.live
    if keep <= live.n:
        event = Event("bind off", live.start_edge(), live.n - keep)
        fabric_row(hands, (event,) if event.n else (), step.span)


def settle(hands: Hands) -> None:
    """Note what the piece leaves waiting for others; a shoulder that is bound off leaves no stitch over."""
    for live in hands.parts:
        last = live.rows[-1] if live.rows else None
        if last is None or live.ended != "open" or not (live.outer or live.inner) or live is not hands.parts[-1]:
            continue
        offs = sum(event.n for event in last.events if event.act == "bind off")
        if 0 < live.n < offs and hands.section == "shoulder":
            hands.live = live
            hands.trouble("count-over", last.span, live.n, 0, "shoulder")
    settle_in(hands, hands.world)


def settle_in(hands: Hands, world: World) -> None:
    """Put a finished piece among those of a world, with what it left on holders."""
    low = hands.name.lower()
    if not hands.parts:
        return
    if hands.ended == "on holder":
        world.holders[low] = hands.live.n if len(hands.parts) > 1 else hands.parts[0].n
    if "center" in hands.kept:
        world.holders[f"{low} center"] = hands.kept["center"]
    world.pieces[low] = hands
