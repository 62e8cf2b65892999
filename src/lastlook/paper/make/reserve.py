"""What can be let out later, seam by seam, and how spare cloth becomes wider side allowances.

When a finished seam is let out, at least 6 mm of allowance has to stay (Fitting Dresses, USDA, rev. 1946, from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from lastlook.paper.alter import Allowance, Alteration, alter
from lastlook.paper.drafted import Drafted
from lastlook.paper.seam_edge import Use

LEFT_MM = 6.35
STEP_MM = 1.0
MOST_EXTRA_MM = 25.0
"""Beyond an inch a side allowance no longer lies flat over the hip (common practice, no source)."""


@dataclass(frozen=True)
class Reserve:
    """What one seam can give later: each edge by so much, all round by so much."""

    piece: str
    edge: str
    each_edge_mm: float
    all_round_mm: float


def reserves(drafted: Drafted) -> tuple[Reserve, ...]:
    """Return what can be let out at every seam edge of the skirt, with 6 mm left."""
    out = []
    for piece in drafted.pieces:
        for side in piece.sides:
            give = side.allowance_mm - LEFT_MM
            if piece.role == "skirt" and side.use is Use.SEAM and side.name != "waist" and give > 0:
                out.append(Reserve(piece.name, side.name, give, give * piece.times))
    return tuple(out)


def widest_sides_mm(drafted: Drafted, lays: Callable[[Drafted], bool], most_mm: float = MOST_EXTRA_MM) -> float:
    """Return how much wider every side allowance can be so that the pieces still lie on the cloth; 0 if none.

    `lays` says whether a set of pieces lies; it is asked a few times, halving the step.
    """
    low, high = 0.0, most_mm
    if not lays(drafted):
        return 0.0
    if lays(with_wider_sides(drafted, high)):
        return high
    while high - low > STEP_MM:
        middle = (low + high) / 2
        low, high = (middle, high) if lays(with_wider_sides(drafted, middle)) else (low, middle)
    return low


def with_wider_sides(drafted: Drafted, by_mm: float) -> Drafted:
    """Return the set with more allowance at every side."""
    return alter(drafted, wider_steps(drafted, by_mm))


def wider_steps(drafted: Drafted, by_mm: float) -> tuple[Alteration, ...]:
    """Return the alterations that leave so much more allowance at every side of the skirt."""
    return tuple(
        Allowance(piece.name, by_mm, side.name)
        for piece in drafted.pieces
        for side in piece.sides
        if piece.role == "skirt" and side.name.endswith("side")
    )
