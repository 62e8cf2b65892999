"""What stands before the pieces: title, sizes, gauge, buttons, the leaflet's own abbreviations."""

from __future__ import annotations

import re
from collections import Counter

from lastlook.leaflet.layout import Head
from lastlook.leaflet.trade.canon import canon
from lastlook.leaflet.trade.sizelist import read_values
from lastlook.leaflet.trade.tokens import number
from lastlook.leaflet.trade.vocabulary import Vocabulary

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


def title(text: str, found: list[Head]) -> str | None:
    """Return the title: the first line that is no number, with the line under it where that belongs to it."""
    stop = next((head.span.start for head in found[1:] if head.kind not in ("other", "title", "note")), len(text))
    lines = [line.strip() for line in text[:stop].splitlines()]
    skip = re.compile(
        r"(?i)^(?:leaflet|book|no\.|page|series|price|illustrated|continued)\b|knitted for|\bwools? +leaflet|leaflet no|\bno\. ?\d+\s*$|^\W*$"
    )
    kept = [(spot, line) for spot, line in enumerate(lines) if line and not skip.search(line)]
    if not kept:
        return None
    spot, first = kept[0]
    if len(first) > 80 or re.search(r"(?i)\bcast on\b|\bknit\b.*\bpurl\b", first):
        return None
    name = first.rstrip(".").title().replace("'S", "'s").replace("’S", "’s") if first.isupper() else first.rstrip(".")
    after = lines[spot + 1] if spot + 1 < len(lines) else ""
    joined = re.sub(r"\s*(?:--+|—)\s*", ", ", name)
    if after and len(after) < 70 and not re.search(r"(?i)\bsizes?\b|to fit|\bcast on\b|\d.*[(\[]", after):
        return f"{joined}, {after[0].lower() + after[1:] if after[:2].istitle() and after.split()[0].lower() in ('a', 'the', 'an', 'raglan', 'short') else after}".rstrip(
            "."
        )
    return joined


def sizes(text: str, found: list[Head]) -> tuple[str, ...]:
    """Return the sizes as the leaflet names them; empty where it names none."""
    alone = _ALONE.search(text)
    if alone:
        return (alone[1],)
    stop = next(
        (head.span.start for head in found if head.kind in ("piece", "pattern", "section", "crochet")), len(text)
    )
    front = text[: min(max(stop, 200), 4000)]
    return _named_first(front) or _changes(front) or _after_word(front) or _named(front) or ()


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
        r"(?:for|in) (?:the )?(?:small(?:est)? )?sizes?\s*(?P<a>[\w ]{1,16}?)(?:\.|;|,)?\s*(?:\(.*?\))?\s*(?:The )?changes for (?:larger |the larger )?sizes?\s*(?P<b>[^.]+?)\s*(?:are|is|in)\b",
        front, re.I | re.S,
    )  # fmt: skip
    if not match:
        return ()
    more = [one.strip() for one in re.split(r",|\band\b|-|;|[()\[\]]", match["b"]) if one.strip()]
    return (match["a"].strip(), *(" ".join(one.split()) for one in more))[:MOST_SIZES]


def _after_word(front: str) -> tuple[str, ...]:
    for word in (r"\bsizes?\b", r"\bto fit\b", r"\bbust\b|\bchest\b|\bhead\b", r"\bage\b|\bmeasur\w+"):
        for match in re.finditer(word, front, re.I):
            near = front[match.start() : match.start() + 160].split("\n\n")[0]
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


def _bracketed_names(front: str) -> tuple[str, ...]:
    match = re.search(
        r"(?i)\b(average|small|medium|women'?s|child'?s|first|small size)\s*[(\[]\s*([a-z' ,-]+?)\s*[)\]]", front
    )
    if match:
        more = [one.strip() for one in re.split(r",|-|\band\b", match.group(2)) if one.strip()]
        if more and all(
            len(one) < 16
            and re.fullmatch(
                r"(?i)(?:x-?)?(?:extra )?(?:small|medium|large|men'?s|adult|ladies'?|average|second|third)(?: size)?",
                one,
            )
            for one in more
        ):
            return tuple(one.lower() for one in (match.group(1), *more))
    return ()


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


def gauge(text: str, found: list[Head], words: Vocabulary) -> tuple[float, float | None] | None:
    """Return stitches and rows per 100 mm as printed, None where none is.

    Ratios over two or three inches stay ratios: 11 stitches to 2 inches are 5.5 to the inch.
    """
    spots = [head.span.start for head in found if head.kind == "gauge"]
    spots += [match.start() for match in re.finditer(r"(?i)\b(?:gauge|tension|scale)\b", text)]
    spots += [
        match.start()
        for match in re.finditer(
            r"(?i)(?<!\d)\d{1,4} (?:sts?|stitches)\b[^.]{0,30}(?:=|equal|to|make|measure)\s*(?:an|one|1|2|two)\s*in",
            text,
        )
    ][:2]
    for spot in spots:
        plain = canon(text, spot, min(len(text), spot + 400), words, 0).text
        stitches = _ratio(plain, r"st")
        if stitches:
            return stitches, _ratio(plain, r"(?:row|rnd)")
    return None


def _ratio(plain: str, what: str) -> float | None:
    equals = r"(?: (?:in \w+|of \w+|in stst|over stst|use no <\d+> needle|stst|rib))?(?: ?,)? ?(?:=|to|equal|make|meas|should meas|over|in|per|approx|about)+(?: (?:=|about|to))? "
    match = re.search(
        rf"<(?P<n>[\d.]+)(?:\|[^>]*)?> {what}(?: (?:and|,|;|or|x|by) <(?P<r>[\d.]+)> (?:row|rnd))?{equals}(?:(?:<(?P<d>[\d.]+)>) )?(?P<u>inch|cm|in\b)",
        plain,
    )
    if match is None and what != "st":
        match = re.search(
            rf"st (?:and|,|;|by|x) <(?P<n>[\d.]+)> {what}{equals}(?:<(?P<d>[\d.]+)> )?(?P<u>inch|cm|in\b)", plain
        )
    if match is None:
        reverse = re.search(
            rf"<(?P<d>[\d.]+)> (?P<u>inch|cm)(?: square)? ?(?:=|over|to|:)? ?(?:<[\d.]+> st (?:and|,|by) )?<(?P<n>[\d.]+)> {what}",
            plain,
        )
        match = reverse
    if match is None:
        return None
    length = float(match["d"] or 1) * (10.0 if match["u"] == "cm" else 25.4)
    count = float(match["n"])
    return count / length * 100 if length > 0 and 0 < count < 500 else None


def buttons(text: str, found: list[Head]) -> int | None:
    """Return how many buttons the materials name."""
    match = re.search(
        r"(?i)\b(\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|twelve)\s+(?:(?:small|large|pearl|matching|flat|linen)\s+)?buttons\b",
        text,
    )
    if not match:
        return None
    words = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
    word = match.group(1).lower()
    return int(word) if word.isdigit() else words.index(word)


def own_words(text: str, found: list[Head], words: Vocabulary) -> dict[str, str]:
    """Return what the leaflet's own list of abbreviations makes of our words: one word for one word."""
    out: dict[str, str] = {}
    for head in found:
        if head.kind != "legend":
            continue
        body = text[head.body.start : head.body.end]
        for match in re.finditer(
            r"\b([A-Za-z]{1,5})\.?\s*(?:,|=|—|–|--|-|\bfor\b|means|signifies)\s*([a-z]+(?: [a-z]+)?)\s*(?=[;,.\n]|$)",
            body,
        ):
            short, meaning = match.group(1).lower(), match.group(2).lower()
            known = words.words.get(meaning.split()[0]) if len(meaning.split()) == 1 else None
            if known and words.word(short) != known and short not in ("a", "the", "in", "and", "to"):
                out[short] = known
    return out


def read_list(canonical: str) -> tuple[float, ...]:
    """Return the values of a canonical number."""
    return read_values(canonical).values
