"""The last look at a composed page: the reader reads it as a stranger would, and what does not add up is said."""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Certainty, Finding
from lastlook.knit.compose.composed import Composed
from lastlook.knit.read import read
from lastlook.knit.reading import ADDS_UP


def proven(made: Composed) -> Composed:
    """Return the garment, with a finding where its own page does not read as adding up."""
    if not made.leaflet:
        return made
    reading = read(made.leaflet)
    verdicts = [size.verdict for size in reading.by_size.values()]
    if verdicts and all(verdict == ADDS_UP for verdict in verdicts):
        return made
    first = next((one.say for one in reading.findings if one.certainty is not Certainty.NOTE), "No piece was found.")
    doubt = Finding(
        "page-unproven",
        Certainty.DOUBTFUL,
        "The page as written was read again and is not proven to add up.",
        first,
        "Compare the row it names with the rows round it before you knit it.",
    )
    return replace(made, findings=(*made.findings, doubt))
