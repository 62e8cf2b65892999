"""How it is written: whose English, which tape, which hand.

Everything is put together in American words; those of a British leaflet become American first, so that one table
serves both ways. Crochet stitches have one name less in American than in British words: single crochet is double.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum

from lastlook.quantity import Units


class English(Enum):
    """Whose words are used."""

    AMERICAN = "US"
    BRITISH = "British"


class Hand(Enum):
    """Which hand holds the working needle."""

    RIGHT = "right"
    LEFT = "left"


@dataclass(frozen=True)
class Manner:
    """One maker's way."""

    english: English = English.AMERICAN
    units: Units = Units.INCHES
    hand: Hand = Hand.RIGHT


PAIRS = (
    ("bind off", "cast off"), ("bound off", "cast off"), ("binding off", "casting off"),
    ("stockinette st", "stocking st"), ("stockinette", "stocking st"), ("gauge", "tension"), ("seed st", "moss st"),
    ("work even", "work straight"), ("skip", "miss"), ("color", "colour"), ("center", "centre"), ("gray", "grey"),
)  # fmt: skip
"""American and British words (Craft Yarn Council and UK Hand Knitting Association word lists)."""
CROCHET = (("sl st", "ss"), ("sc", "dc"), ("hdc", "htr"), ("dc", "tr"), ("tr", "dtr"),
           ("single crochet", "double crochet"), ("double crochet", "treble"))  # fmt: skip
"""American and British crochet stitches (Craft Yarn Council word list)."""
BRITISH, AMERICAN = dict(PAIRS), {british: american for american, british in reversed(PAIRS)}


def in_british(text: str) -> str:
    """Return American words as a British maker writes them."""
    return _exchanged(text, BRITISH)


def in_american(text: str) -> str:
    """Return British words as an American maker writes them."""
    return _exchanged(text, AMERICAN)


def hooked(text: str, english: English) -> str:
    """Return crochet words in the other English, from the one to `english`."""
    pairs = CROCHET if english is English.BRITISH else [(british, american) for american, british in CROCHET]
    return _exchanged(text, dict(pairs))


def _exchanged(text: str, words: dict[str, str]) -> str:
    pattern = re.compile(r"\b(" + "|".join(sorted(map(re.escape, words), key=len, reverse=True)) + r")\b", re.I)

    def other(match: re.Match[str]) -> str:
        found = match[0]
        word = words[found.lower()]
        return word.upper() if found.isupper() and len(found) > 2 else word.capitalize() if found[0].isupper() else word

    return pattern.sub(other, text)
