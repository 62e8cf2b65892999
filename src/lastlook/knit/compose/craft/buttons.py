"""The buttons at hand: how many, how large, and what that asks of a band.

A band reaches three quarters of a button's diameter beyond its centre line on both sides (a sewing reference and a
machine's manual). A knitted hole stretches, so it is made shorter than the button: 60-80 % of its diameter, common
practice, no source.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from lastlook.quantity import Unread, read_length

LIGNE_MM = 0.635
"""1 ligne = 1/40 in (apparelscience, cxbuttons and others, all agreeing: read)."""
BEYOND_MM = 25.4 / 8
"""A hole across the edge begins 1/8 in beyond the centre line, towards the edge (about.com, 3 June 1999: read)."""
FLAT_MM = 3.0
"""A flat button's thickness: common practice, no source."""
OVERLAP_SHARE = 0.75
KNIT_HOLE_SHARE = 0.7
CROCHET_HOLE_SHARE = 0.8
"""A chain over skipped stitches gives less than knitting: common practice, no source."""
LEAST_MM, MOST_MM = 5.0, 70.0


@dataclass(frozen=True)
class Buttons:
    """Buttons of one size; `count` is None where there are as many as are wanted."""

    diameter_mm: float
    count: int | None = None

    @property
    def band_mm(self) -> float:
        """Return the narrowest band they fit.

        >>> Buttons(20.0).band_mm
        30.0
        """
        return 2 * OVERLAP_SHARE * self.diameter_mm


def across_mm(buttons: Buttons) -> tuple[float, float]:
    """Return where a sewn hole across a band begins and ends, from its centre line, the edge's side below nothing.

    >>> across_mm(Buttons(18.0))
    (-3.175, 17.825)
    """
    return -BEYOND_MM, round(buttons.diameter_mm + FLAT_MM - BEYOND_MM, 3)


def buttons_of(text: str) -> Buttons | Unread:
    """Return buttons typed as `7 x 18 mm`, `5 of 24 ligne` or `18mm`.

    >>> buttons_of("7 x 24 ligne")
    Buttons(diameter_mm=15.24, count=7)
    """
    hint = "Write how many and how large, like “7 x 18mm” or “7 x 28 ligne”."
    match = re.fullmatch(r"\s*(?:(\d{1,3})\s*(?:x|×|of|\*)\s*)?(.+?)\s*", text.strip().lower())
    if match is None:
        return Unread(text, f"“{text}” can't be read as buttons.", hint)
    count = int(match.group(1)) if match.group(1) else None
    ligne = re.fullmatch(r"(\d+(?:\.\d+)?)\s*(?:l|lignes?|lines?)", match.group(2))
    mm = float(ligne.group(1)) * LIGNE_MM if ligne else read_length(match.group(2))
    if isinstance(mm, Unread) or count == 0:
        return Unread(text, f"“{text}” can't be read as buttons.", hint)
    if not LEAST_MM <= mm <= MOST_MM:
        why = f"A button of {mm:g} mm is none that a garment closes with; they measure {LEAST_MM:g} to {MOST_MM:g} mm."
        return Unread(text, why, hint)
    return Buttons(round(mm, 2), count)
