"""The layers of a leaflet: its heads, and the stretches of text that stand under them.

A *head* is a line of its own or the words before a colon or dash at the start of a line. Line breaks mean nothing else.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from lastlook.finding import Span

PIECE = (
    r"(?:(?:left|right|left[- ]hand|right[- ]hand|upper|lower|under|center|centre|inner|outer|main|first|second|front|back|body|sleeve|neck|half|arm|button|buttonhole|pocket|crochet|knitted|ribbed|top) )*"
    r"(?:backs?|fronts?|sleeves?|collars?|yokes?|hoods?|pockets?|linings?|pocket (?:linings?|tops?|flaps?)|tops|belts?|neck ?bands?|bands?|borders?|arm(?:hole)? ?bands?|cuffs?|edgings?|"
    r"socks?|stockings?|mittens?|mitts?|gloves?|thumbs?|hats?|caps?|bonnets?|berets?|scar(?:f|ves)|shawls?|bootees?|booties|bootee|slippers?|soles?|insteps?|skirts?|panties|pants|leggings?|legs?|"
    r"vest|sweater|cardigan|jacket|pullover|jumper|coat|dress|blouse|helmet|muffler|wristlets?|blanket|afghan|straps?|gussets?|facings?|crown|brim|ribbing|waistband|peplum|dickey|tie|bow|ties|square|strip|panel|body|stole|cape|turtleneck|polo collar|front bands?|shoulder straps?|toes?|heels?|flap|doll|purse|bag|potholder|face ?cloth|wash ?cloth|edge|insertion|lace)"
)
SECTION = (
    r"(?:(?:to )?(?:shape|divide|turn|make|work|form|for|begin)(?: (?:the|for|left|right|front|back|raglan|armholes?|shoulders?|neck|top|cap|crown|heel|toe|v|of|sleeve|and|instep|gussets?|yoke|opening|thumb|foot)){1,6}|"
    r"(?:left |right |front |back |raglan |v )?(?:armholes?|shoulders?|neck|raglans?|cap|top|heel|toe|foot|leg|cuff|gussets?|crown|instep|sole|heel flap|turn heel|neck ?line|neck shaping|sleeve cap|armhole shaping|yoke|hand|palm|thumb|body|fingers?|decreases?|ribbing|border|hem|top shaping|shaping))"
)
META = {
    "sizes": r"sizes?|measurements?|to fit|sizing|finished (?:size|measurements?)|dimensions|bust|chest",
    "materials": r"materials?(?: required| needed)?|you will need|requirements?|required|needles?|supplies|yarns?|wools?|hooks?|accessories|equipment|notions|buttons",
    "gauge": r"gauges?|tension|stitch gauge|scale|gauge of knitting",
    "legend": r"abbreviations?(?: used)?|abbreviation key|key|terms|explanation of (?:terms|stitches)",
    "note": r"notes?|n\.? ?b|important|blocking|pressing|general directions?|directions|instructions?|before you start|pattern note|special note|to alter|continued.*|washing",
    "finishing": r"finishing|to finish|to make up|making[ -]up|make up|assembling|to complete|to assemble|sewing up|finishing the \w+|completion|joining",
}
CROCHET = r"crochet(?:ed)? (?:border|edging|edge|trim|trimming|finish)|edging|border in crochet"
_RUN_IN = re.compile(
    r"^[ \t]*(?P<h>(?:[A-Z0-9][A-Z0-9'’&/,. ()-]{2,48}?|[A-Z][A-Za-z'’&/ -]{1,38}?)(?:\s*\((?:[^()\n]{1,30})\))?)\s*"
    r"(?P<sep>:\s*[-—–]*|\.?\s?(?:--+|—|–)|\.-|\s-\s|\s?(?:…|\.\.\.)|(?<=[A-Z])-(?=[A-Z][a-z])|\.\s)(?=\s*\S)",
)
_WITHIN = re.compile(
    r"(?<=[.;:)])\s+(?P<h>[A-Z][A-Za-z'’ ]{1,38}?)(?P<sep>\.?\s?(?:--+|—|–)|[.:]\s?-+(?=\s?[A-Za-z])|:\s)(?=\s*\S)"
)
"""Heads further on in a line, as newspapers print them: '… 34 in. Materials.—Five ounces. Back.—Cast on 82 sts.'"""
_BARE = re.compile(
    r"(?<=[.;:)])\s+(?P<h>(?:(?:Left|Right|The) )?(?:Back|Fronts?|Sleeves?|Collar|Neckband|Pockets?|Belt|Yoke|Cuffs?))\s+"
    r"(?=(?:With|Using|Cast|Commence|Begin|Pick|Work as|Work exactly)\b)"
)
"""A piece named without any stop, between a sentence's end and a verb: '… to 1 in. Back With No. 12 needles cast on'."""
_ROWISH = re.compile(r"\b(?:row|rows|rnd|rnds|round|rounds|needle|st|sts|dec|inc|next|repeat|rep)\b", re.I)


@dataclass(frozen=True)
class Head:
    """A head with its kind and the stretch under it."""

    name: str
    kind: str
    span: Span
    body: Span
    make: int = 1


def heads(text: str) -> list[Head]:
    """Return the heads in order; the first, of kind 'title', holds whatever stands before them."""
    found: list[tuple[int, int, str, str]] = []
    offset, blank = 0, True
    for line in text.splitlines(keepends=True):
        hit = _head(line, blank)
        for start, stop, name, kind in ([hit] if hit else []) + _heads_within(line, hit[1] if hit else 0):
            found.append((offset + start, offset + stop, name, kind))
        blank = not line.strip() or line.rstrip().endswith((".", ":"))
        offset += len(line)
    out = [Head("", "title", Span(0, 0), Span(0, found[0][0] if found else len(text)))]
    for number, (start, stop, name, kind) in enumerate(found):
        after = found[number + 1][0] if number + 1 < len(found) else len(text)
        out.append(Head(name, kind, Span(start, stop), Span(stop, after), _make(name)))
    return out


def _make(name: str) -> int:
    match = re.search(r"\(?\b(?:make|knit|work)\s+(\d+|two|both|four)\b|\b(?:both|two) alike|\(two\)|\(2\)", name, re.I)
    if not match:
        return 1
    word = (match.group(1) or "2").lower()
    return {"two": 2, "both": 2, "four": 4}.get(word) or min(20, int(word) if word.isdigit() else 2)


def _head(line: str, blank: bool) -> tuple[int, int, str, str] | None:
    bare = line.strip()
    if not bare or len(bare) < 3:
        return None
    start = len(line) - len(line.lstrip())
    whole = bare.rstrip(".:-—– ")
    if len(whole) <= 60 and re.search(r"[A-Za-z]{2}", whole):
        kind = kind_of(whole)
        alone = _is_capitals(whole) or (
            bare[:1].isupper()
            and kind in ("piece", "finishing", "gauge", "materials", "legend", "crochet", "sizes")
            and blank
        )
        if alone and kind and not re.match(r"^\S+ (?:row|round)s?\b", whole, re.I):
            return start, start + len(bare), whole, kind
    match = _RUN_IN.match(line)
    if match is None:
        return None
    name = match["h"].strip()
    kind = kind_of(name)
    if not kind or (_ROWISH.search(re.sub(r"\(.*?\)", "", name)) and kind not in ("note", "pattern")):
        return None
    capitals = _is_capitals(name)
    if match["sep"].strip() == "." and not (
        capitals or (kind in ("piece", "finishing", "gauge", "materials", "sizes", "legend") and len(name.split()) <= 3)
    ):
        return None
    if not capitals and kind == "other":
        return None
    if kind == "section" and not capitals:
        return None
    return match.start("h"), match.end("sep"), name, kind


def _heads_within(line: str, since: int) -> list[tuple[int, int, str, str]]:
    """Return the heads that stand within a line, after its first words; only those that cannot be anything else."""
    out = []
    for match in _BARE.finditer(line, max(0, since - 1)):
        out.append((match.start("h"), match.end("h"), match["h"], "piece"))
    for match in _WITHIN.finditer(line, max(0, since - 1)):
        name = match["h"].strip()
        kind = kind_of(name)
        sure = kind in ("piece", "finishing", "gauge", "materials", "legend", "sizes")
        if sure and (not match["sep"].startswith(":") or "-" in match["sep"] or _is_capitals(name)):
            out.append((match.start("h"), match.end("sep"), name, kind))
    return sorted(out)


def _is_capitals(name: str) -> bool:
    letters = re.sub(r"\(.*?\)", "", name)
    words = re.findall(r"[A-Za-z]+", letters)
    return bool(words) and letters == letters.upper() and any(len(word) > 1 for word in words)


def kind_of(name: str) -> str:
    """Return what a head is: a meta head, 'piece', 'section', 'pattern', 'crochet', or 'other' for capitals unknown."""
    low = re.sub(r"\(.*?\)", "", name.lower()).strip(" .:-—–")
    low = re.sub(r"^(?:the|a) ", "", low)
    low = re.sub(r"\s+", " ", low)
    garment, _, part = low.rpartition(": ")
    if garment and kind_of(part) == "piece":
        return "piece"
    for kind, pattern in META.items():
        if re.fullmatch(pattern, low):
            return kind
    if re.fullmatch(CROCHET, low):
        return "crochet"
    if re.fullmatch(SECTION, low):
        return "section"
    if re.fullmatch(PIECE + r"(?: (?:and|or|&) " + PIECE + r")?(?:,? make (?:two|2))?", low):
        return "piece"
    if re.search(r"\bpattern\b|\b(?:stitch|st)$|\bcable\b|\bpanel\b|\bmultiple\b", low):
        return "pattern"
    if re.match(r"(?:sizes?|to fit)\b", low):
        return "sizes"
    if re.match(r"(?:materials?|gauge|tension)\b", low):
        return low.split()[0].replace("tension", "gauge").removesuffix("s").replace("material", "materials")
    return "other" if _is_capitals(name) else ""
