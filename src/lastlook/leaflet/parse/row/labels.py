"""What rows, rounds and needles are called: '1st and 3rd rows', 'next 8 rows', 'on the side needle'."""

from __future__ import annotations

import re

from lastlook.leaflet.instruction import (
    Figure,
    Label,
)
from lastlook.leaflet.parse.cursor import Cursor, figure

SIDE = r"(?: ?,? ?\( (?P<side>(?:(?!\)).){1,60}) \))?"
SIGN = r"(?: ?(?:: ?-|:|, ?--|\. ?--|--|\. ?-|\.|,|-))?"
MANY = r"(?:<\d+>(?:th)?(?: ?(?:,|and|to|thru|-|&|--|, and) ?<[\d|]+>(?:th)?)*)"


ACROSS_NEEDLE = r"(?:and )?(?:k|work|rib|p)(?: (?:across|even|plain|k|on|over|st|of))* (?P<w>front|instep|<[23]>th) needle(?: st)?(?: (?:even|plain|in patt|in rib|k|without (?:dec|shape)))?(?= ?[,;.]| and|$)"
SIDE_NEEDLE = r"(?:and )?(?:on |at |in )(?P<w><1>th side|<2>th side|alt side|side|front|instep|sole|back) needle ?,? ?:? ?(?=(?:k|p|sl|narrow|work|rib|bo)\b)"


def label_of(cursor: Cursor) -> Label | None:
    if cursor.see(r"(?:work |k )?<1>th row (?:into|in) back of|<\d>th row is rep"):
        return None
    since = cursor.pos
    match = (
        cursor.take(r"(?:on |in |work |beg )?(?P<k>row|rnd)s? (?P<m>" + MANY + r")(?: and (?:all|every|each) (?P<e>even|uneven|odd|alt|foll alt|rs|ws)(?: numbered)?(?: (?:row|rnd))?)?(?: and (?P<e2>all|every) alt row)?" + SIDE + SIGN)
        or cursor.take(r"(?:on |in |work )?(?P<m>" + MANY + r") ?(?:and (?:(?:all|every|each) )?(?:foll )?(?P<e>alt|even|odd|foll|ws|rs)(?: numbered)? ?)?(?P<k>row|rnd|needle)(?: (?:and (?:all|every|each) (?P<e2>alt|even|foll)(?: (?:row|rnd))?)?)?" + SIDE + SIGN)
    )  # fmt: skip
    if match:
        counted = match.re.pattern.find("(?P<k>row|rnd)s? (?P<m>") < 0 and "th" not in match["m"]
        if (match["k"] == "needle" and cursor.see(r"{ROW}")) or (counted and not re.search(r"[:-] *$", match.group())):
            cursor.pos = since
            return None
        return _numbered(match)
    narrowing = cursor.take(
        r"(?:narrow|dec|inc) (?:on )?(?:<\d>th |next |every <\d>th |every alt )?(?P<w>row|rnd) (?:as foll|in foll (?:way|manner))(?: ?:)?"
    )
    if narrowing:
        return Label((), name="next", round=narrowing["w"] == "rnd")
    side = cursor.take(SIDE_NEEDLE)
    if side:
        which = {"<1>th side": 1, "front": 2, "instep": 2, "sole": 1, "back": 1}
        return Label((which.get(side["w"], 3),), needle=True)
    firsts = cursor.take(r"(?:work )?<1>th (?P<n><\d+>) (?P<w>row|rnd)" + SIDE + r"(?: ?(?:: ?-|:|\. ?--|--|,|-))")
    if firsts:
        return Label(
            tuple(range(1, 1 + int(firsts["n"].strip("<>")))), side=_side(firsts["side"]), round=firsts["w"] == "rnd"
        )
    match = cursor.take(
        r"(?:and )?(?:on |in |work |beg |for )?(?:the )?(?P<k>next|foll|last|dec|inc|<\d>th dec|buttonhole|patt|set up|cable|joining|divid\w*|eyelet|beading|opening|turning|hem|fold|beg|each (?:alt|foll)|alt|every|picot|final|first|starting|<1>th inc) (?:(?P<r>{N}) )?(?:(?:k|p|rs|ws) )?(?P<w>row|rnd)(?: (?:of|after) (?:rib|patt))?(?P<dec> \( (?:dec|inc) (?:row|rnd) \))?"
        + SIDE
        + r"(?: ?(?:: ?-|:|\. ?--|--|\.|,|-))"
    )
    if match:
        name = match["k"]
        return Label(
            (),
            rows=figure(match, "r") if match["r"] else None,
            side=_side(match["side"]),
            name=name,
            round=match["w"] == "rnd",
        )
    match = cursor.take(
        r"(?:(?:on|in) )?(?:next|foll|this|last) (?P<w>row|rnd)(?: ,)?(?= (?:k|p|work|bo|sl|\*|\(|rib|patt|moss|inc|m|yo|narrow|skip)\b| \*| \()"
    )
    if match:
        return Label((), name="next", round=match["w"] == "rnd")
    match = cursor.take(
        r"(?P<n><\d+>) \.(?= (?:k|p|sl|\*|\(|narrow|n |o |over|yo|like|same|as|make|inc|bo|co))"
    ) or cursor.take(
        r"(?P<n><\d+>th) (?:\. --|\. -|--|:|\.)(?= (?:k|p|sl|\*|\(|narrow|n |o |over|yo|like|same|as|make|inc|bo|co|rib|seam|work)\b)"
    )
    if match:
        return Label((int(match["n"].strip("<>th")),))
    return None


def _numbered(match: re.Match[str]) -> Label:
    text = match["m"]
    last_values: Figure | None = None
    numbers: list[int] = []
    for joiner, value in re.findall(r"(,|and|to|thru|-|&|--|, and)? ?<([\d|]+)>", text):
        part = [int(one) for one in value.split("|")]
        if joiner in ("to", "thru", "-", "--") and numbers:
            numbers += range(numbers[-1] + 1, min(part[0], numbers[-1] + 500) + 1)
            if len(part) > 1:
                last_values = Figure(tuple(float(one) for one in part))
        else:
            numbers.append(part[0])
    every = match.groupdict().get("e") or match.groupdict().get("e2") or ""
    every = {
        "odd": "alt",
        "uneven": "alt",
        "even": "alt",
        "foll alt": "alt",
        "foll": "alt",
        "all": "alt",
        "every": "alt",
    }.get(every, every)
    return Label(
        tuple(numbers),
        last_values,
        every=every,
        side=_side(match["side"]),
        round=match["k"] == "rnd",
        needle=match["k"] == "needle",
    )


def _side(text: str | None) -> str:
    if not text:
        return ""
    if re.search(r"\bws\b", text):
        return "ws"
    return "rs" if re.search(r"\brs\b", text) else ""


def reference(cursor: Cursor) -> tuple[int, ...]:
    match = cursor.take(
        r"(?:work |k )?(?:(?:same|exactly|worked) )?(?:as|like|rep|same)(?: as)?(?: (?:given|directed|described))? (?:in |for |of )?(?:(?:row|rnd)s? )?(?P<m>"
        + MANY
        + r")(?: (?:patt )?(?:row|rnd))?(?! (?:st|x|inch))(?: (?:of patt|row|again))*"
    )
    if match is None:
        return ()
    return numbered_list(match["m"])


def numbered_list(text: str) -> tuple[int, ...]:
    numbers: list[int] = []
    for joiner, value in re.findall(r"(,|and|to|thru|-|&|--|, and)? ?<([\d|]+)>", text):
        number = int(value.split("|")[0])
        if joiner in ("to", "thru", "-", "--") and numbers:
            numbers += range(numbers[-1] + 1, min(number, numbers[-1] + 500) + 1)
        else:
            numbers.append(number)
    return tuple(numbers)
