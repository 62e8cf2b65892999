"""Lengths as people write them, kept in millimetres.

Fractions stay exact until they become millimetres; inches are written back in eighths.
"""

from __future__ import annotations

import re
import unicodedata
from enum import Enum
from fractions import Fraction

from lastlook.quantity.known import Unread

MM_PER_INCH = 25.4
"""Exact (international yard and pound agreement, 1959)."""

_UNITS = {
    "mm": 1.0, "cm": 10.0, "m": 1000.0, "millimetre": 1.0, "millimeter": 1.0, "centimetre": 10.0,
    "centimeter": 10.0, "metre": 1000.0, "meter": 1000.0, "in": MM_PER_INCH, "ins": MM_PER_INCH,
    "inch": MM_PER_INCH, "inche": MM_PER_INCH, '"': MM_PER_INCH, "''": MM_PER_INCH, "ft": 12 * MM_PER_INCH,
    "foot": 12 * MM_PER_INCH, "feet": 12 * MM_PER_INCH, "'": 12 * MM_PER_INCH, "yd": 36 * MM_PER_INCH,
    "yard": 36 * MM_PER_INCH,
}  # fmt: skip
_PART = re.compile(r"(?P<number>[-+]?\d[\d\s/.,⁄]*|[-+]?[/.,]\d[\d/]*)\s*(?P<unit>''|[a-z]+|[\"'])?\.?\s*")


class Units(Enum):
    """What the maker's tape shows."""

    CM = "cm"
    INCHES = "inches"


def read_length(text: str, bare: Units | None = None) -> float | Unread:
    """Return the millimetres that `text` says; `bare` is the unit of a number that names none.

    Halves and eighths are inches where nothing else is said: nobody reads them off a metric tape.

    >>> read_length("28 1/2 in"), read_length("28½")
    (723.9, 723.9)
    """
    plain = _plain(text)
    total, spot, last = Fraction(0), 0, float("inf")
    while spot < len(plain):
        match = _PART.match(plain, spot)
        number = read_number(match["number"]) if match else None
        if match is None or number is None:
            return _puzzle(text)
        in_parts = Units.INCHES if "/" in match["number"] else None
        unit = _unit_mm(match["unit"], bare or in_parts)
        if unit is None:
            return _no_unit(text, match["unit"])
        if number < 0:
            return Unread(text, f"“{text}” is less than nothing.", "Write the length that the tape shows.")
        if unit >= last or (last != float("inf") and number * unit >= last):
            return _carried_over(text)
        total += Fraction(str(number)).limit_denominator(10**6) * Fraction(str(unit))
        spot, last = match.end(), unit
    return float(total) if spot else _puzzle(text)


def read_number(text: str) -> float | None:
    """Return a number written as 28, 28.5, 28,5, 28½, 28 1/2, 28-1/2 or 1/2; None if it is none of them."""
    plain = _plain(text).strip().replace("⁄", "/")
    match = re.fullmatch(r"([-+]?)(?:(\d+)[\s-]+)?(\d+)\s*/\s*(\d+)", plain)
    if match:
        sign, whole, top, bottom = match.groups()
        if int(bottom) == 0:
            return None
        value = float(Fraction(int(whole or 0)) + Fraction(int(top), int(bottom)))
        return -value if sign == "-" else value
    if re.fullmatch(r"[-+]?(\d+([.,]\d+)?|[.,]\d+)", plain) and len(plain) < 16:
        return float(plain.replace(",", "."))
    return None


def write_length(mm: float, units: Units) -> str:
    """Return a length as the maker's tape shows it: whole or half centimetres to 1 mm, inches in eighths.

    >>> write_length(723.9, Units.INCHES)
    '28½ in'
    """
    if units is Units.CM:
        return f"{mm / 10:.1f}".removesuffix(".0") + " cm"
    eighths = round(abs(mm) / MM_PER_INCH * 8)
    whole, rest = divmod(eighths, 8)
    part = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"][rest]
    sign = "-" if mm < 0 and eighths else ""
    return f"{sign}{whole if whole or not part else ''}{part} in"


def _plain(text: str) -> str:
    """Spell typographic fractions and quotes with plain signs: 28½ becomes 28 1/2."""
    signs = str.maketrans({"“": '"', "”": '"', "″": '"', "’": "'", "‘": "'", "′": "'"})
    out = []
    for sign in text.translate(signs):
        if unicodedata.category(sign) == "No" and "⁄" in unicodedata.normalize("NFKC", sign):
            out.append(" " + unicodedata.normalize("NFKC", sign).replace("⁄", "/"))
        else:
            out.append(sign)
    return re.sub(r"(\d)-(\d+/\d)", r"\1 \2", "".join(out)).strip().lower()


def _unit_mm(word: str | None, bare: Units | None) -> float | None:
    if word is None:
        return None if bare is None else (10.0 if bare is Units.CM else MM_PER_INCH)
    return _UNITS.get(word, _UNITS.get(word.removesuffix("s")))


def _puzzle(text: str) -> Unread:
    return Unread(text, f"“{text}” can't be read as a length.", "Write it like 71 cm, 28 in or 28 1/2 in.")


def _no_unit(text: str, word: str | None) -> Unread:
    if word is None:
        return Unread(text, f"“{text}” does not say its unit.", f"Write {text.strip()} cm or {text.strip()} in.")
    return Unread(text, f"“{text}” names the unit “{word}”, which is none that a tape shows.", "Use cm or in.")


def _carried_over(text: str) -> Unread:
    return Unread(text, f"“{text}” has more of the smaller unit than the larger one holds.", "Write it in one unit.")
