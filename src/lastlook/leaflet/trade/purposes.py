"""What a shaping is for: 'bind off 33 stitches for back of neck' binds off 33 stitches.

The purpose stands anywhere after the verb and changes no count; the words stay in the source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from lastlook.leaflet.trade.lexeme import Lexeme

VERBS = frozenset({"bo", "dec", "inc", "narrow", "widen"})
PLACES = frozenset({"neck", "underarm", "armhole", "shoulder", "neckline", "raglan", "v"})
BETWEEN = frozenset(
    {"back", "front", "of", "each", "left", "right", "first", "shape", "slope", "opening", "edge", "one"}
)
NEAREST = 5
"""A purpose stands within so many words of its verb, its figure among them."""


def without_purposes(stream: list[Lexeme]) -> list[Lexeme]:
    """Leave out what stitches are bound off, decreased or increased for."""
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        one = stream[spot]
        stop = _purpose(stream, spot) if one.canon == "for" else 0
        stop = stop if stop and (_follows_verb(out) or _leads_verb(stream, stop)) else 0
        if stop:
            spot = stop
            continue
        out.append(one)
        spot += 1
    return out


def _follows_verb(out: list[Lexeme]) -> bool:
    """Whether only a figure and its unit stand between here and a verb of shaping."""
    back = len(out) - 1
    while (
        back >= 0 and len(out) - back < NEAREST and (out[back].figures or out[back].canon in ("st", "next", "center"))
    ):
        back -= 1
    return back >= 0 and out[back].canon in VERBS


def _leads_verb(stream: list[Lexeme], stop: int) -> bool:
    """Whether a shaping follows at once: 'For V neck decrease 1 stitch'."""
    return (
        stop < len(stream)
        and stream[stop].canon in ("dec", "bo")
        and stop + 1 < len(stream)
        and bool(stream[stop + 1].figures)
    )


def _purpose(stream: list[Lexeme], spot: int) -> int:
    """Return where the words after a purpose stand, 0 if this is none."""
    stop, placed = spot + 1, 0
    while stop < len(stream) and stop - spot < 7:
        word = stream[stop].canon
        if word in PLACES:
            placed = stop + 1
        elif word not in BETWEEN and not word.endswith(">th"):
            break
        stop += 1
    return stop if placed and stream[stop - 1].canon in PLACES | {"shape", "slope", "opening", "edge"} else 0
