"""Yarn counts: how much a length of yarn weighs, in every system a label may use, kept in tex.

*tex* is grams in 1000 m. Direct systems weigh a length; indirect ones count lengths in a weight and are divided by
the number of plies. Ply take-up (1-5 %) is left out, as the trade does.
"""

from __future__ import annotations

import re

from lastlook.quantity import Unread, read_length, read_weight
from lastlook.quantity.length import read_number

INDIRECT = {
    "nm": 1000.0,
    "metric": 1000.0,
    "ne": 590.5,
    "cotton": 590.5,
    "nw": 885.8,
    "worsted": 885.8,
    "nel": 1653.5,
    "linen": 1653.5,
    "ysw": 1938.0,
    "yorkshire": 1938.0,
    "run": 310.0,
}
"""tex = constant / count. Yarn-count conversion pages (textileschool, polytechnichub, miniknittingstuff);
`run` from memory."""
DENIER_PER_TEX = 9.0
"""Definition: denier is grams in 9000 m."""
HINT = "Write it like 50 g = 125 m, 250 m per 100 g, 400 tex, 2/24 worsted or 15 Nm."


def tex_of(text: str) -> float | Unread:
    """Return the tex of a yarn count as a label or a cone gives it.

    >>> round(tex_of("2/24 worsted"), 1)
    73.8
    """
    plain = text.strip().lower().replace("nm.", "nm")
    for read in (_from_label, _from_system):
        tex = read(plain)
        if tex is not None and tex > 0:
            return tex
    return Unread(text, f"“{text}” can't be read as a yarn count.", HINT)


def count_in(tex: float, system: str) -> float:
    """Return the count of a yarn in another system.

    >>> round(count_in(20, "cotton"), 1)
    29.5
    """
    if system == "denier":
        return tex * DENIER_PER_TEX
    return INDIRECT[system] / tex


def tex_from_label(grams: float, metres: float) -> float:
    """Return the tex of a ball of so many grams and metres."""
    return 1000.0 * grams / metres


def _from_label(plain: str) -> float | None:
    """Read `50 g = 125 m`, `125 m / 50 g`, `250 m per 100 g`."""
    parts = re.split(r"\s*(?:=|/|per|to|in|\bfor\b)\s*", plain, maxsplit=1)
    if len(parts) != 2:
        return None
    for weight, length in (parts, reversed(parts)):
        grams, mm = read_weight(weight), read_length(length)
        if isinstance(grams, float) and isinstance(mm, float) and grams > 0 and mm > 0:
            return tex_from_label(grams, mm / 1000.0)
    return None


def _from_system(plain: str) -> float | None:
    match = re.fullmatch(r"(?P<a>[a-z]*)\s*(?P<count>[\d.,]+(?:/[\d.,]+)?)\s*'?s?\s*(?P<b>[a-z]*)", plain)
    if match is None:
        return None
    system = match["a"] or match["b"]
    numbers = [read_number(part) for part in match["count"].split("/")]
    if any(number is None or number <= 0 for number in numbers):
        return None
    values = [number for number in numbers if number is not None]
    if system in ("tex", "denier", "den"):
        return values[0] / (1.0 if system == "tex" else DENIER_PER_TEX) if len(values) == 1 else None
    if system not in INDIRECT:
        return None
    plies, count = (min(values), max(values)) if len(values) == 2 else (1.0, values[0])
    return INDIRECT[system] * plies / count
