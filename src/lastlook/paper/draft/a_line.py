"""The A-line skirt: fitted to the hip, flared evenly from there to the hem.

The side runs straight from hip to hem and as long as the centre does, so that the hem is level; without a wanted
hem each of the four side edges flares by 6 cm (5-7 cm on a skirt to the knee: common practice, no source).
"""

from __future__ import annotations

from collections.abc import Mapping

from lastlook.paper.draft.ask import read_ask
from lastlook.paper.draft.fitted import fitted
from lastlook.paper.drafted import Drafted

EASE_HIP_MM = 63.5
"""2.5-4 in on an A-line, which falls free below the hip (from memory)."""
FLARE_EDGE_MM = 60.0


def a_line(measures: Mapping[str, float], options: Mapping[str, float]) -> Drafted:
    """Return the pieces of an A-line skirt."""
    ask = read_ask("a-line", measures, {"ease_hip_mm": EASE_HIP_MM, **options})
    if isinstance(ask, tuple):
        return Drafted("a-line", (), measures=measures, options=options, findings=ask)
    return fitted(ask, ask.options.get("hem_mm", ask.around_hip_mm + 4 * FLARE_EDGE_MM))
