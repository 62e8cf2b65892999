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


def onwards(knitting: Knitting) -> str:
    """Return the sentence that leaves an edging for the fabric above it."""
    how = " (k each round)" if knitting.needle.side is Side.ROUND else ""
    return f"Change to larger needles. Work in stockinette st{how} as follows:"


def edged(knitting: Knitting, asked: Asked, rows: int) -> str:
    """Work the edging that a piece begins with, and return the sentences for it."""
    in_rounds, total = knitting.needle.side is Side.ROUND, asked.facing_rows + rows
    knitting.edging(asked.edging.structure, total)
    if asked.facing_rows and in_rounds:
        return f"Knit {total - 2} rounds. Purl 1 round for turning ridge. Knit 1 round."
    told = edging_words(asked.edging.structure, total)
    return told.replace(" rows.", " rounds.") if in_rounds else told


def ended(knitting: Knitting, asked: Asked, rows: int) -> str:
    """Work the edging that a piece ends with, and return the sentences for it."""
    if not asked.facing_rows:
        return f"{edged(knitting, asked, rows)} {off_in(asked)}"
    in_rounds, total = knitting.needle.side is Side.ROUND, asked.facing_rows + rows
    knitting.edging(asked.edging.structure, total)
    if in_rounds:
        return f"Purl 1 round for turning ridge. Knit {total - 1} rounds. {off_in(asked)}"
    fold = "P 1 row on right side for turning ridge. P 1 row."
    return f"{fold} Work in stockinette st for {total - 2} rows. {off_in(asked)}"


def off_in(asked: Asked) -> str:
    """Return how an edging is bound off."""
    return "Bind off loosely in ribbing." if asked.edging.structure.startswith("rib") else "Bind off loosely."
