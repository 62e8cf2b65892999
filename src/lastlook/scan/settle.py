"""Doubtful figures put to the proof of the counts: which of them, read otherwise, would make the leaflet add up.

Nothing is changed here. A leaflet that adds up as it was read is left alone; where it does not, each rival of each
doubtful figure is tried by itself, and those that settle the matter are told.
"""

from __future__ import annotations

import itertools
import time
from collections.abc import Sequence
from dataclasses import dataclass

from lastlook import knit
from lastlook.finding import Certainty, Finding, SourceText, Where
from lastlook.scan.scanned import Doubtful, Scanned

MOST_TRIED = 24
"""Readings of the whole leaflet that the proof may take; one takes some tenths of a second."""
MOST_SECONDS = 10.0
"""What is not tried by then is left to `lastlook read`."""
DOES_NOT = "does not add up"


@dataclass(frozen=True)
class Settled:
    """A doubtful figure, and the reading of it with which the leaflet adds up."""

    doubtful: Doubtful
    figure: str


def settle(scanned: Scanned) -> tuple[Finding, ...]:
    """Return what the proof of the counts says of the doubtful figures."""
    if not scanned.doubtful or not _troubles(scanned.text):
        return ()
    end = time.monotonic() + MOST_SECONDS
    tries = itertools.takewhile(lambda _: time.monotonic() < end, _tries(scanned.doubtful))
    found = [one for one in tries if not _troubles(_with(scanned.text, one))]
    source = SourceText(scanned.text)
    return tuple(_misread(one, source, scanned, len(found)) for one in found)


def _tries(doubts: Sequence[Doubtful]) -> list[Settled]:
    least_sure = sorted(doubts, key=lambda one: one.certainty)
    return [Settled(one, figure) for one in least_sure for figure in one.rivals][:MOST_TRIED]


def _with(text: str, one: Settled) -> str:
    span = one.doubtful.span
    return text[: span.start] + one.figure + text[span.end :]


def _troubles(text: str) -> int:
    """Return in how many sizes the text does not add up."""
    return sum(size.verdict == DOES_NOT for size in knit.read(text).by_size.values())


def _misread(one: Settled, source: SourceText, scanned: Scanned, ways: int) -> Finding:
    line, _ = source.line_and_column(one.doubtful.span.start)
    page = scanned.words[one.doubtful.word].page + 1
    alone = "no other doubtful figure does that" if ways == 1 else f"{ways} readings of doubtful figures do that"
    return Finding(
        "figure-misread",
        Certainty.DOUBTFUL,
        f"Line {line}, page {page}: with {one.figure} for {one.doubtful.read} the leaflet adds up.",
        f"As it was read it does not; {alone}.",
        f"Look at the picture of the {one.doubtful.read}; if it may be {one.figure}, type {one.figure}.",
        checked=True,
        asks=True,
        where=Where(span=one.doubtful.span),
        readings=(one.doubtful.read, one.figure),
    )
