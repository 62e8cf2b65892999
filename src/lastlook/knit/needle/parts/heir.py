"""A piece that goes on with stitches another one left: on its needle, or on a holder that is named for it."""

from __future__ import annotations

import re

from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.state import Hands
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Held, RowOf, Run, Step, Taken

FOR = re.compile(
    r"(?i)\bfor (?:the |each |first |second |other )?((?:(?:left|right|center|centre) )?(?:front|back|sleeve|thumb))\b"
)
REACH = 48
"""How far behind the words of a holder its name may stand."""


def inherit(hands: Hands, steps: list[Step]) -> None:
    """Begin with what the piece before left on the needle, where nothing is cast on, picked up or copied."""
    left = hands.world.on_needle
    first = next((one for one in steps if not isinstance(one, say.Nothing | say.Section | say.Structure)), None)
    if left is None or first is None or hands.crochet:
        return
    mine = hands.world.waiting.get(hands.name.lower())
    n = left[0] if mine is None else mine
    if not _goes_on(first, hands, n):
        return
    _own(hands)
    hands.begin(n)
    hands.live.rounds = left[1] and mine is None
    hands.picked_up = n
    hands.cast_on = None
    hands.armhole_row = 0
    hands.span = first.span


def _own(hands: Hands) -> None:
    hands.is_heir = any(one.troubles for one in hands.world.pieces.values() if one.left or one is _last(hands))


def _last(hands: Hands) -> Hands | None:
    return next(reversed(hands.world.pieces.values()), None)


def _goes_on(first: Step, hands: Hands, n: int) -> bool:
    """Whether the first instruction works on stitches that are there."""
    if isinstance(first, say.Shape | say.BindOffs | say.Finish):
        return True
    if isinstance(first, say.WorkOn):
        return not first.goal.like or first.goal.like == "back"
    if isinstance(first, RowOf) and first.run:
        return not any(isinstance(item, Taken) for item in first.run)
    return False


def note_held(hands: Hands, run: Run, counts: list[int]) -> None:
    """Remember for which piece a row leaves stitches on a holder."""
    text = hands.world.words
    since = 0
    held = [item for item in run if isinstance(item, Held)]
    for item, count in zip(held, counts, strict=False):
        start = max(since, item.span.start - 60)
        near = text[start : item.span.end + REACH]
        before = [one for one in FOR.finditer(near) if start + one.start() < item.span.end]
        found = before[-1] if before else FOR.search(near)
        if found is not None:
            hands.left[" ".join(found[1].lower().replace("centre", "center").split())] = count
        since = item.span.end


def take_waiting(hands: Hands, step: say.Resume | say.Hold, n: int) -> None:
    """'Slip 68 sts from holder to needle': as many as wait for this piece."""
    hands.begin(n)
    hands.picked_up = n
    hands.cast_on = None
    waits = hands.world.waiting.get(hands.name.lower())
    if waits is None:
        return
    hands.armhole_row = 0
    _own(hands)
    compare(hands, step.span, n, waits, "holder")
