"""From the text of a leaflet to worked pieces with their proofs: the one way in."""

from __future__ import annotations

from collections.abc import Mapping

from lastlook.finding import SourceText
from lastlook.knit.reading import LeafletReading
from lastlook.quantity import Gauge


def read(
    text: str,
    *,
    size: str | None = None,
    gauge: Gauge | None = None,
    choices: Mapping[str, int] | None = None,
    corrections: Mapping[str, str] | None = None,
) -> LeafletReading:
    """Read a leaflet, work it in every size (or the one asked for) and prove it.

    `gauge` is the wearer's own, `choices` the readings she chose, `corrections` those that she accepted.
    """
    return LeafletReading(SourceText(text), None, (), None, 0, 0, (), {}, ())
