"""The text in the trade's canonical words, each tied to the words as they were typed.

A *lexeme* is one or more tokens with one canonical spelling. Numbers stand in angle brackets, one value or one
for each size: `<34|36|38>`. Noise such as articles is left out of the canonical text and stays in the source.
"""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from dataclasses import dataclass, replace
from functools import cached_property

from lastlook.finding import Span
from lastlook.leaflet.trade.colors import NAMES as COLORS
from lastlook.leaflet.trade.colors import without_colors
from lastlook.leaflet.trade.columns import columns
from lastlook.leaflet.trade.lexeme import Lexeme as Lexeme
from lastlook.leaflet.trade.numbers import ells, halves, numbers_in_words, ordinal_slips
from lastlook.leaflet.trade.purposes import without_purposes
from lastlook.leaflet.trade.sizelist import labelled_sizes, size_list, united_sizes, write_values
from lastlook.leaflet.trade.tokens import Sort, Token, number, special, tokens
from lastlook.leaflet.trade.vocabulary import Vocabulary

PHRASES: dict[tuple[str, ...], str] = {
    ("bind", "off"): "bo", ("binding", "off"): "bo", ("bound", "off"): "bo", ("cast", "off"): "bo",
    ("casting", "off"): "bo", ("bind", "down"): "bo", ("cast", "on"): "co", ("casting", "on"): "co",
    ("bound-off",): "bo", ("cast-off",): "bo", ("cast-on",): "co", ("bind-off",): "bo",
    ("stocking", "st"): "stst", ("stockinette", "st"): "stst", ("stockinet", "st"): "stst",
    ("stocking", "web"): "stst", ("stockinette",): "stst", ("stockinet",): "stst", ("reverse", "stst"): "revstst",
    ("rev", "stst"): "revstst",
    ("garter", "st"): "garter", ("garter",): "garter", ("moss", "st"): "moss", ("seed", "st"): "moss",
    ("seed",): "moss", ("moss",): "moss", ("rice", "st"): "moss", ("double", "moss"): "dmoss",
    ("right", "side"): "rs", ("wrong", "side"): "ws", ("right", "sides"): "rs", ("wrong", "sides"): "ws",
    ("pick", "up"): "pu", ("picking", "up"): "pu", ("picked", "up"): "pu", ("take", "up"): "pu", ("taking", "up"): "pu",
    ("knit", "up"): "pu",
    ("yarn", "fwd"): "yo", ("yarn", "over"): "yo", ("yarn", "rnd", "needle"): "yo", ("yarn", "on", "needle"): "yo",
    ("yarn", "around", "needle"): "yo", ("yarn", "over", "needle"): "yo", ("yarn", "fwd", "and", "over", "needle"): "yo",
    ("work", "not"): "donot", ("dpn", "or", "cn"): "cn", ("spare", "double", "pointed", "or", "cable", "needle"): "cn", ("double", "pointed", "or", "cable", "needle"): "cn", ("spare", "or", "cable", "needle"): "cn", ("spare", "or", "cn"): "cn",
    ("take", "in"): "dec", ("taking", "in"): "dec",
    ("at", "same", "time"): "sametime", ("at", "same", "x"): "sametime",
    ("as", "before"): "asbefore", ("in", "all"): "in-all", ("altogether",): "in-all",
    ("single", "crochet"): "sc", ("double", "crochet"): "dc", ("half", "double", "crochet"): "hdc",
    ("cable", "needle"): "cn", ("dp", "needle"): "cn", ("double", "pointed", "needle"): "dpn",
    ("st", "hold"): "hold", ("safety", "pin"): "hold", ("safety", "needle"): "hold", ("spare", "needle"): "hold",
    ("spare", "hold"): "hold", ("length", "of", "yarn"): "hold", ("piece", "of", "yarn"): "hold",
    ("spare", "yarn"): "hold", ("stitch", "hold"): "hold",
}  # fmt: skip
_BY_FIRST: dict[str, list[tuple[tuple[str, ...], str]]] = {}
for _words, _name in sorted(PHRASES.items(), key=lambda pair: -len(pair[0])):
    _BY_FIRST.setdefault(_words[0], []).append((_words, _name))


@dataclass(frozen=True)
class Canon:
    """The canonical text of a stretch, with the way back to the source."""

    lexemes: tuple[Lexeme, ...]

    @cached_property
    def text(self) -> str:
        """Return the canonical words, one space between."""
        return " ".join(one.canon for one in self.lexemes)

    @cached_property
    def _starts(self) -> list[int]:
        out, spot = [], 0
        for one in self.lexemes:
            out.append(spot)
            spot += len(one.canon) + 1
        return out

    def span(self, start: int, end: int) -> Span:
        """Return the source span of a stretch of the canonical text."""
        if not self.lexemes:
            return Span(0, 0)
        first = max(0, bisect_right(self._starts, start) - 1)
        last = max(first, bisect_left(self._starts, end) - 1)
        while last > first and self.lexemes[last].canon in _EDGES:
            last -= 1
        return Span(self.lexemes[first].start, self.lexemes[last].end)


_EDGES = frozenset({",", ";", ".", ":", "--", "and", "-"})


def canon(text: str, start: int, end: int, words: Vocabulary, sizes: int) -> Canon:
    """Return a stretch of the source in canonical words; `sizes` is how many the leaflet has, 0 if unknown."""
    raw: list[Lexeme] = []
    for before, token in _pairs(_mended(tokens(text, start, end), words)):
        if before is not None and raw and (_line_ends(text, before, token) or _stop_inside(text, before, token)):
            raw.append(Lexeme(".", before.start, before.start))
        raw.append(_lexeme(token, before, words))
    joined = halves(numbers_in_words(ordinal_slips(ells(_without_noise(raw))), words))
    listed = size_list(united_sizes(labelled_sizes(columns(joined, sizes)), sizes), sizes)
    plain = _phrases(without_colors(_stops(_fused(listed, words))), words)
    return Canon(tuple(without_purposes(plain)))


def _pairs(stream: list[Token]) -> list[tuple[Token | None, Token]]:
    """Return each token that is not space, with whatever stands directly before it."""
    out: list[tuple[Token | None, Token]] = []
    before: Token | None = None
    for token in stream:
        if token.sort is not Sort.SPACE:
            out.append((before, token))
        before = token
    return out


def _mended(stream: list[Token], words: Vocabulary) -> list[Token]:
    """Join words that the end of a line broke with a hyphen; split other hyphens into spaces."""
    out: list[Token] = []
    spot = 0
    while spot < len(stream):
        token = stream[spot]
        hyphen = token.text == "-" and out and out[-1].sort is Sort.WORD and spot + 1 < len(stream)
        if not hyphen:
            out.append(token)
            spot += 1
            continue
        after = stream[spot + 1]
        broken = after.sort is Sort.SPACE and "\n" in after.text and spot + 2 < len(stream)
        rest = stream[spot + 2] if broken else after
        if rest.sort is Sort.WORD:
            whole = out[-1].text + rest.text
            gap = text_between(out[-1], rest)
            if broken and (words.knows(whole.lower()) or not words.knows(rest.text.lower())):
                out[-1] = Token(Sort.WORD, whole + "\0" * gap, out[-1].start)
            else:
                out.append(Token(Sort.SPACE, " ", token.start))
                out.append(rest)
            spot += 3 if broken else 2
            continue
        out.append(token)
        spot += 1
    return out


_OPENERS = (
    "continue cont work repeat rep bind cast change next shape decrease increase dec inc join sew finish now place slip "
    "break fasten row rnd round using divide leave press turn complete cut weave block this these with when note then all"
)
OPENERS = frozenset(_OPENERS.split())
"""Words that begin a sentence where a line begins with them in a capital."""
LEADS_ON = frozenset(
    [
        "and",
        "then",
        "to",
        "of",
        "in",
        "the",
        "with",
        "until",
        "till",
        "for",
        "or",
        "a",
        "an",
        "at",
        "on",
        "from",
        "by",
        "next",
        "every",
        "each",
        "last",
        "this",
        "these",
        "no",
        "nos",
        "size",
        "first",
        "second",
        "third",
        "work",
        "knit",
        "purl",
        "using",
        "change",
        "as",
        "same",
        "like",
    ]
)
"""Words after which a sentence goes on into the next line."""


def _line_ends(text: str, gap: Token, after: Token) -> bool:
    """Whether a line that was set without a full stop ends a sentence: at a paragraph, or before a verb in a capital."""
    if gap.sort is not Sort.SPACE or "\n" not in gap.text or gap.start == 0:
        return False
    last = text[gap.start - 1]
    if not (last.isalnum() or last in ')]”"½¼¾'):
        return False
    if gap.text.count("\n") > 1:
        return after.text[:1].isupper() or after.sort in (Sort.NUMBER, Sort.ORDINAL)
    word = re.search(r"[A-Za-z]+$", text[max(0, gap.start - 20) : gap.start])
    if word and word.group().lower() in LEADS_ON:
        return False
    return after.text[:1].isupper() and after.text[1:].islower() and after.text.lower() in OPENERS


def _stop_inside(text: str, gap: Token, after: Token) -> bool:
    """Whether the stop of an abbreviation that is one sign, as in 'yo.', ends the sentence too: a long capital word follows."""
    if gap.sort is not Sort.SPACE or gap.start < 2 or text[gap.start - 1] != ".":
        return False
    special = text[gap.start - 2 : gap.start].lower() in ("o.", "l.") and not text[max(0, gap.start - 4)].isdigit()
    named = re.search(r"(?i)\b(?:y\.?o|p\.?s\.?s\.?o|t\.?b\.?l)\.$", text[max(0, gap.start - 12) : gap.start])
    return bool(special and named) and after.text[:1].isupper() and after.text[1:3].islower()


def text_between(a: Token, b: Token) -> int:
    """Return how many characters lie between two tokens."""
    return b.start - a.end


def _lexeme(token: Token, before: Token | None, words: Vocabulary) -> Lexeme:
    tight = before is not None and before.sort is not Sort.SPACE
    low = token.text.replace("\0", "").lower().replace("’", "'")
    capital = token.text[:1].isupper()
    figures: tuple[float, ...] = ()
    if token.sort is Sort.NUMBER:
        figures = (number(token.text),)
        name = write_values(figures)
    elif token.sort is Sort.ORDINAL:
        name = f"<{int(''.join(sign for sign in token.text if sign.isdigit()))}>th"
    elif token.sort is Sort.SPECIAL:
        name = special(token)
    elif token.sort is Sort.DASH:
        name = "--"
    elif token.text in QUOTES and not (before is not None and before.sort is Sort.NUMBER):
        name = ""
    elif token.sort is Sort.SIGN:
        name = {"<": "less", ">": "over", "|": "bar", "[": "(", "]": ")", "{": "(", "}": ")", "“": "inchmark", "”": "inchmark", '"': "inchmark",
                "″": "inchmark", "=": "=", "–": "--", "†": "dagger", "×": "*", "✕": "*", "&": "and", "•": "*",
                "+": "plus", "/": "/", "#": "no"}.get(token.text, token.text)  # fmt: skip
    elif low == "s" and before is not None and before.text in ("'", "’"):
        name = ""
    else:
        name = _word(low, words)
    return Lexeme(name, token.start, token.end, capital, tight, figures)


QUOTES = frozenset({'"', "“", "”", "″"})
"""Signs that mean inches after a number, and quote a word anywhere else."""


def _word(low: str, words: Vocabulary) -> str:
    if low in words.own:
        return words.own[low]
    if low in ("once", "twice", "thrice"):
        return f"<{('once', 'twice', 'thrice').index(low) + 1}> x"
    if low in words.ordinals:
        return f"<{words.ordinals[low]}>th"
    if low in words.noise:
        return ""
    return words.word(low.removesuffix("'s"))


def _without_noise(stream: list[Lexeme]) -> list[Lexeme]:
    """Leave out noise words; a capital that began a sentence moves to the word after."""
    out: list[Lexeme] = []
    capital = False
    for one in stream:
        if one.canon:
            out.append(replace(one, capital=True) if capital and one.canon[:1].isalpha() else one)
            capital = False
        else:
            capital = capital or one.capital
    return out


def _fused(stream: list[Lexeme], words: Vocabulary) -> list[Lexeme]:
    """Put stitches that are written as one word together: 's', '<2>', 'kp' become 's2kp'."""
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        for length in (4, 3, 2, 1):
            part = stream[spot : spot + length]
            if len(part) < length or any(not one.tight for one in part[1:]):
                continue
            name = "".join(one.canon if not one.figures else f"{one.figures[0]:g}" for one in part)
            if name in words.fused and (length > 1 or part[0].canon == name):
                out.append(Lexeme(name, part[0].start, part[-1].end, part[0].capital, part[0].tight))
                spot += length
                break
        else:
            out.append(stream[spot])
            spot += 1
    return out


def _stops(stream: list[Lexeme]) -> list[Lexeme]:
    """Drop the stops that belong to abbreviations; keep those that end a sentence."""
    out: list[Lexeme] = []
    for spot, one in enumerate(stream):
        if one.canon == "'":
            continue
        if one.canon != "." or not out or not _abbreviates(out[-1], one, stream[spot + 1 : spot + 3]):
            out.append(_inches(one, out, stream[spot + 1 : spot + 3]))
    return out


def _abbreviates(before: Lexeme, stop: Lexeme, after: list[Lexeme]) -> bool:
    if not after:
        return False
    follows = after[0]
    if not before.canon[:1].isalpha() or not stop.tight:
        return False
    if follows.tight and (follows.figures or follows.canon in {",", ";", ":", ")", "(", "."}):
        return follows.canon not in {"--"}
    if follows.canon in {",", ";", ":", ")", "*", "(", "="}:
        return follows.canon != "*" and follows.canon != "("
    if before.canon in ("inch", "cm", "st") and follows.canon in (
        "from",
        "or",
        "above",
        "below",
        "long",
        "deep",
        "wide",
    ):
        return not follows.capital
    if _spelt_out(before):
        return False
    if before.canon in {"foll", "every", "next", "each"}:
        return True
    if follows.canon.endswith(">th"):
        return not (len(after) > 1 and after[1].canon in {"row", "rnd", "needle", "and", "(", ":", "--"})
    if follows.figures or follows.canon[:1] == "<":
        return before.canon not in {"row", "rnd", "st"} or not follows.capital
    return not follows.capital and follows.canon[:1].isalpha()


NEVER_SPELT_OUT = frozenset(
    {"stst", "garter", "moss", "psso", "p2sso", "tbl", "yo", "approx", "cable", "bo", "co", "maincolor", "revstst"}
)
SHORT_FORMS = frozenset({("cont", 4), ("foll", 4), ("patt", 4), ("inc", 4), ("dec", 4), ("meas", 4), ("x", 4)})
FULL_WORDS = frozenset({"row", "end", "rib", "top", "tie", "cap", "toe", "all", "leg", "times"})


def _spelt_out(one: Lexeme) -> bool:
    """Whether the word is written in full, so that a stop after it ends a sentence."""
    stitch = one.canon in {"skp", "skpo", "ssk", "ssp", "kfb"} or any(sign.isdigit() for sign in one.canon)
    if stitch or one.canon in NEVER_SPELT_OUT or not one.canon[:1].isalpha():
        return False
    long = one.end - one.start
    return one.canon in FULL_WORDS or (long > 3 and (one.canon, long) not in SHORT_FORMS)


def _inches(one: Lexeme, before: list[Lexeme], after: list[Lexeme]) -> Lexeme:
    """Tell 'in' the unit from 'in' the preposition."""
    if one.canon == "inchmark":
        return Lexeme("inch", one.start, one.end)
    if one.canon != "in" or not before or not before[-1].figures:
        return one
    follows = after[0].canon if after else "."
    prepositions = {"next", "each", "every", "front", "back", "same", "one", "st", "rib", "patt", "stst", "garter",
                    "moss", "k", "first", "all", "this", "these", "that", "row", "color", "following"}  # fmt: skip
    if follows in prepositions or follows in COLORS or follows[:1] == "<":
        return one
    return Lexeme("inch", one.start, one.end)


def _phrases(stream: list[Lexeme], words: Vocabulary) -> list[Lexeme]:
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        for names, name in _BY_FIRST.get(stream[spot].canon, ()):
            part = stream[spot : spot + len(names)]
            if tuple(one.canon for one in part) == names:
                out.append(Lexeme(name, part[0].start, part[-1].end, part[0].capital, part[0].tight))
                spot += len(names)
                break
        else:
            out.append(stream[spot])
            spot += 1
    return out
