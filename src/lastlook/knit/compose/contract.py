"""A composed garment as JSON: the vocabulary of a reading, with what it measures and what it resorted to.

The verdict and the phrases are those of its own page, read as a stranger reads it.
"""

from __future__ import annotations

from typing import Any

from lastlook.finding import SourceText
from lastlook.knit.compose.composed import Composed
from lastlook.knit.contract import as_json as reading_as_json
from lastlook.knit.read import read
from lastlook.knit.reading import ADDS_UP, DOES_NOT, LeafletReading, SizeReading
from lastlook.piece import Meets
from lastlook.quantity import Gauge


def as_json(made: Composed, gauge: Gauge | None) -> dict[str, Any]:
    """Return the garment as plain values."""
    source = SourceText(made.leaflet)
    page = read(made.leaflet)
    meets = all(seam.meets is not Meets.NO for seam in made.seams)
    verdicts = {one.verdict for one in page.by_size.values()} or {ADDS_UP}
    verdict = next(iter(verdicts)) if meets and len(verdicts) == 1 else DOES_NOT
    by_size = {made.size: SizeReading(made.size, verdict, made.pieces, made.seams)} if made.pieces else {}
    read_as = (page.phrases, page.understood, page.not_understood)
    reading = LeafletReading(source, made.title, (made.size,), gauge, *read_as, by_size, made.findings)
    return reading_as_json(reading) | {
        "measures": [
            {
                "name": one.name,
                "target_mm": round(one.target_mm, 1),
                "gets_mm": round(one.gets_mm, 1),
                "plus_minus_mm": round(one.plus_minus_mm, 1),
            }
            for one in made.measures
        ],
        "rungs": list(made.rungs),
        "notes": list(made.notes),
        "leaflet": made.leaflet,
    }
