"""What screens say of answers, chances and lengths, in the maker's own English and with her own tape."""

from __future__ import annotations

from collections.abc import Callable

from lastlook import outfit, sheet
from lastlook.quantity import write_length


def said_by(manner: outfit.Manner) -> Callable[[str], str]:
    """Return what puts a sentence of ours into this maker's English."""
    english = sheet.English.BRITISH if manner.english.upper() == "UK" else sheet.English.US
    return sheet.Manner(english).say


def lengths(manner: outfit.Manner) -> Callable[[float], str]:
    """Return what writes millimetres as this maker's tape shows them."""
    return lambda mm: write_length(mm, manner.units)


def chance(value: float | None) -> str:
    """Return a chance in words; no more than the tenths that it is good for.

    >>> chance(0.72)
    'about 7 chances in 10'
    """
    if value is None:
        return ""
    tenths = round(value * 10)
    if tenths <= 0:
        return "hardly a chance"
    if tenths >= 10:
        return "better than 9 chances in 10"
    return f"about {tenths} chance{'s' if tenths > 1 else ''} in 10"
