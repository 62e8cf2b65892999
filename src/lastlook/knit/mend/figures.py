"""The figures of a leaflet where they are printed: in digits, with fractions, as ordinals, in words, listed by size."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

from lastlook import leaflet as paper
from lastlook.finding import Span
from lastlook.leaflet import Leaflet, Lexeme
from lastlook.leaflet.instruction import Step

FRACTIONS = {0.5: "½", 0.25: "¼", 0.75: "¾"}
SMALL = (
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
)  # fmt: skip
TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


@dataclass(frozen=True)
class Printed:
    """One figure of the text, or one list of figures."""

    spots: tuple[Span, ...]
    """Where each of its values stands."""
    values: tuple[float, ...]


def printed(leaflet: Leaflet, number: int) -> list[tuple[Step, list[Printed]]]:
    """Return the steps of a part with the figures that stand in each, those of brackets behind it among them."""
    part = leaflet.parts[number]
    text = leaflet.source.text
    lexemes = _lexemes(leaflet, part.body)
    ends = [one.start for one in lexemes[3:]] + [part.body.end] * 3
    found = [one for one in map(lambda each, end: _printed(text, each, end), lexemes, ends) if one]
    starts = [one.spots[0].start for one in found]
    out = []
    for step in part.steps:
        first, last = bisect_right(starts, step.span.start - 1), bisect_right(starts, step.span.end - 1)
        out.append((step, found[first:last]))
    return out


def _lexemes(leaflet: Leaflet, body: Span) -> tuple[Lexeme, ...]:
    return paper.canon(
        leaflet.source.text, body.start, body.end, paper.vocabulary(), len(leaflet.sizes)
    ).lexemes  # fmt: skip


def _printed(text: str, one: Lexeme, end: int) -> Printed | None:
    """Return the figures of a lexeme; up to `end` there may be other sizes in brackets of their own."""
    if not one.canon.startswith("<"):
        return None
    inside = one.canon[1:].removesuffix("th").removesuffix(">")
    try:
        values = tuple(float(value) for value in inside.split("|"))
    except ValueError:
        return None
    spots = _spots(text, one.start, one.end)
    if len(spots) < len(values) > 1:
        spots = _in_turn(text, _spots(text, one.start, end), values)
    if len(values) == 1 and len(spots) != 1:
        spots = (Span(one.start, one.end),)
    return Printed(spots, values) if len(spots) == len(values) else None


def _spots(text: str, start: int, end: int) -> tuple[Span, ...]:
    found = (token for token in paper.tokens(text, start, end) if token.sort.value in ("number", "ordinal"))
    return tuple(Span(token.start, token.end) for token in found)


def _in_turn(text: str, spots: tuple[Span, ...], values: tuple[float, ...]) -> tuple[Span, ...]:
    """Return the spots that show the values in turn: '16 sts. (Size 4--17 sts.) (Size 6--18 sts.)'."""
    out: list[Span] = []
    for spot in spots:
        shown = text[spot.start : spot.end].rstrip("stndrh")
        if len(out) < len(values) and shown == f"{values[len(out)]:g}":
            out.append(spot)
    return tuple(out)


def as_printed(old: str, value: float) -> str:
    """Return a figure as the one it replaces is printed.

    >>> as_printed("6th", 4), as_printed("10½", 11.5), as_printed("twenty", 21)
    ('4th', '11½', 'twenty-one')
    """
    whole, part = int(value), round(value - int(value), 3)
    if old[:1].isdigit() or old[:1] in "½¼¾":
        if part:
            return f"{whole or ''}{FRACTIONS.get(part, f'{part:g}'[1:])}"
        return f"{whole}{_ordinal(whole) if old[-1:].isalpha() else ''}"
    told = in_words(whole)
    return told.capitalize() if old[:1].isupper() else told


def _ordinal(value: int) -> str:
    return "th" if 10 <= value % 100 <= 20 else {1: "st", 2: "nd", 3: "rd"}.get(value % 10, "th")


def in_words(value: int) -> str:
    """Return a count in words.

    >>> in_words(24), in_words(106)
    ('twenty-four', 'one hundred and six')
    """
    if value < 20:
        return SMALL[value]
    if value < 100:
        tens, ones = divmod(value, 10)
        return TENS[tens - 2] + (f"-{SMALL[ones]}" if ones else "")
    hundreds, rest = divmod(value, 100)
    return f"{in_words(hundreds)} hundred" + (f" and {in_words(rest)}" if rest else "")
