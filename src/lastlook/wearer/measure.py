"""One length of a body, with where it came from, and the names such lengths have.

A *measure* has a name of ISO 8559-1 in small letters (`bust_girth`), its millimetres as a range, and how it was
obtained.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib import resources

from lastlook.quantity import Origin, Spread, give_or_take

TAPE_MM = 5.0
"""A tape laid twice on one body agrees to about 5 mm, and on a short measure to 3: common practice, no source."""
TAPE_SHORT_MM = 3.0
SHORT_MM = 400.0


@dataclass(frozen=True)
class Measure:
    """One length of a body."""

    name: str
    mm: Spread
    origin: Origin
    how: str
    """How it was taken or worked out, in words: 'by tape', 'over a blouse', 'estimated from …'."""


@dataclass(frozen=True)
class MeasureName:
    """What a name means, how to take it, and what can be a body at all."""

    name: str
    define: str
    take: str
    least_mm: float
    most_mm: float
    also: tuple[str, ...]

    @property
    def words(self) -> str:
        """Return the name as it is spoken: 'upper arm girth'."""
        return self.name.replace("_", " ")


def by_tape(name: str, mm: float, how: str = "by tape") -> Measure:
    """Return a measure taken with a tape, with the doubt of the hand that laid it."""
    doubt = TAPE_MM if mm >= SHORT_MM else TAPE_SHORT_MM
    return Measure(name, give_or_take(mm, min(doubt, mm / 2)), Origin.MEASURED, how)


@cache
def _names() -> dict[str, MeasureName]:
    text = resources.files("lastlook.wearer").joinpath("tables/measures.toml").read_text(encoding="utf-8")
    return {
        name: MeasureName(
            name,
            row["define"],
            row["take"],
            row["least_cm"] * 10.0,
            row["most_cm"] * 10.0,
            tuple(row["also"]),
        )
        for name, row in tomllib.loads(text).items()
    }


NAMES: dict[str, MeasureName] = _names()
"""Every name that is known, in the order in which a sheet asks for them."""


def full_name(word: str) -> str | None:
    """Return the full name for what a maker typed ('Upper arm', 'bust'); None if it is none.

    >>> full_name("Upper-Arm")
    'upper_arm_girth'
    """
    plain = "_".join(word.lower().replace("-", " ").replace("_", " ").split())
    if plain in NAMES:
        return plain
    return next((name for name, entry in NAMES.items() if plain in entry.also), None)
