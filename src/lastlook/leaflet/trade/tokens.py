"""Lossless tokens: every character of the text belongs to exactly one, and joined they give it back.

A *token* is a number, an ordinal, a word, a dash, a sign or white space.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum


class Sort(Enum):
    """What a token is."""

    SPACE = "space"
    NUMBER = "number"
    ORDINAL = "ordinal"
    WORD = "word"
    SPECIAL = "special"
    DASH = "dash"
    SIGN = "sign"


@dataclass(frozen=True)
class Token:
    """A piece of the text with where it starts."""

    sort: Sort
    text: str
    start: int

    @property
    def end(self) -> int:
        """Return the offset after its last character."""
        return self.start + len(self.text)


FRACTIONS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875, "⅓": 1 / 3, "⅔": 2 / 3}
_FRACTION = "[" + "".join(FRACTIONS) + "]"
SPECIALS: dict[str, str] = {
    r"p\.?[ ]?s\.?[ ]?s\.?[ ]?o\b\.?": "psso",
    r"p2sso\b": "p2sso",
    r"t\.?[ ]?b\.?[ ]?l\b\.?": "tbl",
    r"st\.?[ -]?st(?:itch)?\b\.?(?![a-z])|[sS]tock\.?[ -]st(?:itch)?\b\.?": "stst",
    r"rev\.?[ ]st\.?[ ]st\b\.?": "revstst",
    r"g\.?[ -]?st\b\.?": "garter",
    r"m\.?[ ]?st\b\.?": "moss",
    r"ss\b": "stst",
    r"[rR]\.[ ]?s\.|RS\b|rs\b": "rs",
    r"[wW]\.[ ]?s\.|WS\b": "ws",
    r"[cC]\.?[ ]?(?:4|6|8|10|12)\.?[ ]?[fFbBlLrR]\b\.?": "cable",
    r"[wW][lL]\.?[ ]?fwd\b\.?|[wy]\.?[ ]?fwd\b\.?|[wy]\.?r\.?n\b\.?|y\.?o\.?n\b\.?|[wy]\.?f\b\.?|[wy]fd\b|w\.[ ]?wfd\b\.?": "yo",
    r"y\.?[ ]?o\b\.?(?![a-z])": "yo",
    r"b\.?[ ]?o\b\.": "bo",
    r"BO\b": "bo",
    r"CO\b": "co",
    r"s\.[ ]?c\b\.?": "sc",
    r"d\.[ ]?c\b\.?": "dc",
    r"h\.?[ ]?d\.?[ ]?c\b\.?": "hdc",
    r"[dD]\.?[ ]?[pP]\.?(?=[ ]needles?)": "dp",
    r"[mM]\.?[ ]?[cC]\.(?=[ ])": "maincolor",
    r"e\.o\.r\.": "every alt row",
}
_SPECIAL = "|".join(f"(?P<s{number}>{pattern})" for number, pattern in enumerate(SPECIALS))
_CANON = list(SPECIALS.values())
_TOKEN = re.compile(
    rf"(?P<space>\s+)|(?<![A-Za-z])(?:{_SPECIAL})"
    rf"|(?P<ordinal>\d{{1,4}}(?:st|nd|rd|th|d|ST|ND|RD|TH|D)\b)"
    rf"|(?P<number>\d{{1,6}}(?:[ ]?{_FRACTION}|[ -]\d{{1,2}}/\d{{1,2}}(?!\d)|/\d{{1,2}}(?!\d)|\.\d+)?|{_FRACTION})"
    r"|(?P<word>[A-Za-zÀ-ÿ]+(?:['’](?:s|t|ll|re)\b)?)"
    r"|(?P<dash>-{2,}|[—–])"
    r"|(?P<sign>.)",
    re.S,
)
_SORTS = {"space": Sort.SPACE, "ordinal": Sort.ORDINAL, "number": Sort.NUMBER, "word": Sort.WORD,
          "dash": Sort.DASH, "sign": Sort.SIGN}  # fmt: skip


def tokens(text: str, start: int = 0, end: int | None = None) -> list[Token]:
    """Return the tokens of a stretch of the text; joined they give the stretch back.

    >>> [token.text for token in tokens("K2tog, 4½ in.")]
    ['K', '2', 'tog', ',', ' ', '4½', ' ', 'in', '.']
    """
    out = []
    for match in _TOKEN.finditer(text, start, len(text) if end is None else end):
        sort = _SORTS.get(match.lastgroup or "", Sort.SPECIAL)
        out.append(Token(sort, match.group(), match.start()))
    return out


def special(token: Token) -> str:
    """Return the canonical word of a special token: 'psso' for 'p. s. s. o.'."""
    match = _TOKEN.match(token.text)
    if match is None or match.lastgroup is None or not match.lastgroup.startswith("s") or match.lastgroup in _SORTS:
        return token.text.lower()
    name = _CANON[int(match.lastgroup[1:])]
    return name + "".join(sign for sign in token.text if sign.isdigit()) if name == "cable" else name


def number(text: str) -> float:
    """Return the value of a number token.

    >>> number("4-1/2"), number("18½"), number("3/4")
    (4.5, 18.5, 0.75)
    """
    total = 0.0
    for sign, value in FRACTIONS.items():
        if sign in text:
            total, text = value, text.replace(sign, " ")
    for part in re.split(r"[ -]+", text.strip()):
        top, _, bottom = part.partition("/")
        if top:
            total += float(top) / float(bottom) if bottom and float(bottom) else float(top)
    return total
