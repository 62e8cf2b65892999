"""What a leaflet comes to: its sizes, its gauge, and every piece worked in every size.

A *verdict* is one of 'adds up', 'does not add up', 'needs an answer' and 'not known yet'. Spans always
refer to the text as it was given; nothing here alters it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lastlook.finding import Finding, SourceText, Span
from lastlook.knit.worked import WorkedPiece
from lastlook.piece import Seam
from lastlook.quantity import Gauge

ADDS_UP = "adds up"
DOES_NOT = "does not add up"
NEEDS_ANSWER = "needs an answer"
NOT_KNOWN = "not known yet"


@dataclass(frozen=True)
class SizeReading:
    """The leaflet worked in one size."""

    size: str
    verdict: str
    pieces: tuple[WorkedPiece, ...]
    seams: tuple[Seam, ...]

    def piece(self, name: str) -> WorkedPiece | None:
        """Return the piece of that name, None where there is none."""
        return next((piece for piece in self.pieces if piece.name == name), None)


@dataclass(frozen=True)
class LeafletReading:
    """A leaflet read, worked in every size, and proven."""

    source: SourceText
    title: str | None
    sizes: tuple[str, ...]
    gauge: Gauge | None
    """As printed; None where the leaflet names none."""
    phrases: int
    understood: int
    not_understood: tuple[Span, ...]
    by_size: Mapping[str, SizeReading]
    findings: tuple[Finding, ...]
