"""A mock-up as it was seen on the body: of which cloth, how far sewn, and what was seen where.

Lengths and girths carry over to the real cloth; puckers and pulls in stiff calico stay doubtful. What lies below the
place that is sewn says nothing yet. A fold pinched p deep takes out 2p: the depth is asked for, the doubled
figure shown.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum


class Seen(Enum):
    """What was seen."""

    PINCHED = "pinched out"
    SHORT_OF = "needs more"
    PUCKERS = "puckers"
    PULLS = "pulls"
    RIDES_UP = "rides up"
    FOLD_UNDER_BAND = "folds under the band"
    SWINGS_FORWARD = "side seam swings forward"
    SWINGS_BACK = "side seam swings back"
    DIPS = "hem dips"
    LENGTH_RIGHT = "length right"
    FITS = "fits"
    DIAGONAL = "diagonal folds"


PLACES = ("waist", "high hip", "hip", "side seam", "hem")
"""From the top down."""
SURE = {Seen.PINCHED, Seen.SHORT_OF, Seen.LENGTH_RIGHT, Seen.FITS, Seen.DIPS}
"""What is measured, and carries over to any cloth."""


@dataclass(frozen=True)
class Observation:
    """One thing that was seen."""

    seen: Seen
    at: str
    """One of PLACES."""
    part: str = "all round"
    """'all round', 'front', 'back', 'left side' or 'right side'."""
    amount_mm: float = 0.0
    """How much in all; for a pinched fold twice its depth."""
    on_purpose: bool = False
    """Large on purpose, to be taken in later."""
    off_its_line_mm: float = 0.0
    """How far the seam was sewn beside its line there: a slip at the machine, not a fault of the paper."""


@dataclass(frozen=True)
class Toile:
    """One mock-up."""

    number: int
    cloth: str
    sewn_to: str = "hem"
    """The lowest place that is sewn."""
    observations: tuple[Observation, ...] = field(default=())
    photographs: tuple[str, ...] = ()
    same_cloth: bool = False
    """Whether it is of the real cloth."""


def pinched(at: str, depth_mm: float, part: str = "all round") -> Observation:
    """Return a fold that was pinned, from pin to fold; it takes out twice that.

    >>> pinched("waist", 8).amount_mm
    16
    """
    return Observation(Seen.PINCHED, at, part, 2 * depth_mm)


def counts(toile: Toile, one: Observation) -> bool:
    """Whether an observation says anything: only as far down as the toile is sewn."""
    return PLACES.index(one.at) <= PLACES.index(toile.sewn_to)


def is_sure(toile: Toile, one: Observation) -> bool:
    """Whether an observation carries over to the real cloth."""
    return one.seen in SURE or toile.same_cloth
