"""Stitches between two turns that are worked by themselves: a thumb, the instep of a bootee, a pocket flap.

The *flanks* are the stitches that wait at both sides of them. Work goes on over all of them when something is picked
up beside the island, or when the island has ended.
"""

from __future__ import annotations

from lastlook.knit.needle.live import Live
from lastlook.knit.needle.solve import fixed_uses, is_filling
from lastlook.knit.needle.state import Hands
from lastlook.leaflet.instruction import Held, Run, Taken, Turn, Work


def middle(live: Live) -> int:
    """Return how many stitches lie between two turns; 0 where the work was not turned at both sides."""
    return max(0, live.n - live.behind - live.beyond) if live.behind > 0 and live.beyond > 0 else 0


def set_apart(hands: Hands) -> None:
    """Go on with the stitches between the last two turns only."""
    live = hands.live
    right, left = (live.behind, live.beyond) if live.start_edge() == "right" else (live.beyond, live.behind)
    _leave(hands, right, live.n - right - left, left)


def set_apart_next(hands: Hands, passed: int, n: int) -> None:
    """'K 10. On the next 10 sts work 16 rows': those passed wait on one side, the rest on the other."""
    live = hands.live
    rest = live.n - passed - n
    right, left = (passed, rest) if live.start_edge() == "right" else (rest, passed)
    _leave(hands, right, n, left)


def _leave(hands: Hands, right: int, n: int, left: int) -> None:
    live = hands.live
    live.ended = "joined"
    live.behind = live.beyond = 0
    island = Live(n, next_right=live.next_right, base=live.number, offset=float(right), name=hands.name)
    hands.was_round = live.rounds
    hands.parts.append(island)
    hands.lives, hands.live, hands.flanks = [island], island, (right, left)


def is_own_row(hands: Hands, run: Run) -> bool:
    """Whether a row after two turns uses just the stitches between them."""
    between = middle(hands.live)
    if not between or any(isinstance(item, Turn | Taken) or is_filling(item) for item in run):
        return False
    return fixed_uses(run, hands.world.size) == between


def goes_round(hands: Hands, run: Run) -> bool:
    """Whether a row goes over the flanks again: the island has ended, or stitches are picked up beside it."""
    if hands.flanks is None:
        return False
    return hands.live.ended != "open" or any(isinstance(item, Taken) for item in run)


def rejoin(hands: Hands, run: Run = ()) -> None:
    """Take flanks and island together again; the next row begins where it fits."""
    if hands.flanks is None:
        return
    (right, left), island = hands.flanks, hands.live
    mid = island.n if island.ended == "open" else 0
    if island.ended == "open":
        island.ended = "joined"
    new = Live(right + mid + left, base=max(live.number for live in hands.parts), name=hands.name)
    new.rounds = hands.was_round
    hands.flanks = None
    hands.parts.append(new)
    hands.lives, hands.live = [new], new
    uses = fixed_uses(plain(run), hands.world.size)
    fills = any(is_filling(item) for item in run)
    picks = any(isinstance(item, Taken) and item.picked_up for item in run)
    for forward, behind in ((True, 0), (True, right), (True, right + mid), (False, left), (False, left + mid)):
        if uses == new.n - behind and not fills:
            new.next_right, new.behind = forward, behind
            return
    if picks or (run and not mid):
        new.behind = right if fills or uses <= mid + left else 0


def plain(run: Run) -> Run:
    """Return a run with stitches 'of the instep' or 'from the needle' as the stitches on the needle that they are."""
    if any(isinstance(item, Held) for item in run):
        return run
    return tuple(
        Work("k", item.n, span=item.span) if isinstance(item, Taken) and not item.picked_up and item.n else item
        for item in run
    )
