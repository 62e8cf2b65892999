"""How a piece ends, and what it leaves waiting for the others."""

from __future__ import annotations

from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.fabric import fabric_row
from lastlook.knit.needle.live import Event
from lastlook.knit.needle.parts import fingers
from lastlook.knit.needle.state import Hands, World
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step


def finish(hands: Hands, step: Step) -> None:
    """End what is live."""
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
    fingers.complete(hands)
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
    world.waiting |= hands.left
    still = hands.live.ended == "open" and hands.live.n > 0 and not hands.fingers
    world.on_needle = (hands.live.n, hands.live.rounds) if still else None
