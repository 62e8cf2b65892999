"""How a maker wants her papers: her English, her tape, her hand, her paper.

The sheets' own sentences are written in US terms and changed here; a leaflet's quoted words are never changed.
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
_US = re.compile(r"\b(" + "|".join(sorted(BRITISH, key=len, reverse=True)) + r")\b", re.I)


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
        return _US.sub(_british, text) if self.english is English.BRITISH else text


def _british(match: re.Match[str]) -> str:
    word = BRITISH[match[0].lower()]
    return word.capitalize() if match[0][0].isupper() else word
