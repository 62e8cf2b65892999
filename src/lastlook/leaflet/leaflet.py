"""A leaflet as a value: what stands before the pieces, and the stretches of instructions in order."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import SourceText, Span
from lastlook.leaflet.instruction import UNKNOWN, Step
from lastlook.quantity import Gauge


@dataclass(frozen=True)
class Part:
    """A stretch of instructions under one head."""

    name: str
    kind: str
    """'piece', 'section', 'pattern', 'crochet', 'finishing' or 'other'."""
    span: Span
    steps: tuple[Step, ...]
    make: int = 1
    body: Span = UNKNOWN
    """The stretch of the text that the steps were read from."""


@dataclass(frozen=True)
class Leaflet:
    """What was read; every step knows its words."""

    source: SourceText
    title: str | None
    sizes: tuple[str, ...]
    gauge: Gauge | None
    buttons: int | None
    parts: tuple[Part, ...]
    multiples: tuple[tuple[str, int, int], ...] = ()
    """Patterns by name with the multiple and the stitches over that they are worked on."""
