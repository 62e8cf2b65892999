"""What stands before the pieces: title, sizes, gauge, buttons, the leaflet's own abbreviations."""

from __future__ import annotations

import re

from lastlook.leaflet.layout import Head
from lastlook.leaflet.trade.canon import canon
from lastlook.leaflet.trade.sizelist import read_values
from lastlook.leaflet.trade.vocabulary import Vocabulary


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
        body = re.split(r"\n\s*\n|(?i:\bcast(?:ing)? on\b)", text[head.body.start : head.body.end].strip())[0]
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
