"""What the maker asks for: the garment in words, whose shape is then drawn from her measures.

Lengths that she names herself go before those of the rules.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from lastlook.knit.compose.craft.buttons import Buttons
from lastlook.knit.compose.craft.evenly import even, to_repeat
from lastlook.knit.compose.craft.texture import Texture
from lastlook.knit.compose.ease import EASE, EaseClass
from lastlook.quantity import Gauge, Unread

HEM_MM = 25.0
"""Depth of a turned hem: common practice, no source."""
BAND_MM = 25.0
"""Width of a front band: common practice, no source."""


@dataclass(frozen=True)
class Edging:
    """How the lower edges begin: the structure, and the count it works over."""

    structure: str
    repeat: int
    extra: int
    words: str


RIB = Edging("rib 1x1", 2, 0, "in ribbing of k 1, p 1")
EDGINGS = {
    "rib": RIB,
    "garter": Edging("garter", 2, 0, "in garter st (k each row)"),
    "hem": Edging("hem", 1, 0, "in stockinette st, folded at a turning ridge"),
}


def edging_of(word: str) -> Edging | Unread:
    """Return the edging of a name: rib, garter, hem, or a rib of so many knit and purl stitches like 2x2.

    >>> edging_of("3x2").words
    'in ribbing of k 3, p 2'
    """
    plain = word.strip().lower().replace("rib ", "")
    if plain in EDGINGS:
        return EDGINGS[plain]
    match = re.fullmatch(r"([1-9]\d{0,2})\s*x\s*([1-9]\d{0,2})", plain)
    if match is None:
        return Unread(word, f"“{word}” is no edging.", "Use rib, garter, hem, or a rib like 2x2.")
    knit, purl = int(match.group(1)), int(match.group(2))
    if (knit, purl) == (1, 1):
        return RIB
    return Edging(f"rib {knit}x{purl}", knit + purl, knit, f"in ribbing of k {knit}, p {purl}")


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
    edging: Edging = RIB
    ease: EaseClass = EASE["standard"]
    lengths_mm: Mapping[str, float] = field(default_factory=dict)
    """'body' hem to underarm, 'sleeve' cuff to underarm, 'armhole', 'below waist', as the maker wants them."""

    construction: str = "in pieces"
    """For a raglan: 'in pieces', 'neck down' or 'hem up', both in one piece."""

    crochet_per_10cm: float | None = None
    """Single crochet in 10 cm of a strip; a border is crocheted where it is given."""
    buttons: Buttons | None = None
    """The buttons at hand."""
    texture: Texture | None = None
    """A stitch pattern for all pieces; `gauge` is then its own."""
    band_gauge: Gauge | None = None
    """The gauge of bands where it is not the fabric's."""

    @property
    def facing_rows(self) -> int:
        """Return the rows of a turned hem that lie behind it; none for another edging."""
        return max(4, even(HEM_MM * self.rows_per_mm)) if self.edging.structure == "hem" else 0

    @property
    def band_stitches_per_mm(self) -> float:
        """Return the stitch gauge of bands."""
        return (self.band_gauge or self.gauge).stitches.best / 100.0

    def fabric_count(self, target: float) -> int:
        """Return the count of a piece nearest to a target: even, or whole repeats and their edge stitches."""
        if self.texture is None:
            return even(target)
        return to_repeat(target, self.texture.multiple, self.texture.extra + 2)

    def edge_count(self, target: float) -> int:
        """Return the count of a lower edge: what its edging takes, or under a texture what the texture does."""
        if self.texture is not None:
            return self.fabric_count(target)
        return to_repeat(target, self.edging.repeat, self.edging.extra)

    @property
    def step(self) -> int:
        """Return by how many stitches a lower edge may grow at a time."""
        return self.texture.multiple if self.texture else self.edging.repeat

    @property
    def band_mm(self) -> float:
        """Return how wide a front band is: the usual, or what the buttons at hand want."""
        return max(BAND_MM, self.buttons.band_mm if self.buttons else 0.0)

    @property
    def seam_stitches(self) -> int:
        """Return the stitches that each sewn edge takes: one (common practice, no source), none without seams."""
        return 1 if self.construction == "in pieces" else 0

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
