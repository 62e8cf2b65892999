"""A place in the canonical text, and patterns tried there.

In a pattern `{N}` is a number, `{ROW}` a row or round, `{ST}` the word stitch where it may be left out.
"""

from __future__ import annotations

import re
from functools import cache

from lastlook.finding import Span
from lastlook.leaflet.trade.canon import Canon
from lastlook.leaflet.trade.sizelist import Figure, read_values

MACROS = {
    "{N}": r"<[^>]*>",
    "{ROW}": r"(?:row|rnd|needle)",
    "{ST}": r"(?:st )?",
    "{LEFT}": r"(?:rem|left)",
    "{L}": r"(?:inch|cm|mm)",
}


@cache
def compiled(pattern: str) -> re.Pattern[str]:
    """Return a pattern that matches whole words; its end may be the end of the text."""
    for macro, meaning in MACROS.items():
        pattern = pattern.replace(macro, meaning)
    return re.compile(f"(?:{pattern})(?:(?<= )| +|$)")


@cache
def any_of(patterns: tuple[str, ...]) -> re.Pattern[str]:
    """Return one pattern that matches wherever one of many does: most words begin none of them."""
    joined = "|".join(f"(?:{re.sub(r'[(][?]P<[a-z]+[0-9]*>', '(?:', pattern)})" for pattern in patterns)
    return compiled(joined)


class Cursor:
    """Walks over the canonical text."""

    def __init__(self, canon: Canon) -> None:
        """Start at the beginning."""
        self.canon = canon
        self.text = canon.text
        self.pos = 0

    @property
    def done(self) -> bool:
        """Whether nothing is left."""
        return self.pos >= len(self.text)

    def see(self, pattern: str) -> re.Match[str] | None:
        """Return the match of a pattern here, without moving."""
        return compiled(pattern).match(self.text, self.pos)

    def see_any(self, patterns: tuple[str, ...]) -> bool:
        """Whether one of the patterns matches here."""
        return any_of(patterns).match(self.text, self.pos) is not None

    def take(self, pattern: str) -> re.Match[str] | None:
        """Move over a pattern if it matches here."""
        match = compiled(pattern).match(self.text, self.pos)
        if match is not None:
            self.pos = match.end()
        return match

    def skip_word(self) -> None:
        """Move over one canonical word."""
        stop = self.text.find(" ", self.pos)
        self.pos = len(self.text) if stop < 0 else stop + 1

    def span(self, since: int) -> Span:
        """Return the source span from a place up to here."""
        return self.canon.span(since, max(since + 1, self.pos - 1))


def figure(match: re.Match[str], name: str = "n") -> Figure | None:
    """Return a named number of a match, None where it was left out."""
    text = match.groupdict().get(name)
    return read_values(text) if text else None


def mm_of(value: Figure, unit: str) -> Figure:
    """Return a length in millimetres."""
    factor = {"inch": 25.4, "cm": 10.0, "mm": 1.0}[unit]
    return Figure(tuple(one * factor for one in value.values))
