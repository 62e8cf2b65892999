"""The smallest place that a finding speaks of: words of a text, a piece, a row, an edge, or a fact of the outfit."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding.text import Span


@dataclass(frozen=True)
class Where:
    """A place; whatever does not apply is None."""

    span: Span | None = None
    piece: str | None = None
    row: int | None = None
    edge: str | None = None
    fact: str | None = None
    """Dotted path of a fact in the outfit's document, such as 'wearer.measures.bust_girth'."""


NOWHERE = Where()
