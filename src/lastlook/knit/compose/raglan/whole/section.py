"""A part of the page: its heading, its lines, and the piece they make."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.write import edging_words
from lastlook.knit.compose.raglan.whole.knitting import Knitting
from lastlook.knit.worked import Side, WorkedPiece


@dataclass(frozen=True)
class Section:
    """A heading with what is worked under it."""

    heading: str
    lines: tuple[str, ...]
    piece: WorkedPiece


def edged(knitting: Knitting, asked: Asked, rows: int) -> str:
    """Work an edging and return the sentence for it."""
    in_rounds = knitting.needle.side is Side.ROUND
    knitting.edging(asked.edging.structure, rows)
    told = edging_words(asked.edging.structure, rows)
    return told.replace(" rows.", " rounds.") if in_rounds else told


def off_in(asked: Asked) -> str:
    """Return how an edging is bound off."""
    return "Bind off loosely in ribbing." if asked.edging.structure.startswith("rib") else "Bind off loosely."
