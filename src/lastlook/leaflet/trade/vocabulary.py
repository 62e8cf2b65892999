"""The trade's vocabulary: which canonical word each spelling stands for, ours and the leaflet's own."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from importlib import resources


@dataclass(frozen=True)
class Fused:
    """A stitch written as one word: how many it uses and gives, and which way it leans."""

    name: str
    uses: int
    gives: int
    lean: str


@dataclass(frozen=True)
class Vocabulary:
    """Spellings to canonical words."""

    words: Mapping[str, str]
    numbers: Mapping[str, int]
    ordinals: Mapping[str, int]
    noise: frozenset[str]
    fused: Mapping[str, Fused]
    own: Mapping[str, str] = field(default_factory=dict)
    """What the leaflet's own list says, before ours."""

    def word(self, spelling: str) -> str:
        """Return the canonical word of a lower-case spelling; an unknown one stands for itself."""
        return self.own.get(spelling) or self.words.get(spelling) or spelling

    def knows(self, spelling: str) -> bool:
        """Whether the spelling is a word of the trade."""
        return spelling in self.own or spelling in self.words or spelling in self.noise

    def with_own(self, own: Mapping[str, str]) -> Vocabulary:
        """Return the vocabulary with a leaflet's own abbreviations laid over it."""
        return Vocabulary(self.words, self.numbers, self.ordinals, self.noise, self.fused, {**self.own, **own})


@cache
def vocabulary() -> Vocabulary:
    """Return the vocabulary that is shipped."""
    text = resources.files("lastlook.leaflet.trade").joinpath("abbreviations.toml").read_text(encoding="utf-8")
    table = tomllib.loads(text)
    words = {spelling: name for name, spellings in table["words"].items() for spelling in spellings}
    fused = {name: Fused(one[0], one[1], one[2], one[3]) for name, one in table["fused"].items()}
    return Vocabulary(words, table["numbers"], table["ordinals"], frozenset(table["noise"]["words"]), fused)
