"""Weights as a maker writes them, kept in grams."""

from __future__ import annotations

import re

from lastlook.quantity.known import Unread
from lastlook.quantity.length import read_number

G_PER_OUNCE = 28.349523125
"""The avoirdupois ounce (international yard and pound agreement, 1959)."""
_UNITS = {"g": 1.0, "gr": 1.0, "gram": 1.0, "grams": 1.0, "gramme": 1.0, "grammes": 1.0, "kg": 1000.0}
_UNITS |= dict.fromkeys(("oz", "ozs", "ounce", "ounces"), G_PER_OUNCE) | {
    "lb": 16 * G_PER_OUNCE,
    "lbs": 16 * G_PER_OUNCE,
}


def read_weight(text: str) -> float | Unread:
    """Return the grams that `text` says; a bare number is grams.

    >>> read_weight("2 oz")
    56.69904625
    """
    match = re.fullmatch(r"\s*([^a-zA-Z]+?)\s*([a-zA-Z]*)\.?\s*", text)
    number = read_number(match.group(1)) if match else None
    unit = (match.group(2).lower() or "g") if match else ""
    if number is None or unit not in _UNITS:
        return Unread(text, f"“{text}” can't be read as a weight.", "Write it like 50 g or 2 oz.")
    if number < 0:
        return Unread(text, f"“{text}” is less than nothing.", "Write the weight that the scale shows.")
    return number * _UNITS[unit]


def write_weight(grams: float) -> str:
    """Return grams as a scale would show them: whole from 20 g on, one decimal below."""
    return f"{grams:.0f} g" if abs(grams) >= 20 else f"{grams:.1f} g"
