"""What the maker asks for: the garment in words, whose shape is then drawn from her measures.

Lengths that she names herself go before those of the rules.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from lastlook.knit.compose.ease import EASE, EaseClass
from lastlook.quantity import Gauge

RIB = "rib 1x1"
WIDE_RIB = "rib 2x2"
GARTER = "garter"


@dataclass(frozen=True)
class Edging:
    """How the lower edges begin: the structure, and the count it works over."""

    structure: str
    repeat: int
    extra: int
    words: str


EDGINGS = {
    "rib": Edging(RIB, 2, 0, "ribbing of k 1, p 1"),
    "wide rib": Edging(WIDE_RIB, 4, 2, "ribbing of k 2, p 2"),
    "garter": Edging(GARTER, 2, 0, "garter st"),
}


@dataclass(frozen=True)
class Asked:
    """A garment in words."""

    gauge: Gauge
    opening: str = "pullover"
    """'pullover' or 'cardigan'."""
    neck: str = "round"
    """'round' or 'v'."""
    sleeve: str = "long"
    """'long', 'three-quarter', 'short' or 'none'."""
    edging: str = "rib"
    ease: EaseClass = EASE["standard"]
    lengths_mm: Mapping[str, float] = field(default_factory=dict)
    """'body' hem to underarm, 'sleeve' cuff to underarm, 'armhole', 'below waist', as the maker wants them."""

    @property
    def stitches_per_mm(self) -> float:
        """Return the stitch gauge."""
        return self.gauge.stitches.best / 100.0

    @property
    def rows_per_mm(self) -> float:
        """Return the row gauge; a gauge without rows never gets here."""
        rows = self.gauge.rows_for(1.0)
        if not isinstance(rows, float):
            raise TypeError("a garment is composed only where the row gauge is known")
        return rows
