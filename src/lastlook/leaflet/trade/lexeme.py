"""One or more tokens with one canonical spelling, tied to the stretch of the source they stand for."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Lexeme:
    """A canonical word with the stretch of the source it stands for."""

    canon: str
    start: int
    end: int
    capital: bool = False
    tight: bool = False
    """Whether it follows the word before it without a space."""
    figures: tuple[float, ...] = ()
