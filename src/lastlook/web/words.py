"""What screens say of answers, chances and lengths, in the maker's own English and with her own tape."""

from __future__ import annotations

import re
from collections.abc import Callable

from lastlook import outfit, sheet
from lastlook.quantity import Missing, Units, Unread, read_length, write_length

EIGHTH_MM = 25.4 / 8
TOILE = re.compile(r"\b([Tt])oile")
"""What a mock-up is called in Britain; in the United States it is a muslin."""


def said_by(manner: outfit.Manner) -> Callable[[str], str]:
    """Return what puts a sentence of ours into this maker's English."""
    if manner.english.upper() == "UK":
        return sheet.Manner(sheet.English.BRITISH).say
    return lambda text: TOILE.sub(_muslin, text)


def _muslin(match: re.Match[str]) -> str:
    return ("M" if match[1] == "T" else "m") + "uslin"


def lengths(manner: outfit.Manner) -> Callable[[float], str]:
    """Return what writes millimetres as this maker's tape shows them."""
    return lambda mm: write_length(mm, manner.units)


def apart(manner: outfit.Manner) -> Callable[[float], str]:
    """Return what writes how far two edges are apart: to a tenth of a millimetre, beside inches where she has them."""

    def said(mm: float) -> str:
        fine = f"{mm:.1f} mm"
        return f"{write_length(mm, Units.INCHES)} ({fine})" if manner.units is Units.INCHES and mm > EIGHTH_MM else fine

    return said


def exact_lengths(manner: outfit.Manner) -> Callable[[float], str]:
    """Return what writes a length so that reading it gives the same again, on this maker's tape where it can."""

    def exact(mm: float) -> str:
        said = write_length(mm, manner.units)
        back = read_length(said, manner.units)
        return said if not isinstance(back, Unread) and abs(back - mm) < 0.01 else f"{mm:.6g} mm"

    return exact


def counted(count: int, noun: str) -> str:
    """Return a count with its noun, one or many.

    >>> counted(1, "stitch"), counted(2, "stitch")
    ('1 stitch', '2 stitches')
    """
    many = f"{noun}es" if noun.endswith(("ch", "sh", "s")) else f"{noun}s"
    return f"{count} {noun if count == 1 else many}"


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


def hours(minutes: float) -> str:
    """Return a span of time, no finer than it is known.

    >>> hours(12), hours(75), hours(600)
    ('about 10 minutes', 'about 1¼ hours', 'about 10 hours')
    """
    if minutes < 50:
        near = max(5, 5 * round(minutes / 5))
        return f"about {near} minutes"
    quarters = round(minutes / 15) if minutes < 240 else 4 * round(minutes / 60)
    whole, part = divmod(quarters, 4)
    return f"about {whole or ''}{('', '¼', '½', '¾')[part]} hour{'' if quarters == 4 else 's'}"


def is_missing(value: object) -> bool:
    """Whether a value is not known."""
    return isinstance(value, Missing)
