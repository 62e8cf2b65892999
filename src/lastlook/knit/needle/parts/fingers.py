"""The fingers of a glove: each is put together out of stitches of the hand, stitches cast on and stitches picked up.

The *pool* is what is left of the hand. A thumb is put together the same way, out of the stitches that wait for it.
"""

from __future__ import annotations

import re

from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.live import Live
from lastlook.knit.needle.state import Fingers, Hands
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import CastOnInRow, Held, Item, RowOf, Step, Taken, Work

ORDER = r"first|second|third|fourth|fifth|1st|2nd|3rd|4th|index|fore|middle|ring|little|small"
HEAD = re.compile(rf"(?i)^\W*(?:the |for the |to (?:make|work) the )?(?:(?:{ORDER})[- ]?finger|thumb)\W*$")
AGAIN = re.compile(rf"(?i)\b(?:as|like)\b.{{0,24}}?\b({ORDER})[- ]?finger")
LAST = re.compile(r"(?i)\b(?:remain\w*|rem|rest)\b")


def is_head(hands: Hands, step: Step) -> bool:
    """Whether a finger begins here, or the thumb once the fingers have begun."""
    if not isinstance(step, say.Nothing | say.Section) or not hands.parts or hands.crochet:
        return False
    words = hands.words_of(step.span)
    if not HEAD.match(words):
        return False
    return "finger" in words.lower() or hands.fingers is not None


def begin(hands: Hands, step: Step) -> None:
    """Put a new finger on the needles, with no stitch yet."""
    hands.done(step)
    complete(hands)
    if hands.fingers is None:
        hands.fingers = Fingers(hands.live.n)
        if hands.live.ended == "open":
            hands.live.ended = "joined"
    new = Live(0, base=max(live.number for live in hands.parts), rounds=True, name=hands.name)
    hands.parts.append(new)
    hands.lives, hands.live = [new], new
    fingers = hands.fingers
    fingers.gathers, fingers.is_thumb = True, "thumb" in hands.words_of(step.span).lower()
    fingers.took = 0
    hands.section = "thumb" if fingers.is_thumb else "finger"


def complete(hands: Hands) -> None:
    """End a finger that is worked as another: from that one's first shaping on its rounds are the same."""
    fingers = hands.fingers
    if fingers is None or fingers.model is None:
        return
    rows = fingers.model.rows
    fingers.model = None
    if any(row.events for row in hands.live.rows):
        return
    first = next((spot for spot, row in enumerate(rows) if row.events), len(rows))
    for row in rows[first if hands.live.rows else 0 :]:
        if row.before == hands.live.n:
            hands.add(row.used, row.gives, row.events, row.span, row.structure, row.words)


def gather(hands: Hands, step: Step) -> bool:
    """Add what a step puts on the finger; False where the finger is complete and the step works on it."""
    if hands.fingers is None or not hands.fingers.gathers:
        return _ends_alike(hands, step)
    if isinstance(step, RowOf) and _only_gathers(step):
        for item in step.run:
            _add(hands, step, item)
    elif isinstance(step, say.CastOn) and step.rows is None and step.until is None:
        hands.live.n += hands.at(step.n)
    elif isinstance(step, say.Resume) and step.n is not None:
        _from_hand(hands, step, hands.at(step.n))
    elif isinstance(step, say.Nothing) and _is_again(hands, step):
        return True
    elif not isinstance(step, say.Hold | say.Nothing | say.Rounds):
        _close(hands)
        return False
    hands.done(step)
    return True


def _only_gathers(step: RowOf) -> bool:
    return bool(step.run) and all(
        isinstance(item, CastOnInRow | Taken | Held)
        or (isinstance(item, Work) and item.n is not None and item.uses == item.gives == 1)
        for item in step.run
    )


def _add(hands: Hands, step: RowOf, item: Item) -> None:
    if isinstance(item, CastOnInRow):
        hands.live.n += hands.at(item.n)
    elif isinstance(item, Taken) and item.picked_up:
        count = hands.at(item.n)
        hands.live.n += count
        hands.picked.append((item.source, count))
    elif isinstance(item, Taken | Work) and item.n is not None:
        _from_hand(hands, step, hands.at(item.n))


def _from_hand(hands: Hands, step: Step, count: int) -> None:
    fingers = hands.fingers
    assert fingers is not None
    hands.live.n += count
    if fingers.is_thumb:
        if hands.threads and count not in hands.threads:
            compare(hands, step.span, count, hands.threads[-1], "held")
        return
    if LAST.search(hands.words_of(step.span)) and count != fingers.pool:
        compare(hands, step.span, count, fingers.pool, "rest")
    fingers.pool = max(0, fingers.pool - count)
    fingers.took += count


def _close(hands: Hands) -> None:
    fingers = hands.fingers
    assert fingers is not None
    fingers.gathers = False
    hands.off_by.clear()
    if not fingers.is_thumb:
        fingers.made.append((hands.live, fingers.took))


def _is_again(hands: Hands, step: Step) -> bool:
    """'Third finger: as second finger': as many stitches, from hand and base alike."""
    said = AGAIN.search(hands.words_of(step.span))
    fingers = hands.fingers
    if said is None or fingers is None or not fingers.made:
        return False
    number = NUMBERS.get(said[1].lower(), len(fingers.made))
    model, took = fingers.made[min(number, len(fingers.made)) - 1]
    hands.live.n = model.rows[0].before if model.rows else model.n
    hands.live.ended = model.ended
    fingers.model = model
    fingers.pool = max(0, fingers.pool - took)
    fingers.gathers = False
    fingers.made.append((hands.live, took))
    hands.done(step)
    return True


def _ends_alike(hands: Hands, step: Step) -> bool:
    """'Finish as first finger': it ends as that one did."""
    fingers = hands.fingers
    if fingers is None or not fingers.made or hands.live.ended != "open":
        return False
    words = hands.words_of(step.span).lower()
    if isinstance(step, say.OtherSide | say.Nothing) and re.search(r"\b(?:finish|fasten|complete|end)", words):
        hands.live.ended = next((live.ended for live, _ in fingers.made if live.ended != "open"), "drawn up")
        hands.done(step)
        return True
    return False


NUMBERS = {"first": 1, "1st": 1, "index": 1, "fore": 1, "second": 2, "2nd": 2, "middle": 2, "third": 3, "3rd": 3,
           "ring": 3, "fourth": 4, "4th": 4, "little": 4, "small": 4}  # fmt: skip
