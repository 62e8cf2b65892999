"""How much longer an edge may be than the edge it is eased onto.

A *share* is of the shorter edge. A test strip of the real cloth outranks every prior by fibre.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.quantity import Origin

KEPT_FLAT_MM = 20.0
"""Nothing is eased within 2 cm of a seam, at centre front, or at the closure (common practice, no source)."""

PRIORS = {
    "soft wool": 0.06, "wool": 0.04, "silk crepe": 0.04, "rayon": 0.04, "cotton": 0.03, "linen": 0.03,
    "polyester": 0.01, "glazed": 0.01,
}  # fmt: skip
"""Least share of each fibre's range: soft wool crepe, flannel, tweed 6-8 %; other wool, silk crepe, rayon 4-6 %;
cotton, linen 3-4 %; polyester, tightly woven or glazed 1-2 % (from memory of textbooks, low confidence)."""

CALLED = {
    "soft wool": ("soft wool", "flannel", "tweed", "wool crepe", "homespun"),
    "wool": ("wool", "worsted", "serge", "gabardine", "woollen", "woolen", "tartan"),
    "silk crepe": ("silk crepe", "crepe de chine", "crepe"),
    "rayon": ("rayon", "viscose", "artificial silk"),
    "cotton": ("cotton", "calico", "muslin", "denim", "poplin", "lawn", "gingham", "corduroy", "twill", "velveteen"),
    "linen": ("linen", "hemp", "ramie"),
    "polyester": ("polyester",),
    "glazed": ("glazed", "chintz"),
    "": ("silk", "velvet", "acetate", "acrylic", "nylon", "lace", "jersey", "blend", "mixture"),
}
"""What each is called, and cloths of which no easing is told."""


@dataclass(frozen=True)
class Easing:
    """What a cloth lets itself be eased, and where that figure came from."""

    share: float
    origin: Origin
    of: str = ""

    def is_known(self) -> bool:
        """Whether a test strip of the real cloth showed it."""
        return self.origin is Origin.MEASURED


UNKNOWN = Easing(0.0, Origin.ASSUMED)
"""No test strip and no fibre: nothing is counted on."""


def easing_of(fibre: str) -> Easing:
    """Return the prior of a fibre, marked as doubtful; nothing for a fibre that has none."""
    share = PRIORS.get(prior_of(fibre) or "")
    return UNKNOWN if share is None else Easing(share, Origin.PUBLISHED, fibre)


def prior_of(fibre: str) -> str | None:
    """Return which prior a cloth goes by, '' for a known cloth without one, None for a word that is no cloth.

    >>> prior_of("grey wool flannel"), prior_of("silk"), prior_of("unobtainium")
    ('soft wool', '', None)
    """
    said = f" {' '.join(fibre.lower().replace(',', ' ').replace('-', ' ').split())} "
    found = [name for name, words in CALLED.items() if any(f" {word} " in said for word in words)]
    return found[0] if found else None


def eased_share(longer_mm: float, shorter_mm: float) -> float:
    """Return the share by which one edge is longer, over the shorter one.

    >>> round(eased_share(29, 28) * 100, 3)
    3.571
    """
    return (longer_mm - shorter_mm) / shorter_mm


def allowed_mm(easing: Easing, band_mm: Sequence[float], stretches: int) -> float:
    """Return how many mm can be eased, counted over the lengths that can be eased.

    Each stretch between two seams loses 2 cm at both ends, and the centre front 2 cm on both sides.
    """
    free = sum(band_mm) - KEPT_FLAT_MM * 2 * (stretches + 1)
    return max(0.0, free) * easing.share
