"""Names as titles, files and feet of pages carry them, and the manner of an outfit's maker."""

from __future__ import annotations

import re

from lastlook import outfit
from lastlook.quantity import Units, write_length
from lastlook.sheet.layout.page import Paper
from lastlook.sheet.manner import English, Hand, Manner

File = tuple[str, bytes]


def manner_of(one: outfit.Outfit, paper: Paper | None = None) -> Manner:
    """Return how this maker wants her papers; without a wish, the paper of her tape's country."""
    british = one.manner.english.upper() in ("UK", "BRITISH")
    usual = Paper.LETTER if one.manner.units is Units.INCHES and not british else Paper.A4
    hand = Hand.LEFT if one.manner.hand == "left" else Hand.RIGHT
    return Manner(English.BRITISH if british else English.US, one.manner.units, hand, paper or usual)


def plain(name: str) -> str:
    """Return a name as a file can carry it."""
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-") or "sheet"


def named(name: str) -> str:
    """Return a name as a title begins with it."""
    return name[:1].upper() + name[1:].replace("-", " ")


def whose(one: outfit.Outfit) -> str:
    """Return whom an outfit is for: 'for Dorrit'."""
    return f"for {one.wearer.name}" if one.wearer.name else "for nobody named yet"


def whose_waist(one: outfit.Outfit, manner: Manner) -> str:
    """Return whom a skirt is for, with the measure it hangs by: 'for Dorrit, waist 27 in'."""
    waist = one.wearer.taken("waist_girth")
    return whose(one) + (f", waist {write_length(waist.mm.best, manner.units)}" if waist else "")
