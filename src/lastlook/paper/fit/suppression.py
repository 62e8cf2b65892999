"""What a waist has less than the hip, and who takes it; how wide a block is."""

from __future__ import annotations

HALF_EASE_MM = 25.0
"""Half the hip ease of the handout's block (WikiEducator, Handout for drafting skirt block, read)."""


def suppression_mm(hip_mm: float, hip_ease_mm: float, waist_mm: float, waist_ease_mm: float) -> float:
    """Return what has to be taken in between hip and waist, ease on both.

    >>> round(suppression_mm(1000, 50, 760, 24), 1)
    266
    """
    return (hip_mm + hip_ease_mm) - (waist_mm + waist_ease_mm)


def at_each_side_edge_mm(total_mm: float, darts: int, dart_mm: float) -> float:
    """Return what the darts leave for each of the four side-seam edges.

    >>> at_each_side_edge_mm(266, 4, 30)
    36.5
    """
    return (total_mm - darts * dart_mm) / 4


def half_block_mm(hip_mm: float, half_ease_mm: float = HALF_EASE_MM) -> float:
    """Return how wide half a skirt block is at the hip.

    >>> half_block_mm(1000)
    525.0
    """
    return hip_mm / 2 + half_ease_mm


def foundation_mm(hip_mm: float, hem_mm: float) -> tuple[float, float, float]:
    """Return the three lengths that set out a circular foundation skirt.

    AB = half the hip less an eighth of half the hem, AC = a tenth of half the hem, CD = half of AB (Baldt, Clothing for
    Women, 1916, "To draft skirt", read).

    >>> [round(mm / 25.4, 3) for mm in foundation_mm(40 * 25.4, 80 * 25.4)]
    [15.0, 4.0, 7.5]
    """
    ab = hip_mm / 2 - hem_mm / 2 / 8
    return ab, hem_mm / 2 / 10, ab / 2
