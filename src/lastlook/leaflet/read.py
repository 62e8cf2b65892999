"""From text to a leaflet: layout, then canonical words, then the grammar. Nothing typed here raises."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.finding import SourceText, Span
from lastlook.leaflet import header, size_names
from lastlook.leaflet.crochet_terms import american
from lastlook.leaflet.instruction import Nothing, Step
from lastlook.leaflet.layout import Head, heads
from lastlook.leaflet.leaflet import Leaflet, Part
from lastlook.leaflet.parse import steps
from lastlook.leaflet.trade.canon import canon
from lastlook.leaflet.trade.tokens import Sort, tokens
from lastlook.leaflet.trade.vocabulary import Vocabulary, vocabulary
from lastlook.quantity import Origin, gauge_of

MET = frozenset({"sizes", "materials", "gauge", "legend", "title", "note", "other"})
CAST_ON = re.compile(
    r"\b(?:cast|set)(?:ing)?\s+(?:on|up)\b|\bpick(?:ed)? up and k|\b(?:cast|knit|set)\s+(?:loosely\s+)?(?:on\s+)?[\w-]+(?:\s+[\w-]+)?\s+(?:sts?\b\.?|stitches)\s+(?:loosely\s+)?on(?:to)?\b",
    re.I,
)


def read(text: str, *, corrections: dict[str, str] | None = None) -> Leaflet:
    """Read a leaflet; whatever is not understood stays in place as `Unread`."""
    found = _settled(text, heads(text))
    words = vocabulary()
    own = header.own_words(text, found, words)
    if own:
        words = words.with_own(own)
    names = size_names.sizes(text, found, words)
    printed = header.gauge(text, found, words)
    measure = gauge_of(printed[0], printed[1], Origin.PRINTED) if printed else None
    parts = [part for head in _split(text, found) for part in _part(text, head, words, len(names))]
    multiples = tuple(
        (head.name, int(match.group(1)), int(match.group(2) or 0))
        for head in found
        for match in [re.search(r"(?i)multiple of (\d+)(?:\s*sts?\.?)?(?:\s*(?:plus|and|\+)\s*(\d+))?", text[head.span.start : head.body.end][:400])]
        if match
    )  # fmt: skip
    return Leaflet(
        SourceText(text),
        header.title(text, found),
        names,
        measure,
        header.buttons(text, found),
        tuple(parts),
        multiples,
    )


def _settled(text: str, found: list[Head]) -> list[Head]:
    """A head that names nothing known, once the knitting has begun, is a part of the piece: 'DIVIDE FOR FRONTS AND BACK'."""
    first = CAST_ON.search(text)
    begun = first.start() if first else len(text)
    out = []
    for head in found:
        near = text[head.body.start : head.body.start + 130]
        starts = re.search(r"(?i)\bcast(?:ing)? on\b(?!.{0,24}(?:underarm|thumb|over))", near, re.S)
        divides = head.name.lower().startswith("divide")
        starts_here = starts is not None and starts.start() < 90 and not divides
        if head.kind == "other" and head.span.start > begun and not starts_here:
            head = Head(head.name, "section", head.span, head.body, head.make)
        out.append(head)
    return out


def _split(text: str, found: list[Head]) -> list[Head]:
    """Cut instructions that follow a meta stretch without a head of their own from it, at a paragraph or sentence."""
    out: list[Head] = []
    for head in found:
        cast = CAST_ON.search(text, head.body.start, head.body.end)
        if cast is not None and head.kind not in MET and _lists_goods(text, head, cast.start()):
            cut = _cut(text, head.body.start, cast.start())
            out.append(Head(head.name, "materials", head.span, Span(head.body.start, cut), head.make))
            out.append(Head(head.name, head.kind, Span(cut, cut), Span(cut, head.body.end), head.make))
            continue
        if cast is None or head.kind not in MET:
            out.append(head)
            continue
        cut = _cut(text, head.body.start, cast.start())
        out.append(Head(head.name, head.kind, head.span, Span(head.body.start, cut), head.make))
        kind = "piece" if head.kind in MET else head.kind
        name = head.name if head.kind == "other" else ""
        out.append(Head(name, kind, Span(cut, cut), Span(cut, head.body.end)))
    return out


GOODS = re.compile(
    r"(?i)\b(?:needles?|pins|wool|yarn|worsted|ozs?|ounces?|gauge|tension|abbreviations?|skeins?|balls)\b"
)
ROWS_TOLD = re.compile(r"(?i)\b(?:\d+(?:st|nd|rd|d|th)|first)\s+(?:row|round|rnd)|\b(?:row|round|rnd)\s+\d")


def _lists_goods(text: str, head: Head, cast: int) -> bool:
    """Whether what stands between the title and the first casting on is a list of wools and needles, not knitting."""
    before = text[head.body.start : cast]
    line = text.rfind("\n", head.body.start, cast)
    first = CAST_ON.search(text)
    begins = first is not None and first.start() == cast and line >= 0
    return begins and bool(GOODS.search(text[head.body.start : line])) and not ROWS_TOLD.search(before)


def _cut(text: str, start: int, cast: int) -> int:
    paragraph = text.rfind("\n\n", start, cast)
    if paragraph >= 0:
        start = paragraph + 2
    stop = max((match.end() for match in re.finditer(r"[.:;]\s+(?=[A-Z])", text[start:cast])), default=-1)
    line = text.rfind("\n", start, cast)
    if paragraph >= 0:
        return start + max(stop, 0)
    return start + stop if stop >= 0 else (line + 1 if line >= 0 else start)


def _is_crochet(text: str) -> bool:
    """Whether a stretch is told in crochet: its stitches, and nothing that only needles do."""
    hooked = len(re.findall(r"(?i)\b(?:s\.? ?c|d\.? ?c|ch|sl st in|shells?)\b", text))
    return hooked > 3 and not re.search(r"(?i)\b(?:cast (?:on|off)|bind off|pick up and k|needles?|p \d|purl)\b", text)


def _part(text: str, head: Head, words: Vocabulary, sizes: int) -> list[Part]:
    if head.kind in MET:
        return []
    if head.kind in ("section", "piece", "other", "finishing") and _is_crochet(text[head.body.start : head.body.end]):
        head = Head(head.name, "crochet", head.span, head.body, head.make)
    if head.kind == "crochet":
        text = american(text, head.body)
    body = canon(text, head.body.start, head.body.end, words, sizes)
    kind = "border" if head.kind == "crochet" else ""
    found = _passages(text, steps(body, kind), words, sizes)
    return [Part(head.name, head.kind, head.span, tuple(found), head.make, head.body)]


PASSAGE = re.compile(r"(?<!\*)\*\*(?!\*)(?P<body>.{10,2000}?)(?<!\*)\*\*(?!\*)", re.S)


def _passages(text: str, found: list[Step], words: Vocabulary, sizes: int) -> list[Step]:
    """Put the steps of the passage between two double stars wherever the leaflet sends back to it."""
    sent = [step for step in found if isinstance(step, Nothing) and step.why == "passage"]
    passage = PASSAGE.search(text) if sent else None
    if passage is None:
        return found
    again = steps(canon(text, passage.start("body"), passage.end("body"), words, sizes))
    out: list[Step] = []
    for step in found:
        out.append(step)
        if step in sent and step.span.start > passage.end():
            told = canon(text, step.span.start, step.span.end, words, sizes).text
            times = re.search(r"<(\d+)> x", told)
            out += again * (min(40, int(times.group(1))) if times else 1)
    return out


def reread(leaflet: Leaflet, text: str, number: int) -> Leaflet:
    """Return the leaflet with one stretch read again from a text of the same length elsewhere."""
    part = leaflet.parts[number]
    words = vocabulary()
    own = header.own_words(text, heads(text), words) if "bbreviation" in text[:6000].lower() else {}
    words = words.with_own(own) if own else words
    head = Head(part.name, part.kind, part.span, part.body, part.make)
    fresh = _part(text, head, words, len(leaflet.sizes))
    parts = (*leaflet.parts[:number], *fresh, *leaflet.parts[number + 1 :])
    return replace(leaflet, source=SourceText(text), parts=parts)


def numbers(text: str, span: Span, sizes: int) -> list[tuple[Span, ...]]:
    """Return the figures of a stretch: for each the places of its values, one or one for each size."""
    lexemes = canon(text, span.start, span.end, vocabulary(), sizes).lexemes
    out = []
    for one in lexemes:
        if one.canon.startswith("<"):
            spots = [
                Span(token.start, token.end)
                for token in tokens(text, one.start, one.end)
                if token.sort in (Sort.NUMBER, Sort.ORDINAL)
            ]
            if spots:
                out.append(tuple(spots))
    return out
