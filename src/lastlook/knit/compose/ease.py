"""Ease: how much larger than the body a knitted garment is meant to be.

*Ease* is finished girth less body girth; below nothing the fabric is stretched.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.quantity import Units, Unread, write_length


@dataclass(frozen=True)
class EaseClass:
    """A class of fit with its range at the bust."""

    name: str
    low_mm: float
    high_mm: float

    @property
    def aim_mm(self) -> float:
        """Return the middle of the class."""
        return (self.low_mm + self.high_mm) / 2


EASE = {
    one.name: one
    for one in (
        EaseClass("very close", -100.0, 0.0),
        EaseClass("close", 25.0, 50.0),
        EaseClass("standard", 50.0, 100.0),
        EaseClass("loose", 100.0, 150.0),
        EaseClass("oversized", 150.0, 250.0),
    )
}
"""Craft Yarn Council fit chart, from memory; 2 in as a classic fit was read in a pattern note."""
SLEEVE_EASE_MM = 50.0
"""Round the upper arm at standard ease: arm measure + 5 cm, common practice, no source."""
CUFF_EASE_MM = 30.0
"""Round the wrist; a rib gives enough for the hand: common practice, no source."""


def ease_words(one: EaseClass) -> str:
    """Return a class with its numbers.

    >>> ease_words(EASE["standard"])
    'standard, 5 cm to 10 cm more than the body'
    """
    low, high = (write_length(abs(mm), Units.CM) for mm in (one.low_mm, one.high_mm))
    if one.high_mm <= 0:
        return f"{one.name}, up to {low} less than the body"
    return f"{one.name}, {low} to {high} more than the body"


def ease_of(word: str) -> EaseClass | Unread:
    """Return the class of that name."""
    plain = word.strip().lower().replace("-", " ").replace("_", " ")
    found = EASE.get(plain)
    if found is None:
        return Unread(word, f"“{word}” is no class of ease.", f"Use one of: {', '.join(EASE)}.")
    return found


def sleeve_ease_mm(bust_ease_mm: float) -> float:
    """Return the ease round the upper arm that goes with one at the bust: half as much again, within 1 to 9 cm."""
    return min(90.0, max(10.0, SLEEVE_EASE_MM + (bust_ease_mm - 75.0) / 2))
