"""Doubtful figures: those that the engine is not sure of, with what else they may be.

A figure is never changed here; each is listed with its place, so that the maker can look at its picture and the
proof of the counts can say which of its rivals would add up.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from lastlook.finding import Certainty, Finding, SourceText, Span, Where
from lastlook.leaflet import Repair
from lastlook.scan.scanned import Doubtful, Sign, Word

SURE_FIGURE = 0.97
"""Below this certainty a figure is listed; `benchmarks/scan.md` has the share of misread figures that this catches."""
NEAR_RIVAL = 0.02
"""A rival figure with more certainty than this makes a figure doubtful too."""
FIGURES = frozenset("0123456789½¼¾⅓⅔⅛⅜⅝⅞")
LIKE_FIGURES = {"O": "0", "o": "0", "l": "1", "I": "1", "|": "1", "S": "5", "B": "8", "Z": "2", "G": "6"}
LIKE_FRACTIONS = frozenset("%¹²³º°ª")
"""What is read where a small fraction is printed."""
FRACTIONS = ("½", "¼", "¾")
SURE_BEHIND = 0.9
LONG = 4
"""Figures of a number that no stitch count has; two numbers have run together, unless it is a year."""
MOST_LISTED = 25


def doubtful(text: str, words: Sequence[Word], repairs: Sequence[Repair]) -> tuple[Doubtful, ...]:
    """Return the doubtful numbers of a text in reading order."""
    made = [one.span for one in repairs if one.makes_number]
    out: list[Doubtful] = []
    for which, word in enumerate(words):
        whole = text[word.span.start : word.span.end]
        is_made = any(span.start < word.span.end and word.span.start < span.end for span in made)
        if whole == word.seen:
            out += _in_word(which, word, whole)
        elif is_made and any(sign in FIGURES for sign in whole):
            lowest = min((sign.certainty for sign in word.signs), default=0.0)
            out.append(Doubtful(which, word.span, whole.strip("()[],.;:"), (), lowest, True))
    return tuple(out)


def _in_word(which: int, word: Word, whole: str) -> list[Doubtful]:
    out = []
    for match in re.finditer(r"[\d½¼¾⅓⅔⅛⅜⅝⅞]+", whole):
        start, stop = match.span()
        behind = word.signs[stop] if stop < len(word.signs) else None
        if behind and (behind.text in LIKE_FRACTIONS or (behind.text.isalpha() and behind.certainty < SURE_BEHIND)):
            found: Doubtful | None = _with_what_follows(which, word, (start, stop))
        else:
            found = _number(which, word, (start, stop))
        out += [found] if found else []
    return out


def _with_what_follows(which: int, word: Word, part: tuple[int, int]) -> Doubtful:
    """Doubt a number that has a sign behind it which may be its fraction."""
    start, stop = part
    read = word.seen[start : stop + 1]
    span = Span(word.span.start + start, word.span.start + stop + 1)
    told = [other for other, _ in word.signs[stop].rivals if other in FRACTIONS]
    rivals = tuple(word.seen[start:stop] + one for one in dict.fromkeys([*told, *FRACTIONS]))
    return Doubtful(which, span, read, rivals[:3], min(word.signs[stop].certainty, SURE_BEHIND))


def _number(which: int, word: Word, part: tuple[int, int]) -> Doubtful | None:
    start, stop = part
    signs = word.signs[start:stop]
    read = "".join(sign.text for sign in signs)
    span = Span(word.span.start + start, word.span.start + stop)
    lowest = min(sign.certainty for sign in signs)
    if len(read) >= LONG and read.isdigit() and not re.fullmatch(r"1[789]\d\d|20\d\d", read):
        return Doubtful(which, span, read, (f"{read[: len(read) // 2]}-{read[len(read) // 2 :]}",), lowest)
    weak = [spot for spot, sign in enumerate(signs) if _is_weak(sign)]
    if not read[:-1].isdigit() and len(read) > 1:
        # A figure behind a fraction can't be; one of the two is what the other was taken for.
        kept = tuple(dict.fromkeys(read.rstrip("0123456789")[:-1] + one for one in (*FRACTIONS,)))
        return Doubtful(which, span, read, kept, min(lowest, SURE_BEHIND))
    if not weak:
        return None
    rivals = [
        (chance, read[:spot] + other + read[spot + 1 :]) for spot in weak for other, chance in _rivals(signs[spot])
    ]
    rivals += [(chance, f"{read[:spot]}-{read[spot:]}") for spot in weak if spot for chance in _lost_dash(signs[spot])]
    told = tuple(dict.fromkeys(other for _, other in sorted(rivals, reverse=True)))
    return Doubtful(which, span, read, told[:4], lowest)


def _is_weak(sign: Sign) -> bool:
    near = [chance for _, chance in _rivals(sign)] + _lost_dash(sign)
    return sign.certainty < SURE_FIGURE or any(chance >= NEAR_RIVAL for chance in near)


def _lost_dash(sign: Sign) -> list[float]:
    """Return the chance that a dash stands close before the figure, as between sizes."""
    return [chance for other, chance in sign.rivals if other in "-–—~" and chance >= NEAR_RIVAL]


def _rivals(sign: Sign) -> list[tuple[str, float]]:
    told = [(LIKE_FIGURES.get(other, other), chance) for other, chance in sign.rivals]
    return [(other, chance) for other, chance in told if other in FIGURES and other != sign.text]


def said(one: Doubtful, source: SourceText, page: int) -> Finding:
    """Return the finding that asks for a look at one doubtful number."""
    line, _ = source.line_and_column(one.span.start)
    others = " or ".join(one.rivals[:2])
    sure = f"The picture is {one.certainty:.0%} sure" + (f"; the next likeliest is {others}." if others else ".")
    if one.is_made:
        sure = "A letter was read in it, and only a figure makes sense there."
    return Finding(
        "figure-doubtful",
        Certainty.DOUBTFUL,
        f"Line {line}, page {page + 1}: the {one.read} may be misread.",
        sure,
        "Look at its picture beside the word, and type what the paper says.",
        asks=True,
        where=Where(span=one.span),
        readings=(one.read, *one.rivals) if one.rivals else None,
    )
