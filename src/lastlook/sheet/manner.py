"""How a maker wants her papers: her English, her tape, her hand, her paper.

The sheets' own sentences are written in US terms and changed here. What stands in quotation marks is never changed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum

from lastlook.quantity import Units
from lastlook.sheet.layout.page import Paper


class English(Enum):
    """Whose words: those of the United States or of Britain."""

    US = "US"
    BRITISH = "British"


class Hand(Enum):
    """Which hand leads."""

    RIGHT = "right"
    LEFT = "left"


BRITISH = {
    "bind off": "cast off",
    "bound off": "cast off",
    "binding off": "casting off",
    "bind-off": "cast-off",
    "gauge": "tension",
    "stockinette stitch": "stocking stitch",
    "stockinette": "stocking stitch",
    "work even": "work straight",
    "seed stitch": "moss stitch",
    "muslin": "toile",
    "gray": "grey",
}
"""US terms of the trade and the British ones (Craft Yarn Council and UK Hand Knitting Association word lists)."""
AMERICAN = {
    "cast off": "bind off",
    "casting off": "binding off",
    "cast-off": "bind-off",
    "stocking stitch": "stockinette",
}
"""What a British leaflet says of itself, for a US maker; only words that mean one thing on both sides."""


def _any_of(words: dict[str, str]) -> re.Pattern[str]:
    return re.compile(r"\b(" + "|".join(sorted(words, key=len, reverse=True)) + r")\b", re.I)


_QUOTED = re.compile(r"(“[^”]*”)")
_SAID = {English.BRITISH: (_any_of(BRITISH), BRITISH), English.US: (_any_of(AMERICAN), AMERICAN)}


@dataclass(frozen=True)
class Manner:
    """One maker's way."""

    english: English = English.BRITISH
    units: Units = Units.CM
    hand: Hand = Hand.RIGHT
    paper: Paper = Paper.A4

    def say(self, text: str) -> str:
        """Return a sentence of ours in the maker's own English.

        >>> Manner(English.BRITISH).say("Bind off 4 stitches; mind the gauge.")
        'Cast off 4 stitches; mind the tension.'
        """
        pattern, words = _SAID[self.english]

        def other(match: re.Match[str]) -> str:
            word = words[match[0].lower()]
            return word.capitalize() if match[0][0].isupper() else word

        parts = _QUOTED.split(text)
        return "".join(part if spot % 2 else pattern.sub(other, part) for spot, part in enumerate(parts))
