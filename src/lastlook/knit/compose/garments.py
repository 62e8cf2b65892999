"""Every garment that can be composed, by the name a maker types."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lastlook.finding import Certainty, Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.composed import Composed, cant_hold, not_composed
from lastlook.knit.compose.design import design_raglan, design_shouldered
from lastlook.knit.compose.proof import texture_trouble
from lastlook.knit.compose.round import design_hat, design_mittens, design_socks
from lastlook.quantity import Units, Unread, write_length
from lastlook.wearer import Wearer

LENGTHS_MM = {
    "body": (40.0, 900.0),
    "sleeve": (20.0, 750.0),
    "armhole": (80.0, 450.0),
    "below waist": (0.0, 700.0),
    "leg": (40.0, 700.0),
}
"""Lengths that a maker may set herself, with what is still one: common practice, no source."""
LENGTH_WORDS = {
    "body": "a body, hem to underarm",
    "sleeve": "a sleeve, cuff to underarm",
    "armhole": "an armhole's depth",
    "below waist": "a hem below the waist",
    "leg": "a sock's leg, cast-on to heel",
}
LENGTHS = tuple(LENGTHS_MM)


def length_trouble(name: str, mm: float) -> Unread | None:
    """Return why a length can't be taken; None where it can."""
    least, most = LENGTHS_MM[name]
    if least <= mm <= most:
        return None
    said, low, high = (write_length(one, Units.CM) for one in (mm, least, most))
    why = f"{said} is no length for {LENGTH_WORDS[name]}; it lies between {low} and {high}."
    return Unread(f"{name}={said}", why, "Look at the figure and its unit.")


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
        title = name.replace("-", " ").capitalize()
        if asked.texture and name not in IN_PIECES:
            return not_composed(title, "hers", [_no_texture(title)])
        trouble = texture_trouble(asked.texture) if asked.texture else None
        if trouble is not None:
            return not_composed(title, "hers", [trouble])
        if asked.edging.structure == "hem" and name in SMALL:
            return not_composed(title, "hers", [_no_hem(title)])
        try:
            made = design(who, asked)
        except (ValueError, IndexError):
            return not_composed(title, "hers", [_no_room(name)])
        return not_composed(title, "hers", [_no_room(name)]) if _runs_out(made) else made

    return careful


def _runs_out(made: Composed) -> bool:
    """Whether a piece has no stitches left before its last row."""
    return any(row.after < 1 for piece in made.pieces for row in piece.rows[:-1])


def _no_texture(title: str) -> Finding:
    return cant_hold(
        f"{title} is not written in a texture: a repeat is laid into garments in pieces only.",
        "In the round, and where the lines of a yoke move, the repeat has nowhere to begin and end.",
        f"Ask for one of: {', '.join(IN_PIECES)}.",
    )


def _no_hem(title: str) -> Finding:
    return cant_hold(
        f"{title} can't begin with a hem: a turned hem does not stretch over head, hand or heel.",
        "Small things in the round stay on by their ribbing.",
        "Ask for a rib, or garter.",
    )


def _no_room(name: str) -> Finding:
    return cant_hold(
        f"No {name.replace('-', ' ')} can be shaped from these measures at this gauge.",
        "Somewhere more stitches would have to be taken off than there are, or in fewer rows than it needs.",
        "Look for a measure that does not go with the others, or take a finer gauge.",
    )


IN_PIECES = (
    "raglan-pullover",
    "raglan-cardigan",
    "set-in-pullover",
    "set-in-cardigan",
    "drop-shoulder-pullover",
    "drop-shoulder-cardigan",
    "slipover",
)
SMALL = ("hat", "mittens", "socks")

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
