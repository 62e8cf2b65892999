"""What the reading of pictures comes to: the text, each word's place on its page, repairs and doubts.

Boxes are in picture elements of the page's own picture, which stands upright and level. A word's span is that of
`Scanned.text`; what the engine saw before any repair is kept beside it.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from lastlook.finding import Finding, Span
from lastlook.leaflet import Repair


@dataclass(frozen=True)
class Box:
    """An upright rectangle on a page."""

    left: int
    top: int
    right: int
    bottom: int


@dataclass(frozen=True)
class Sign:
    """One letter or figure, how sure the engine is of it, and what else it may be."""

    text: str
    certainty: float
    rivals: tuple[tuple[str, float], ...] = ()
    """Other signs that the picture may show, with their certainty, the likeliest first."""
    at: float = 0.0
    """Where its middle lies, as a share of its strip's width."""


@dataclass(frozen=True)
class Word:
    """A word of the text with its picture."""

    seen: str
    """As the engine read it, before any repair."""
    span: Span
    page: int
    """Counted from 0."""
    box: Box
    signs: tuple[Sign, ...]

    @property
    def certainty(self) -> float:
        """Return the certainty of its least certain sign."""
        return min((sign.certainty for sign in self.signs), default=0.0)


@dataclass(frozen=True)
class Page:
    """One page's picture, upright and level, as JPEG."""

    picture: bytes
    width: int
    height: int
    tilt_degrees: float
    """How far the picture was tilted as it was given."""


@dataclass(frozen=True)
class Doubtful:
    """One number that may have been misread."""

    word: int
    """Which of the words it stands in."""
    span: Span
    """The number's place in the text."""
    read: str
    rivals: tuple[str, ...]
    """The number with one of its figures taken for another, the likeliest first."""
    certainty: float
    is_made: bool = False
    """Whether a repair made a figure of a letter."""


@dataclass(frozen=True)
class Scanned:
    """Pages read: their text with repairs made, and what is doubtful in it."""

    text: str
    pages: tuple[Page, ...] = ()
    words: tuple[Word, ...] = ()
    repairs: tuple[Repair, ...] = ()
    """Their spans are those of the text."""
    doubtful: tuple[Doubtful, ...] = ()
    findings: tuple[Finding, ...] = field(default=())

    @property
    def is_readable(self) -> bool:
        """Whether there is any text."""
        return bool(self.words)
