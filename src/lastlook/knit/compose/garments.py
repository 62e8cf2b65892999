"""Every garment that can be composed, by the name a maker types."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lastlook.finding import Certainty, Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.composed import Composed
from lastlook.knit.compose.design import design_raglan, design_shouldered
from lastlook.knit.compose.round import design_hat, design_mittens
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


def _shouldered(opening: str, construction: str) -> Callable[[Wearer, Asked], Composed]:
    def design(who: Wearer, asked: Asked) -> Composed:
        return design_shouldered(who, replace(asked, opening=opening), construction)

    return design


def _slipover(who: Wearer, asked: Asked) -> Composed:
    return design_shouldered(who, replace(asked, opening="pullover", sleeve="none"), "set-in")


GARMENTS: dict[str, Callable[[Wearer, Asked], Composed]] = {
    "raglan-pullover": _raglan_pullover,
    "raglan-cardigan": _raglan_cardigan,
    "set-in-pullover": _shouldered("pullover", "set-in"),
    "set-in-cardigan": _shouldered("cardigan", "set-in"),
    "drop-shoulder-pullover": _shouldered("pullover", "dropped"),
    "drop-shoulder-cardigan": _shouldered("cardigan", "dropped"),
    "slipover": _slipover,
    "hat": design_hat,
    "mittens": design_mittens,
}
