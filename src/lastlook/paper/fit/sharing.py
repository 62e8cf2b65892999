"""How a change of a whole girth or length is shared out over edges, darts and places."""

from __future__ import annotations

LARGE_LENGTH_MM = 101.6
"""From 4 in on a change of length is made in two places (Butterick, The New Dressmaker, 1921, p. 27, read)."""


def per_edge_mm(total_mm: float, seams: int) -> float:
    """Return what each seam edge takes of a change of the whole girth; a seam has two edges.

    >>> per_edge_mm(40, 2), round(per_edge_mm(76.2, 6), 2)
    (10.0, 6.35)
    """
    return total_mm / (2 * seams)


def per_dart_mm(total_mm: float, darts: int) -> tuple[float, float]:
    """Return what each dart takes, and each of its legs.

    >>> per_dart_mm(32, 4)
    (8.0, 4.0)
    """
    return total_mm / darts, total_mm / darts / 2


def per_half_mm(wanted_mm: float, pattern_mm: float) -> float:
    """Return what half a pattern takes of a change; a pattern is half a garment.

    >>> round(per_half_mm(34 * 25.4, 30 * 25.4) / 25.4, 3)
    2.0
    """
    return (wanted_mm - pattern_mm) / 2


def in_two_places_mm(by_mm: float) -> tuple[float, float]:
    """Return how much of a change of length goes in at the line, and how much at the hem.

    >>> in_two_places_mm(30), in_two_places_mm(127)
    ((30, 0.0), (63.5, 63.5))
    """
    return (by_mm, 0.0) if abs(by_mm) < LARGE_LENGTH_MM else (by_mm / 2, by_mm / 2)


def mixed_allowances_mm(edges: int, one_mm: float, other_mm: float) -> float:
    """Return how far a garment is off if its edges are sewn with another allowance than they were cut with.

    >>> mixed_allowances_mm(8, 15.875, 15.0)
    7.0
    """
    return edges * (one_mm - other_mm)


def fold_depth_mm(by_mm: float) -> float:
    """Return how deep a fold is pinned that takes out so much: it takes out twice its depth.

    >>> fold_depth_mm(24)
    12.0
    """
    return by_mm / 2
