"""What a search moves about: a *job* is one placement to be found, a *variant* one way it may lie.

A job may be one copy, a mirrored pair cut through a fold, a piece on the fold, or one part of a pieced copy.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from lastlook import geometry
from lastlook.geometry import Corners
from lastlook.lay.clash.zone import Band, Forbidden
from lastlook.lay.cloth import Cloth, Outline, Point
from lastlook.lay.placement import ONE, Placement
from lastlook.lay.wanted import Wanted

MOST_CORNERS = 60
ROUGH_MM = 0.1
"""How far an outline of very many corners may grow to be searched with fewer."""


@dataclass(frozen=True, eq=False)
class Shape:
    """An outline turned as it may lie, about the piece's own origin, and its convex parts."""

    parts: tuple[Corners, ...]
    guarded: tuple[Corners, ...]
    """Convex parts of what no flaw may touch."""
    low: tuple[float, float]
    high: tuple[float, float]
    area_mm2: float


@dataclass(frozen=True, eq=False)
class Variant:
    """One way a job may lie: which way round, in which band, from where to where its origin may be."""

    shape: Shape
    mirrored: bool
    angle_deg: float
    layer: str
    band: Band
    low: tuple[float, float]
    high: tuple[float, float]
    forbidden: Forbidden
    phase_at: Point | None = None
    """The match point as turned, where the piece has one and the cloth a repeat."""
    pinned: bool = False


@dataclass(frozen=True, eq=False)
class Job:
    """One placement to be found."""

    wanted: Wanted
    copy: int
    variants: tuple[Variant, ...]
    part: int = 1
    outline: Outline | None = None
    group: str | None = None
    area_mm2: float = field(default=0.0)
    yields: int = 1
    """How many copies it gives."""


@dataclass(frozen=True)
class Turn:
    """Which way round a piece lies."""

    mirrored: bool
    angle_deg: float


def turns(piece: Wanted, cloth: Cloth, sides: tuple[bool, ...], tilts: tuple[float, ...] = (0.0,)) -> list[Turn]:
    """Return every way round that a piece may lie, at these shares of its tolerance."""
    if piece.angles_deg is not None:
        straight = [a for a in piece.angles_deg if abs((a + 180) % 360 - 180) < 1e-9]
        angles = (straight or list(piece.angles_deg))[:1] if cloth.one_way else list(piece.angles_deg)
        return [Turn(side, angle) for side in sides for angle in angles]
    if piece.grain_deg is None:
        free = [0.0] if cloth.one_way else [0.0, 90.0, 180.0, 270.0]
        return [Turn(side, angle) for side in sides for angle in free]
    out = []
    for side in sides:
        for tilt in dict.fromkeys(share * piece.tilt_deg for share in tilts):
            upright = (piece.grain_deg if side else -piece.grain_deg) + tilt
            out.append(Turn(side, upright % 360))
            if piece.may_turn and not cloth.one_way:
                out.append(Turn(side, (upright + 180) % 360))
    return out


def is_allowed(piece: Wanted, cloth: Cloth, turn: Turn, tilts: tuple[float, ...] = (0.0,)) -> bool:
    """Whether a piece may lie that way round."""
    if piece.grain_deg is None and piece.angles_deg is None and not cloth.one_way:
        return True
    same = (
        abs((one.angle_deg - turn.angle_deg + 180) % 360 - 180) for one in turns(piece, cloth, (turn.mirrored,), tilts)
    )
    return min(same) < 1e-6


def turned(spots: Outline, turn: Turn) -> Corners:
    """Return points mirrored and turned about the origin, counter-clockwise again."""
    flat = np.array(spots, float).reshape(-1, 2)
    if turn.mirrored:
        flat = flat * (1.0, -1.0)
    angle = math.radians(turn.angle_deg)
    cos, sin = math.cos(angle), math.sin(angle)
    if turn.angle_deg % 90 == 0:
        cos, sin = float(round(cos)), float(round(sin))
    out = flat @ np.array([[cos, sin], [-sin, cos]])
    result: Corners = out[::-1].copy() if turn.mirrored else out
    return result


def shape_of(outline: Outline, guarded: tuple[Outline, ...] | None, turn: Turn) -> Shape:
    """Return a piece's outline as it lies that way round, with its convex parts."""
    if len(outline) > MOST_CORNERS:
        outline = geometry.simpler(outline, ROUGH_MM, MOST_CORNERS)
    corners = turned(outline, turn)
    parts = tuple(geometry.convex_parts([(float(x), float(y)) for x, y in corners]))
    guard = parts
    if guarded is not None:
        shapes = [[(float(x), float(y)) for x, y in turned(one, turn)] for one in guarded]
        guard = tuple(geometry.area_parts(shapes)) if shapes else ()
    low, high = corners.min(0), corners.max(0)
    area = abs(geometry.signed_area_mm2([(float(x), float(y)) for x, y in corners]))
    return Shape(parts, guard, (float(low[0]), float(low[1])), (float(high[0]), float(high[1])), area)


def placement_of(job: Job, variant: Variant, x: float, y: float) -> Placement:
    """Return the placement of a job whose origin lies there, as it will be printed."""
    at = (round(float(x), 5) + 0.0, round(float(y), 5) + 0.0)
    return Placement(
        job.wanted.id, job.copy, at[0], at[1], variant.angle_deg, variant.mirrored,
        variant.layer or ONE, job.part, job.outline,
    )  # fmt: skip
