"""How numbers, sizes and lengths are said: one row and two rows, sizes listed, the leaflet's own tape."""

from __future__ import annotations

import re
from collections.abc import Sequence

from lastlook.quantity import Gauge, Missing, Units, write_length

INCHES = re.compile(r"(?i)\b(?:ins?|inch|inches)\b|\d\s?[\"”″]")
CENTIMETRES = re.compile(r"(?i)\bcms?\b|\bcentimet(?:re|er)s?\b")
PLURAL = {"stitch": "stitches"}


def units_of(text: str) -> Units:
    """Return the tape that a leaflet speaks in: centimetres only where it names them more often than inches."""
    metric = len(CENTIMETRES.findall(text)) > len(INCHES.findall(text))
    return Units.CM if metric else Units.INCHES


def counted(number: float, word: str) -> str:
    """Return a count with its word.

    >>> counted(1, "row"), counted(2, "stitch")
    ('1 row', '2 stitches')
    """
    whole = round(number)
    return f"{whole} {word if whole == 1 else PLURAL.get(word, word + 's')}"


def are(number: float) -> str:
    """Return a count with its verb: '1 is', '3 are'."""
    return f"{round(number)} {'is' if round(number) == 1 else 'are'}"


def listed(names: Sequence[str]) -> str:
    """Return names in a row: '32, 34 and 36'."""
    if not names:
        return ""
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]


def of_sizes(names: Sequence[str]) -> str:
    """Return 'size 32' or 'sizes 32 and 34'."""
    return f"size{'s' if len(names) > 1 else ''} {listed(names)}"


def deep(rows: float, gauge: Gauge | None, units: Units) -> str:
    """Return rows with the depth that a gauge gives them on the maker's tape: 'has 120 rows, is 15 in deep'."""
    length = None if gauge is None else gauge.length_mm(rows)
    has = f"has {counted(rows, 'row')}"
    return (
        has if length is None or isinstance(length, Missing) else f"{has}, is {write_length(length.best, units)} deep"
    )
