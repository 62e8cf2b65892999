"""Which printed size comes closest, and what is left to alter: bought by the hip, altered at the waist.

A height class (short, average, tall) is only a prior for the length: a measured waist-to-hem outranks it, and a body
between two classes lies between their lengths.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class PrintedSize:
    """A size as a pattern prints it, body figures in mm."""

    name: str
    waist_mm: float
    hip_mm: float
    length_mm: float | None = None


@dataclass(frozen=True)
class Printed:
    """A pattern's table of sizes, and the height it was drawn for."""

    sizes: tuple[PrintedSize, ...]
    height: str | None = None
    """'short', 'average' or 'tall'; None where the pattern does not say."""


@dataclass(frozen=True)
class Choice:
    """A size with what it leaves to alter; plus is to let out or lengthen."""

    size: PrintedSize
    waist_mm: float
    hip_mm: float
    length_mm: float | None


HEIGHT_CLASSES_MM: Mapping[str, float] = {"short": 1575.0, "average": 1651.0, "tall": 1727.0}
"""5 ft 2, 5 ft 5 and 5 ft 8 (common practice, no source)."""
LENGTH_PER_HEIGHT = 0.38
"""A skirt to the knee grows by about this much for each mm of stature (common practice, no source)."""


def closest(sizes: Sequence[PrintedSize], waist_mm: float, hip_mm: float, length_mm: float | None) -> Choice | None:
    """Return the size nearest at the hip, the waist deciding between equals (Butterick manual, c. 1911-16, read)."""
    if not sizes:
        return None
    best = min(sizes, key=lambda one: (round(abs(one.hip_mm - hip_mm), 1), abs(one.waist_mm - waist_mm)))
    longer = length_mm - best.length_mm if length_mm is not None and best.length_mm is not None else None
    return Choice(best, waist_mm - best.waist_mm, hip_mm - best.hip_mm, longer)


def length_prior_mm(printed_length_mm: float, printed_class: str, stature_mm: float) -> float:
    """Return how long a skirt printed for one height class is for a stature, classes joined by a straight line.

    >>> round(length_prior_mm(620, "average", 1575))
    591
    """
    return printed_length_mm + (stature_mm - HEIGHT_CLASSES_MM[printed_class]) * LENGTH_PER_HEIGHT
