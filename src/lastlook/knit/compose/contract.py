"""A composed garment as JSON: the vocabulary of a reading, with what it measures and what it resorted to."""

from __future__ import annotations

from typing import Any

from lastlook.finding import SourceText
from lastlook.knit.compose.composed import Composed
from lastlook.knit.contract import as_json as reading_as_json
from lastlook.knit.reading import ADDS_UP, DOES_NOT, LeafletReading, SizeReading
from lastlook.piece import Meets
from lastlook.quantity import Gauge


def as_json(made: Composed, gauge: Gauge | None) -> dict[str, Any]:
    """Return the garment as plain values."""
    source = SourceText(made.leaflet)
    meets = all(seam.meets is not Meets.NO for seam in made.seams)
    size = SizeReading(made.size, ADDS_UP if meets else DOES_NOT, made.pieces, made.seams)
    by_size = {made.size: size} if made.pieces else {}
    phrases = sum(1 for line in made.leaflet.splitlines() if line.strip())
    reading = LeafletReading(source, made.title, (made.size,), gauge, phrases, phrases, (), by_size, made.findings)
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
