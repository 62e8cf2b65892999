"""What waits on a holder, and how work goes on with it."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.finding import Span
from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.live import Live
from lastlook.knit.needle.parts.divide import split_rest
from lastlook.knit.needle.parts.heir import take_waiting
from lastlook.knit.needle.parts.island import middle, set_apart
from lastlook.knit.needle.state import Count, Hands
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step, Taken

SHARES = re.compile(r"\bon each of (?:the )?(?:other )?(two|2|three|3)\b")
TIMES = {"two": 2, "2": 2, "three": 3, "3": 3}


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
        hands.counts.append(Count(item.span, count, waiting, hands.live.number, "holder"))


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
    if not isinstance(step, say.Hold):
        return
    n = hands.at(step.n) if step.n is not None else None
    if not hands.parts:
        if n is not None and re.search(
            r"(?i)\b(?:to|on to|onto) (?:a |the )?\w*\s*needles?\b", hands.words_of(step.span)
        ):
            hands.done(step)
            take_waiting(hands, step, n)
        return
    hands.done(step)
    live = hands.live
    words = hands.words_of(step.span).lower()
    several = SHARES.search(words)
    if several and n is not None and n * TIMES[several[1]] < live.n:
        n *= TIMES[several[1]]
        if "instep" in words:
            step = replace(step, which="instep")
    if step.which == "half" and live.n > 1:
        live.behind = live.n // 2
        split_rest(hands, None, step.span)
        return
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
        hands.threads.append(n)
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
    hands.counts.append(Count(span, n, n, live.number, "part"))
    live.rounds = False
    if live.rows:
        live.rows[-1].after -= n
        live.rows[-1].gives -= n
    hands.held = [waits]


def resume(hands: Hands, step: Step) -> None:
    """Go on with the stitches that wait, or with the first ones."""
    if not isinstance(step, say.Resume) or not (hands.parts or step.n):
        return
    hands.done(step)
    n = hands.at(step.n) if step.n is not None else None
    if not hands.parts and n is not None:
        take_waiting(hands, step, n)
        return
    live = hands.live
    if hands.flanks is not None and n is not None and n != live.n and " edge " in hands.words_of(step.span):
        compare(hands, step.span, n, min(hands.flanks, key=lambda one: abs(one - n)), "held")
        return
    if n is not None and n == middle(live):
        set_apart(hands)
        compare(hands, step.span, n, n, "on")
        return
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
