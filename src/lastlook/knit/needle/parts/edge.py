"""Which edge of the live group a word means: 'armhole', 'neck', 'same', 'beginning'."""

from __future__ import annotations

from lastlook.finding import Span
from lastlook.knit.needle.state import Hands

OUTER = frozenset({"armhole", "side", "raglan", "sleeve", "outer", "underarm", "shoulder", "seam", "back"})
INNER = frozenset({"neck", "front", "center", "inner", "center front", "opposite"})
OTHER = {"left": "right", "right": "left", "": "", "inside": "inside"}


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
