"""What does not add up while a piece is worked, as a value; the words for the maker are put on later."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Span


@dataclass(frozen=True)
class Trouble:
    """A kind of finding with the place and the two numbers."""

    kind: str
    span: Span
    piece: str
    row: int | None
    worked: float
    stated: float
    words: str = ""
    blind: bool = False
    """Whether words before it in the piece were not understood, so that it may come from them."""
    follows: bool = False
    """Whether it is only what follows from a trouble told before."""
