"""An outer edge in plain stockinette with nothing planned for it: it will curl (common practice, no source)."""

from __future__ import annotations

import re

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.choose import Outcome
from lastlook.knit.needle import Hands
from lastlook.leaflet import Leaflet

OUTER = ("back", "front", "sleeve", "body", "yoke", "scarf", "muffler", "shawl", "stole", "skirt", "blanket", "vest",
         "pullover", "cardigan", "jumper", "jacket", "sweater", "cape")  # fmt: skip
INNER = ("lining", "pocket", "facing", "band", "gusset")
PLANNED = re.compile(
    r"\b(?:hems?|hemmed|hemline|turn(?:ed|ing)? (?:up|under|in|back|over)|turn-?ups?|crochet\w*|s\.? ?c\b|d\.? ?c\b|edg(?:ing|ed)|"
    r"borders?|fac(?:e|ed|ing|ings)|fold(?:ed|ing)?|picot|fringe|bind(?:ing)? (?:with|the)|ribbon|lin(?:ed|ing)|roll\w*|"
    r"curl\w*|waistband|casing|elastic|(?:pick up|take up)[^.]{0,60}\b(?:lower|cast|bottom|outer|edge))\b",
    re.I,
)
FLAT = 4
"""So many rows of rib, garter or seed stitch at the edge are taken as an edging."""


def of_curls(leaflet: Leaflet, outcomes: list[Outcome]) -> list[Finding]:
    """Return a note where pieces begin in plain stockinette and nothing in the leaflet speaks of an edging."""
    if not outcomes or PLANNED.search(leaflet.source.text):
        return []
    bare = [hands for hands in outcomes[0].pieces.values() if _begins_bare(hands)]
    if not bare:
        return []
    names = [hands.name for hands in bare]
    named = names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]
    begin = "begins" if len(names) == 1 else "begin"
    return [
        Finding(
            kind="edge-curls",
            certainty=Certainty.NOTE,
            say=f"{named} {begin} in plain stockinette at the cast-on edge, and no edging is planned for it.",
            why="Stockinette curls towards its right side at a free edge. No rib, garter stitch, hem, border or band is named for this one.",
            attempt="Decide before casting on: a few rows of rib or garter stitch first, or a hem; an edging can also be picked up later. Each takes yarn.",
            where=Where(span=bare[0].span, piece=bare[0].name),
        )
    ]  # fmt: skip


def _begins_bare(hands: Hands) -> bool:
    low = hands.name.lower()
    if hands.crochet or hands.blind or not hands.cast_on or not hands.span.end:
        return False
    if not any(word in low for word in OUTER) or any(word in low for word in INNER):
        return False
    first = hands.parts[0].rows[:FLAT] if hands.parts else []
    return len(first) == FLAT and all(row.structure == "stockinette" and not row.words for row in first)
