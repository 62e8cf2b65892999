"""Corrections that the maker accepted: laid over a copy of the text, while every span still means the printed one.

A correction's key is the piece and the printed phrase, 'sleeve: until there are 82 [86, 88] sts.'; its value replaces
the phrase.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from lastlook.finding import Finding, Span
from lastlook.knit.reading import LeafletReading, SizeReading
from lastlook.knit.worked import WorkedPiece


@dataclass(frozen=True)
class Corrected:
    """The text as it is read, and how its offsets go back to the printed one."""

    text: str
    cuts: tuple[tuple[int, int, int], ...] = ()
    """Where a changed stretch ends in the new text, where in the printed one, and how long the new one is."""

    def span(self, span: Span) -> Span:
        """Return the printed span of a span of the corrected text."""
        return Span(self._at(span.start), self._at(span.end)) if self.cuts else span

    def _at(self, offset: int) -> int:
        spot = bisect_right(self.cuts, (offset, -1, -1))
        start, printed = 0, 0
        if spot:
            start, printed, _ = self.cuts[spot - 1]
        if spot < len(self.cuts):
            end, after, length = self.cuts[spot]
            if offset > end - length:
                return min(after, printed + offset - start)
        return printed + offset - start

    def back(self, reading: LeafletReading) -> LeafletReading:
        """Return a reading whose spans all mean the printed text."""
        if not self.cuts:
            return reading
        sizes = {name: self._size(one) for name, one in reading.by_size.items()}
        findings = tuple(self._finding(one) for one in reading.findings)
        spans = tuple(self.span(one) for one in reading.not_understood)
        return replace(reading, by_size=sizes, findings=findings, not_understood=spans)

    def _size(self, one: SizeReading) -> SizeReading:
        return replace(one, pieces=tuple(self._piece(piece) for piece in one.pieces))

    def _piece(self, piece: WorkedPiece) -> WorkedPiece:
        rows = tuple(replace(row, span=self.span(row.span)) for row in piece.rows)
        stated = tuple(replace(one, span=self.span(one.span)) for one in piece.stated)
        return replace(piece, rows=rows, stated=stated)

    def _finding(self, one: Finding) -> Finding:
        span = one.where.span
        return replace(one, where=replace(one.where, span=self.span(span))) if span else one


def locate(text: str, key: str) -> Span | None:
    """Return where the phrase of a key stands: after the head of its piece where there is one."""
    piece, _, phrase = key.partition(": ")
    words = phrase.split()
    if not words:
        return None
    pattern = re.compile(r"\s+".join(re.escape(word) for word in words))
    start = 0
    head = re.search(rf"(?im)^[ \t]*(?:the )?{re.escape(piece)}", text)
    if head:
        start = head.start()
    match = pattern.search(text, start) or pattern.search(text)
    return Span(match.start(), match.end()) if match else None


def corrected(text: str, corrections: Mapping[str, str]) -> Corrected:
    """Return the text with corrections laid over it; one whose phrase is not found changes nothing."""
    found = [(locate(text, key), value) for key, value in corrections.items()]
    return exchanged(text, [((span.start, span.end), value) for span, value in found if span is not None])


def exchanged(text: str, spots: Iterable[tuple[tuple[int, int], str]]) -> Corrected:
    """Return the text with stretches of it exchanged; of two that overlap the first stands."""
    out, at, cuts = [], 0, []
    length = 0
    for (start, end), value in sorted(spots, key=lambda pair: pair[0][0]):
        if start < at:
            continue
        out += [text[at:start], value]
        length += start - at + len(value)
        at = end
        cuts.append((length, end, len(value)))
    return Corrected("".join([*out, text[at:]]), tuple(cuts)) if cuts else Corrected(text)
