"""The sizes of a leaflet as its head names them, or as the lists of figures in its body tell."""

from __future__ import annotations

import re
from collections import Counter

from lastlook.leaflet.layout import Head
from lastlook.leaflet.trade.canon import canon
from lastlook.leaflet.trade.tokens import number
from lastlook.leaflet.trade.vocabulary import Vocabulary, vocabulary

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


def sizes(text: str, found: list[Head]) -> tuple[str, ...]:
    """Return the sizes as the leaflet names them; empty where it names none."""
    alone = _ALONE.search(text)
    if alone:
        return (alone[1],)
    stop = next(
        (head.span.start for head in found if head.kind in ("piece", "pattern", "section", "crochet")), len(text)
    )
    begun = BEGUN.search(text)
    front = _figures(text[: min(max(stop, 200), 4000, begun.start() if begun else 4000)])
    one = _one(front)
    return one or _named_first(front) or _changes(front) or _after_word(front) or _named(front) or _single(front)


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
        rf"(?is)(?<!changes for )\bsizes?\W{{0,3}}(?P<a>{_VALUE})\W{{1,4}}(?:sizes? )?(?P<b>{_VALUE}(?:\s*(?:,|and|&|-|, and)\s*{_VALUE})*)\s*(?:are )?in (?:parenthes[ie]s|brackets)", front
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


def _labels(values: list[str]) -> tuple[str, ...]:
    out = tuple(" ".join(value.split()) for value in values)[:MOST_SIZES]
    return out if len(set(out)) == len(out) and all(number(one) < 1000 for one in out) else ()


def settled(text: str, names: tuple[str, ...], words: Vocabulary) -> tuple[str, ...]:
    """Return the sizes that the body bears out: 'SIZE: 34-36' is one where no figure is told for two."""
    if not names:
        return inferred(text, words)
    pair = re.search(r"(?im)^\W*(?:sizes?|to fit)\b[^\d]{0,24}(\d+)\s*(?:-|–|to)\s*(\d+)\b(?!\s*[-,(\[])", text[:4000])
    if len(names) == 2 and pair and names == pair.groups():
        body = canon(text, 0, min(len(text), 30_000), words, 2).lexemes
        if not any(len(one.figures) == 2 for one in body):
            return ("-".join(names),)
    return names


def inferred(text: str, words: Vocabulary) -> tuple[str, ...]:
    """Return sizes counted from the lists of figures in the body, where the head names none."""
    lists = Counter(
        len(one.figures) for one in canon(text, 0, min(len(text), 30_000), words, 0).lexemes if len(one.figures) > 1
    )
    if not lists:
        return ("one size",)
    count, seen = lists.most_common(1)[0]
    many = sum(lists.values())
    if seen < 3 or seen < 0.6 * many:
        return ("one size",)
    return tuple(f"size {number + 1}" for number in range(count))
