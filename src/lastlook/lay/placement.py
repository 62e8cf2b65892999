"""Where everything lies: placements, a whole lay, and what the judge says of it.

A placement mirrors the piece (y becomes -y) if `mirrored`, turns it about its own origin, then moves it.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Finding
from lastlook.lay.cloth import Outline

ONE, BOTH = "one", "both"
"""Through how many layers of cloth a placement cuts: one, or both of a fold."""


@dataclass(frozen=True)
class Placement:
    """One paper piece, or one part of it, laid on the open cloth."""

    id: str
    copy: int
    x: float
    y: float
    angle_deg: float = 0.0
    mirrored: bool = False
    layer: str = ONE
    part: int = 1
    outline: Outline | None = None
    """The part's own outline, seams included; None for a whole piece."""


@dataclass(frozen=True)
class LeftOver:
    """A rectangle of cloth that nothing lies on, single layer."""

    width_mm: float
    length_mm: float
    x: float = 0.0
    y: float = 0.0


@dataclass(frozen=True)
class Judgement:
    """Whether a lay is proven; every reason why not."""

    proven: bool
    findings: tuple[Finding, ...] = ()


@dataclass(frozen=True)
class Lay:
    """An arrangement of paper pieces on a cloth, the best that was found."""

    fits: bool
    proven: bool
    placements: tuple[Placement, ...] = ()
    used_length_mm: float = 0.0
    used_share: float = 0.0
    left_over: tuple[LeftOver, ...] = ()
    findings: tuple[Finding, ...] = ()
    seed: int = 1
    passes: int = 0


@dataclass(frozen=True)
class Progress:
    """What a search can say of itself while it goes on."""

    passes: int
    best: Lay | None
    overlapping: int = 0
    """How many pieces of the arrangement being tried still overlap."""
