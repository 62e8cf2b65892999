"""The sizes of a leaflet as its head names them, or as the lists of figures in its body tell."""

from __future__ import annotations

import re
from collections import Counter

from lastlook.leaflet.layout import Head
from lastlook.leaflet.trade.canon import canon
from lastlook.leaflet.trade.tokens import number
from lastlook.leaflet.trade.vocabulary import Vocabulary, vocabulary

_AGE = r"(?:months?|mos\.?|years?|yrs?\.?)"
_VALUE = r"\d+(?:[ -]\d+/\d+|\.\d+|[½¼¾⅓⅔⅛])?"
_LIST = re.compile(
    rf"(?P<first>{_VALUE})\s*[\"”]?\s*[(\[]\s*(?P<more>(?:{_VALUE}\s*[\"”]?\s*(?:[,;/–-]|and|\s)\s*)*{_VALUE})\s*[\"”]?\s*[)\]]"
)
_PLAIN = re.compile(rf"(?P<all>{_VALUE}(?:\s*(?:,|-|;|/|and|,\s*and|or|to fit)\s*{_VALUE})+)")
_NAMES = r"(?:x-?small|small|medium|large|x-?large|extra[- ]large|average|petite|women'?s(?: size)?|men'?s(?: size)?|ladies'?(?: size)?|child'?s(?: size)?|s|m|l|xl|\d+ (?:months|mos\.?|years?|yrs?\.?))"
_NAMED = re.compile(
    rf"\b(?P<first>{_NAMES})\s*[,]?\s*(?P<rest>(?:[(\[]?\s*(?:,|-|;|and|&|\s)*\s*(?:the )?{_NAMES}[^a-z0-9]*)+)", re.I
)
_ALONE = re.compile(r"(?m)^SIZE: (\S.{0,39}?) \(this size alone\)$")
"""How a leaflet says its size that was written out for one."""
MOST_SIZES = 12


def sizes(text: str, found: list[Head], words: Vocabulary) -> tuple[str, ...]:
    """Return the sizes: of the ways the head can be read, the first that has as many as the body has figures.

    Two groups of sizes have their figures in two lists. Where the head names none, they are counted only: 'size 1'.
    """
    alone = _ALONE.search(text)
    if alone:
        return (alone[1],)
    stop = next(
        (head.span.start for head in found if head.kind in ("piece", "pattern", "section", "crochet")), len(text)
    )
    begun = BEGUN.search(text)
    front = _figures(text[: min(max(stop, 200), 4000, begun.start() if begun else 4000)])
    readings = [reading for way in WAYS for reading in [way(front)] if reading]
    told = _lists(text, words)
    if told > 1:
        fitting = next((one for one in readings if len(one) in (told, 2 * told)), ())
        return fitting or tuple(f"size {number + 1}" for number in range(told))
    first = readings[0] if readings else ("one size",)
    hyphen = re.search(r"(?im)^\W*(?:sizes?|to fit)\b[^\d]{0,24}(\d+)\s*(?:-|–|to)\s*(\d+)\b(?!\s*[-,(\[])", front)
    return ("-".join(first),) if hyphen and first == hyphen.groups() else first


def _lists(text: str, words: Vocabulary) -> int:
    """Return how many values most figures of the body have, 0 where too few have more than one."""
    lists = Counter(
        len(one.figures) for one in canon(text, 0, min(len(text), 30_000), words, 0).lexemes if len(one.figures) > 1
    )
    if not lists:
        return 0
    count, seen = lists.most_common(1)[0]
    return count if seen > 2 and seen >= 0.6 * sum(lists.values()) else 0


BEGUN = re.compile(r"(?i)\bcast(?:ing)? on \w+ (?:sts?\b|stitches)|\bcast on \d")


def _figures(front: str) -> str:
    """Return the head with sizes that are told in words as figures: 'sizes sixteen and twenty'."""
    numbers = vocabulary().numbers

    def told(match: re.Match[str]) -> str:
        return re.sub(r"(?i)[a-z]+", lambda word: f"{numbers.get(word[0].lower(), word[0])}", match[0])

    return re.sub(r"(?i)(?<=\bsizes )[a-z]+(?:(?:,| and|, and| or| to) [a-z]+){1,6}|(?<=\bsize )[a-z]+\b", told, front)


def _one(front: str) -> tuple[str, ...]:
    """Read a size that is one though it has two figures: 'Size: 3 - 5 years'."""
    match = re.search(
        r"(?i)\bsize\W{0,3}(\d+)\s*(?:-|–|to|or)\s*(\d+)\s*(years?|yrs?|months?|mos)\b(?!\s*[(,;]\s*\d)", front
    )
    return (f"{match[1]}-{match[2]} {match[3].lower()}",) if match else ()


def _ranges(front: str) -> tuple[str, ...]:
    """Read sizes that are ranges: 'Size (36-38) (40-42)', 'Size 40 - 42 / Size 36-38 in parenthesis'."""
    span = r"\d+\s*(?:-|–|to)\s*\d+"
    row = re.search(rf"(?i)\bsizes?\W{{0,3}}((?:[(\[]?{span}[)\]]?[\s,;]*(?:and )?){{2,8}})", front)
    pair = re.search(
        rf"(?i)\bsizes?\W{{0,3}}({span})\W{{1,4}}sizes?\W{{0,3}}({span})\s*(?:are )?in (?:parenthes[ie]s|brackets)",
        front,
    )
    values = list(pair.groups()) if pair else re.findall(span, row[1]) if row else []
    return tuple(re.sub(r"\s*(?:-|–|to)\s*", "-", one) for one in values)


def _ages(front: str) -> tuple[str, ...]:
    """Read ages whose unit stands once or changes: '6 & 12 months', 'Sizes 6 months, 1 and 2 years'."""
    match = re.search(rf"(?i)\b((?:\d+(?: {_AGE})?\s*(?:,|and|&|, and|;|or|\(|-)\s*){{1,7}}\d+) ({_AGE})\b", front)
    if match is None:
        return ()
    parts = re.findall(rf"(?i)(\d+)(?: ({_AGE}))?", f"{match[1]} {match[2]}")
    out: list[str] = []
    unit = ""
    for value, own in reversed(parts):
        unit = own.lower() or unit
        out.append(f"{value} {unit.rstrip('s')}" if value == "1" else f"{value} {unit}")
    return tuple(reversed(out)) if len({one.split()[1].rstrip("s.") for one in out}) > 1 or "&" in match[1] else ()


def _letters(front: str) -> tuple[str, ...]:
    """Read sizes with letters: 'the smaller size (a) … the larger size (b)'."""
    found = list(dict.fromkeys(re.findall(r"\(([a-fA-F])\)", front)))
    return tuple(found) if len(found) > 1 and [one.lower() for one in found] == list("abcdef")[: len(found)] else ()


def _single(front: str) -> tuple[str, ...]:
    """Read the only size that is named: 'SIZE: 34'."""
    match = re.search(
        rf"(?im)^\W*size\W{{1,3}}({_VALUE}(?: (?:years?|yrs?|months?|mos)\b)?)(?=\s*(?:$|[.;]))(?!.{{0,20}}(?:needle|hook))",
        front,
    )
    return (match[1],) if match else ()


_SIZE_WORD = r"(?:extra[- ]large|x-?large|x-?small|small|medium|large|average)"
_GROUP = rf"{_SIZE_WORD}\s*\(\s*{_SIZE_WORD}(?:\s*[,-]\s*{_SIZE_WORD})*\s*\)|{_SIZE_WORD}(?:\s*,\s*{_SIZE_WORD})+"


def _named_first(front: str) -> tuple[str, ...]:
    """Read names that stand before any figures: two groups, names with what they mean, one name in brackets."""
    groups = re.search(rf"({_GROUP})\s*[;:]\s*(?:[^\n();]{{0,30}}?\b)?({_GROUP})", front, re.I)
    if groups:
        people = re.findall(r"(?i)\b(ladies|women|misses|girls|men|boys)['’]?s?\b", front)
        kinds = list(dict.fromkeys(one.lower() for one in people))[:2]
        named = {
            "ladies": "ladies'",
            "women": "women's",
            "misses": "misses'",
            "girls": "girls'",
            "men": "men's",
            "boys": "boys'",
        }
        first, second = (named.get(kind, kind) for kind in (kinds if len(kinds) == 2 else ("first", "second")))
        parts = [[one.lower() for one in re.findall(_SIZE_WORD, part, re.I)] for part in groups.groups()]
        return tuple([f"{first} {one}" for one in parts[0]] + [f"{second} {one}" for one in parts[1]])
    changes = re.search(
        rf"(?is)for (?:the )?({_SIZE_WORD}) sizes?\b.{{0,24}}?changes for (.{{4,120}}?)\b(?:are|is|in)\b", front
    )
    if changes:
        more = [one.lower() for one in re.findall(_SIZE_WORD, changes.group(2), re.I)]
        return (changes.group(1).lower(), *more) if more else ()
    described = re.findall(
        rf"(?i)\b({_SIZE_WORD}|women's|men's|child's)\s*\([^()\n]{{2,30}}\)(?=\s*(?:,|;|and|\.))", front
    )
    if len(described) > 1 and len(set(described)) == len(described):
        return tuple(one.lower() for one in described)
    pair = re.search(rf"(?i)\b({_NAMES})\s*\(\s*({_NAMES})\s+in (?:parentheses|brackets)\)", front)
    if pair:
        return tuple(re.sub(r"(?i) size$", "", one).lower() for one in pair.groups())
    ages = re.search(
        r"(?i)\b(\d+ (?:months?|mos\.?|years?|yrs?\.?))\s*\(\s*((?:\d+ (?:months?|mos\.?|years?|yrs?\.?)[\s,;-]*)+)\)",
        front,
    )
    if ages:
        return (
            ages.group(1),
            *(one.strip() for one in re.findall(r"(?i)\d+ (?:months?|mos\.?|years?|yrs?\.?)", ages.group(2))),
        )
    average = re.search(r"(?i)\b(average|small|medium)\s*\[\s*(large|medium)\s*\]", front)
    return tuple(one.lower() for one in average.groups()) if average else ()


def _changes(front: str) -> tuple[str, ...]:
    match = re.search(
        r"(?:for|in) (?:the )?(?:small(?:est)? )?sizes?\s*(?P<a>\w[\w -]{0,15}?)\W{0,3}(?:\([^()]*\))?\W{0,3}(?:with |and )?(?:The )?changes for (?:the )?(?:larger )?(?:sizes?)?\s*"
        r"(?P<b>(?:[\w½]|[^.\w]){1,80}?)\s*(?:are|is|in|given)\b",
        front, re.I | re.S,
    ) or re.search(
        rf"(?is)(?<!changes for )\bsizes?\W{{0,3}}(?P<a>{_VALUE})(?: {_AGE})?\W{{1,4}}(?:sizes? )?(?P<b>{_VALUE}(?:\s*(?:,|and|&|-|, and)\s*{_VALUE})*)(?: {_AGE})?\s*(?:are )?in (?:parenthes[ie]s|brackets)", front
    )  # fmt: skip
    if not match:
        return ()
    more = [one.strip() for one in re.split(r",|\band\b|&|-|;|[()\[\]]|\bsizes?\b", match["b"]) if one.strip()]
    return (match["a"].strip(), *(" ".join(one.split()) for one in more))[:MOST_SIZES]


def _after_word(front: str) -> tuple[str, ...]:
    for word in (r"\bsizes?\b", r"\bto fit\b", r"\bbust\b|\bchest\b|\bhead\b", r"\bage\b|\bmeasur\w+"):
        for match in re.finditer(word, front, re.I):
            near = front[match.start() : match.start() + 160].split("\n\n")[0]
            if _of_tools(front, match.start(), near):
                continue
            found = _LIST.search(near)
            if found and found.start() < 90:
                labels = _labels([found["first"], *re.findall(_VALUE, found["more"])])
                if labels:
                    return labels
            plain = _PLAIN.search(near)
            measured = plain and re.match(r"\s*(?:ins?\b|inch|cm)", near[plain.end() :])
            if plain and re.fullmatch(rf"{_VALUE}-{_VALUE}", plain["all"]) and "size" not in word:
                continue
            if plain and plain.start() < 30 and ("size" in word or measured):
                values = re.findall(_VALUE, plain["all"])
                if len(values) > 1 and "size" not in word and not _labels(values):
                    continue
                if len(values) > 1 and not re.search(r"(?i)needle|inch|oz|ball", near[: plain.start()]):
                    labels = _labels(values)
                    if labels:
                        return labels
    return ()


def _of_tools(front: str, spot: int, near: str) -> bool:
    """Whether a size is that of needles or a hook: 'needles, size 4', 'Size US-1, UK size 13'."""
    before = re.search(r"(?i)(?:needles?|hooks?|pins?|uk|us|standard)\W{0,3}(?:in )?$", front[max(0, spot - 24) : spot])
    after = re.match(
        r"(?i)sizes?\W{0,3}(?:us|uk|american|english)\b|sizes?\W{0,3}(?:no\.? ?)?\d+ (?:\w+ )?(?:needles?|hooks?|pins?)",
        near,
    )
    return bool(before or after)


def _named(front: str) -> tuple[str, ...]:
    match = re.search(rf"(?i)\b({_NAMES})\s*\(\s*({_NAMES})\s+in (?:parentheses|brackets)\)", front)
    if match:
        return tuple(re.sub(r"(?i) size$", "", one).lower() for one in match.groups())
    match = re.search(r"(?i)\b(average|small|medium|women'?s|child'?s|first)\s*[(\[]\s*([a-z' ,-]+?)\s*[)\]]", front)
    if match:
        more = [one.strip() for one in re.split(r",|-|\band\b", match.group(2)) if one.strip()]
        if all(len(one) < 16 for one in more):
            return tuple(one.lower() for one in (match.group(1), *more))
    for hit in re.finditer(r"(?i)\bsizes?\b[^\n]{0,90}", front):
        names = re.findall(_NAMES.replace("|s|m|l|xl", ""), hit.group()[5:], re.I)
        if len(names) > 1:
            return tuple(dict.fromkeys(name.strip().lower() for name in names))
    return ()


WAYS = (_one, _ranges, _ages, _named_first, _changes, _after_word, _named, _letters, _single)
"""The ways to read a head, the surest first."""


def _labels(values: list[str]) -> tuple[str, ...]:
    out = tuple(" ".join(value.split()) for value in values)[:MOST_SIZES]
    return out if len(set(out)) == len(out) and all(number(one) < 1000 for one in out) else ()
