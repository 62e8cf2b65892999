"""A text with a proof-reader's marks: parted into blocks, each with the notes that belong beside it.

The text is never altered: the runs of all blocks, put together, are the text as it was given.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from string import ascii_lowercase

from lastlook.finding import Finding, Span
from lastlook.knit import LeafletReading

BLANK_LINES = re.compile(r"\n[ \t]*\n(?:[ \t]*\n)*")


@dataclass(frozen=True)
class Note:
    """One thing in the margin, with the sign that ties it to its words."""

    sign: str
    finding: Finding


@dataclass(frozen=True)
class Run:
    """Words that are marked alike; `ends` are the notes whose words end here."""

    text: str
    notes: tuple[Note, ...] = ()
    ends: tuple[Note, ...] = ()
    is_puzzle: bool = False
    """Whether the reader did not understand them."""


@dataclass(frozen=True)
class Block:
    """A paragraph as it stands, and what is pencilled beside it."""

    runs: tuple[Run, ...]
    notes: tuple[Note, ...]


@dataclass(frozen=True)
class Proof:
    """A whole text, and the notes that speak of all of it."""

    blocks: tuple[Block, ...]
    general: tuple[Note, ...]


def proof_of(reading: LeafletReading, findings: Sequence[Finding]) -> Proof:
    """Return a leaflet's text with its marks; notes are signed in the order of their words."""
    placed = sorted((one for one in findings if one.where.span), key=_start)
    loose = [one for one in findings if not one.where.span]
    notes = [Note(_sign(number), one) for number, one in enumerate([*placed, *loose])]
    text = reading.source.text
    blocks = tuple(_block(text, span, notes[: len(placed)], reading.not_understood) for span in _spans(text))
    return Proof(blocks, tuple(notes[len(placed) :]))


def _start(finding: Finding) -> int:
    return finding.where.span.start if finding.where.span else 0


def _sign(number: int) -> str:
    """Return a, b, … z, aa, ab, …"""
    turn, letter = divmod(number, 26)
    return (ascii_lowercase[turn - 1] if turn else "") + ascii_lowercase[letter]


def _spans(text: str) -> list[Span]:
    """Part a text at its blank lines, which stay at the end of the block before."""
    ends = [match.end() for match in BLANK_LINES.finditer(text)]
    return [Span(a, b) for a, b in zip([0, *ends], [*ends, len(text)], strict=True) if a < b]


def _block(text: str, block: Span, notes: list[Note], puzzles: Iterable[Span]) -> Block:
    mine = tuple(note for note in notes if block.start <= _start(note.finding) < block.end)
    dark = tuple(span for span in puzzles if span.start < block.end and span.end > block.start)
    cuts = {block.start, block.end}
    for span in [*(span for note in notes if (span := note.finding.where.span)), *dark]:
        cuts |= {spot for spot in (span.start, span.end) if block.start < spot < block.end}
    edges = sorted(cuts)
    return Block(tuple(_run(text, Span(a, b), notes, dark) for a, b in pairwise(edges)), mine)


def _run(text: str, span: Span, notes: list[Note], dark: tuple[Span, ...]) -> Run:
    over = tuple(note for note in notes if note.finding.where.span and _covers(note.finding.where.span, span))
    ends = tuple(note for note in over if note.finding.where.span and note.finding.where.span.end == span.end)
    return Run(text[span.start : span.end], over, ends, any(_covers(one, span) for one in dark))


def _covers(outer: Span, inner: Span) -> bool:
    return outer.start <= inner.start and inner.end <= outer.end and outer.start < outer.end
