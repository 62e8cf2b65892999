"""Where on the cloth a search may lay: bands between folds, each seen from the side that pieces are laid on.

A *near band* is laid on; the cloth under it is its reflection in the fold. What forbids a place on the lower
layer forbids it, reflected, to pieces that are cut through both.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from lastlook import geometry
from lastlook.geometry import Corners
from lastlook.lay.cloth import Cloth, Fold, Outline

MOST_CORNERS = 120
ROUGH_MM = 0.2
"""How far an edge of very many corners may be drawn in to be searched with fewer."""


@dataclass(frozen=True)
class Band:
    """A part of the cloth that pieces are laid on, and the fold it ends at, None where it is single."""

    low: tuple[float, float]
    high: tuple[float, float]
    axis: int = 1
    fold_at: float | None = None
    fold_is_high: bool = True


@dataclass(frozen=True)
class Forbidden:
    """Convex shapes that nothing may reach into: of the cloth's edge, of flaws, of what already lies there."""

    edge: tuple[Corners, ...] = ()
    flaw: tuple[Corners, ...] = ()
    taken: tuple[Corners, ...] = ()


def bands(cloth: Cloth, length_mm: float) -> tuple[Band, ...]:
    """Return the bands that pieces are laid on; `length_mm` is the cloth's, or how far a search may reach."""
    wide, edge, half = cloth.width_mm, cloth.selvedge_mm, cloth.gap_mm / 2
    inner = max(edge, half)
    low_x, high_x = (0.0, length_mm) if cloth.outline is None else _reach(cloth.outline)
    if cloth.fold is Fold.LENGTHWISE:
        return (Band((low_x, edge), (high_x, wide / 2), 1, wide / 2),)
    if cloth.fold is Fold.BOTH_TO_MIDDLE:
        first = Band((low_x, inner), (high_x, wide / 4), 1, wide / 4)
        second = Band((low_x, 3 * wide / 4), (high_x, wide - inner), 1, 3 * wide / 4, False)
        return first, second
    if cloth.fold is Fold.PARTIAL:
        deep = cloth.partial_mm
        strip = Band((low_x, inner), (high_x, deep), 1, deep)
        rest = Band((low_x, 2 * deep + half), (high_x, wide - edge))
        return (strip, rest) if rest.high[1] > rest.low[1] else (strip,)
    if cloth.fold is Fold.CROSSWISE:
        return (Band((low_x, edge), (length_mm / 2, wide - edge), 0, length_mm / 2),)
    return (Band((low_x, edge), (high_x, wide - edge)),)


def _reach(outline: Outline) -> tuple[float, float]:
    return min(x for x, _ in outline), max(x for x, _ in outline)


def forbidden(cloth: Cloth, band: Band, *, layers: int, taken: tuple[Corners, ...]) -> Forbidden:
    """Return what a band forbids to pieces that are cut through one layer, or through both."""
    edge: list[Corners] = []
    if cloth.outline is not None:
        x0, x1 = _reach(cloth.outline)
        box = (x0 - 10, -10.0, x1 + 10, cloth.width_mm + 10)
        edge = geometry.outside_parts(box, geometry.simpler_inside(cloth.outline, ROUGH_MM, MOST_CORNERS))
    flaws = (
        geometry.area_parts([geometry.simpler(one, ROUGH_MM, MOST_CORNERS) for one in cloth.flaws])
        if cloth.flaws
        else []
    )
    if layers == 2 and band.fold_at is not None:
        edge = edge + [_reflected(one, band) for one in edge]
        flaws = flaws + [_reflected(one, band) for one in flaws]
    under = [_reflected(one, band) for one in taken] if band.fold_at is not None else []
    return Forbidden(
        tuple(one for one in edge if _reaches(one, band)),
        tuple(one for one in flaws if _reaches(one, band)),
        tuple(one for one in (*taken, *under) if _reaches(one, band)),
    )


def _reflected(corners: Corners, band: Band) -> Corners:
    out = corners[::-1].copy()
    out[:, band.axis] = 2 * (band.fold_at or 0.0) - out[:, band.axis]
    return out


def _reaches(corners: Corners, band: Band) -> bool:
    return bool(np.all(corners.max(0) > band.low) and np.all(corners.min(0) < band.high))
