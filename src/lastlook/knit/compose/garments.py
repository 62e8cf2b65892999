"""Every garment that can be composed, by the name a maker types."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lastlook.finding import Certainty, Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.composed import Composed
from lastlook.knit.compose.design import design_raglan
from lastlook.quantity import Unread
from lastlook.wearer import Wearer

LENGTHS = ("body", "sleeve", "armhole", "below waist")
"""Lengths that a maker may set herself: hem to underarm, sleeve seam, armhole depth, hem below the waist."""


def unread(what: Unread) -> Finding:
    """Return that a word can't be taken."""
    return Finding("word-unread", Certainty.PROVEN, what.why, "Nothing is composed from a guess.", what.attempt)


def _raglan_pullover(who: Wearer, asked: Asked) -> Composed:
    return design_raglan(who, replace(asked, opening="pullover"))


def _raglan_cardigan(who: Wearer, asked: Asked) -> Composed:
    return design_raglan(who, replace(asked, opening="cardigan"))


GARMENTS: dict[str, Callable[[Wearer, Asked], Composed]] = {
    "raglan-pullover": _raglan_pullover,
    "raglan-cardigan": _raglan_cardigan,
}
