"""The straight skirt: two pieces, darts front and back, the side straight from hip to hem.

WikiEducator, Handout for drafting skirt block (read): half pattern H/2 + 2.5 cm, back 0.75 cm wider than its half,
darts of 2 cm, 10 cm long in front and 12 cm behind, the side raised 1 cm.
"""

from __future__ import annotations

from collections.abc import Mapping

from lastlook.paper.draft.ask import read_ask
from lastlook.paper.draft.fitted import fitted
from lastlook.paper.drafted import Drafted


def straight(measures: Mapping[str, float], options: Mapping[str, float]) -> Drafted:
    """Return the pieces of a straight skirt; a hem of its own makes it taper or flare."""
    ask = read_ask("straight", measures, options)
    if isinstance(ask, tuple):
        return Drafted("straight", (), measures=measures, options=options, findings=ask)
    return fitted(ask, ask.options.get("hem_mm", ask.around_hip_mm))
