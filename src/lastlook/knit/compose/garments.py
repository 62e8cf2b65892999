"""Every garment that can be composed, by the name a maker types."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lastlook.finding import Certainty, Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.composed import Composed, cant_hold, not_composed
from lastlook.knit.compose.design import design_raglan, design_shouldered
from lastlook.knit.compose.round import design_hat, design_mittens, design_socks
from lastlook.quantity import Unread
from lastlook.wearer import Wearer

LENGTHS = ("body", "sleeve", "armhole", "below waist", "leg")
"""Lengths a maker may set herself: hem to underarm, sleeve seam, armhole depth, hem below the waist, leg of a sock."""


def unread(what: Unread) -> Finding:
    """Return that a word can't be taken."""
    return Finding("word-unread", Certainty.PROVEN, what.why, "Nothing is composed from a guess.", what.attempt)


def _raglan(opening: str, construction: str) -> Callable[[Wearer, Asked], Composed]:
    def design(who: Wearer, asked: Asked) -> Composed:
        return design_raglan(who, replace(asked, opening=opening, construction=construction))

    return design


def _shouldered(opening: str, construction: str) -> Callable[[Wearer, Asked], Composed]:
    def design(who: Wearer, asked: Asked) -> Composed:
        return design_shouldered(who, replace(asked, opening=opening), construction)

    return design


def _slipover(who: Wearer, asked: Asked) -> Composed:
    return design_shouldered(who, replace(asked, opening="pullover", sleeve="none"), "set-in")


def _or_clash(name: str, design: Callable[[Wearer, Asked], Composed]) -> Callable[[Wearer, Asked], Composed]:
    """Return a design that says so where measures and gauge leave no stitches for the shaping."""

    def careful(who: Wearer, asked: Asked) -> Composed:
        try:
            return design(who, asked)
        except (ValueError, IndexError):
            return not_composed(name.replace("-", " ").capitalize(), "hers", [_no_room(name)])

    return careful


def _no_room(name: str) -> Finding:
    return cant_hold(
        f"No {name.replace('-', ' ')} can be shaped from these measures at this gauge.",
        "Somewhere more stitches would have to be taken off than there are, or in fewer rows than it needs.",
        "Look for a measure that does not go with the others, or take a finer gauge.",
    )


_DESIGNS: dict[str, Callable[[Wearer, Asked], Composed]] = {
    "raglan-pullover": _raglan("pullover", "in pieces"),
    "raglan-cardigan": _raglan("cardigan", "in pieces"),
    "neck-down-pullover": _raglan("pullover", "neck down"),
    "neck-down-cardigan": _raglan("cardigan", "neck down"),
    "hem-up-pullover": _raglan("pullover", "hem up"),
    "hem-up-cardigan": _raglan("cardigan", "hem up"),
    "set-in-pullover": _shouldered("pullover", "set-in"),
    "set-in-cardigan": _shouldered("cardigan", "set-in"),
    "drop-shoulder-pullover": _shouldered("pullover", "dropped"),
    "drop-shoulder-cardigan": _shouldered("cardigan", "dropped"),
    "slipover": _slipover,
    "hat": design_hat,
    "mittens": design_mittens,
    "socks": design_socks,
}

GARMENTS = {name: _or_clash(name, design) for name, design in _DESIGNS.items()}
"""What can be composed, by the name a maker types."""
