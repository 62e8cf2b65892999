"""A phrase of a leaflet brought down to one size: every list of figures becomes the one figure that is meant."""

from __future__ import annotations

import re
from functools import lru_cache

from lastlook import leaflet as paper

LABEL = re.compile(
    r"^\s*(?:(?:on |in )?(?:the )?(?:next|foll\w*|rows?|rnds?|rounds?|\d+(?:st|nd|rd|th))\b"
    r"(?:(?!needle)[^:—]){0,70}?(?:\([^)]*\)\s*)?(?::|\.?\s*[—–]|\.\s*-+|\.\s+(?=\S)))\s*",
    re.I,
)
"""What a row is called; the row's own number takes its place."""


def one_size(words: str, sizes: int, at: int) -> str:
    """Return the words of a row without its label, with the figures of one size.

    >>> one_size("Row 7: Bind off 5 (5-6-6) sts, k to end", 4, 2)
    'Bind off 6 sts, k to end'
    """
    return LABEL.sub("", _figures(words, sizes, at)).strip(" .;,—–-")


@lru_cache(maxsize=4000)
def _figures(words: str, sizes: int, at: int) -> str:
    out, spot = "", 0
    for one in paper.canon(words, 0, len(words), paper.vocabulary(), sizes).lexemes:
        if one.start < spot:
            continue
        told = words[one.start : one.end]
        values = one.figures or _ordinal(one.canon)
        if sizes > 1 and len(values) == sizes:
            tail = "th" if one.canon.endswith(">th") else ""
            out += words[spot : one.start] + f"{values[at]:g}{tail}"
        elif "(" in told and len(told) > 1:
            # The other sizes in brackets of their own: '66 sts. (Size 4--72 sts.)'.
            out += words[spot : one.start] + told[: told.index("(")].rstrip(" .")
        else:
            out += words[spot : one.end]
        spot = one.end
    return out + words[spot:]


def _ordinal(canonical: str) -> tuple[float, ...]:
    if not (canonical.startswith("<") and canonical.endswith(">th") and "|" in canonical):
        return ()
    return tuple(float(value) for value in canonical[1:-3].split("|"))
