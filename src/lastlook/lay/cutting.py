"""Laying by tape and cutting in order: where each grainline's ends lie, and which cut leaves a way back.

A *fallback* is another proven lay for what is not cut yet. It holds until a cut is made that it doesn't have.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from lastlook.lay.cloth import Point
from lastlook.lay.judge.laid import moved
from lastlook.lay.placement import Lay, Placement
from lastlook.lay.search import Goal, search
from lastlook.lay.wanted import Problem, Wanted

INSET = 0.08
"""The share of a grainline's chord that is left free at either end."""
FALLBACK_PASSES = 120


@dataclass(frozen=True)
class GrainEnd:
    """One end of a grainline on the open cloth: from the cut end, and from each selvedge."""

    along_mm: float
    from_near_mm: float
    from_far_mm: float


@dataclass(frozen=True)
class Laid:
    """Where to lay one paper piece with a tape: both ends of its grainline."""

    placement: Placement
    first: GrainEnd
    second: GrainEnd


@dataclass(frozen=True)
class Cut:
    """One cut, and the fallback that still holds after it, None where there is none."""

    placement: Placement
    fallback: Lay | None


def grainline(piece: Wanted) -> tuple[Point, Point]:
    """Return a line along the grain inside the piece, in its own coordinates: the longest through its middle."""
    turn = np.radians(piece.grain_deg or 0.0)
    way = np.array([np.cos(turn), np.sin(turn)])
    across = np.array([-way[1], way[0]])
    spots = np.array(piece.outline)
    levels = spots @ across
    best: tuple[float, Point, Point] | None = None
    for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8):
        level = levels.min() + share * np.ptp(levels)
        found = _chord(spots, way, across, float(level))
        if found is not None and (best is None or found[0] > best[0] * 1.15):
            best = found
    return (best[1], best[2]) if best else (piece.outline[0], piece.outline[1])


def _chord(
    spots: np.typing.NDArray[np.float64], way: np.typing.NDArray[np.float64], across: np.typing.NDArray[np.float64],
    level: float,
) -> tuple[float, Point, Point] | None:  # fmt: skip
    """Return the longest run of a line inside an outline, drawn in a little at both ends."""
    side = spots @ across - level
    cuts = []
    for spot in range(len(spots)):
        a, b = side[spot - 1], side[spot]
        if (a > 0) != (b > 0):
            cuts.append(float((spots[spot - 1] + (spots[spot] - spots[spot - 1]) * a / (a - b)) @ way))
    cuts.sort()
    runs = [(high - low, low, high) for low, high in zip(cuts[::2], cuts[1::2], strict=False)]
    if not runs:
        return None
    long, low, high = max(runs)
    ends = [way * (at) + across * level for at in (low + INSET * long, high - INSET * long)]
    return long, (float(ends[0][0]), float(ends[0][1])), (float(ends[1][0]), float(ends[1][1]))


def by_tape(problem: Problem, placements: Sequence[Placement]) -> tuple[Laid, ...]:
    """Return for every placement how its grainline's two ends are found with a tape."""
    out = []
    for one in placements:
        piece = problem.piece(one.id)
        if piece is not None:
            ends = moved(grainline(piece), one)
            first, second = (_measured(problem, float(x), float(y)) for x, y in ends)
            out.append(Laid(one, first, second))
    return tuple(out)


def _measured(problem: Problem, x: float, y: float) -> GrainEnd:
    return GrainEnd(x, y, problem.cloth.width_mm - y)


def cutting_order(problem: Problem, lay: Lay, fallback_problem: Problem, seed: int = 1) -> tuple[Cut, ...]:
    """Return the cuts of a lay in an order that leaves a proven fallback as long as can be found.

    `fallback_problem` is what the maker would take if a cut goes wrong: the same outfit shorter, pieced, or the very
    same problem. Cuts that the present fallback has too come first; when there is none, one is looked for that
    holds after some next cut, the smallest first.
    """
    left, made = list(lay.placements), list[Placement]()
    out: list[Cut] = []
    fallback = _fallback(fallback_problem, (), lay, seed)
    while left:
        shared = [one for one in left if fallback is not None and one in fallback.placements]
        if not shared and fallback is not None:
            found = _next_fallback(fallback_problem, made, left, lay, seed)
            fallback, shared = (found[1], [found[0]]) if found else (None, [])
        chosen = shared[0] if shared else max(left, key=lambda one: (one.part == 1, -one.x))
        left.remove(chosen)
        made.append(chosen)
        out.append(Cut(chosen, fallback if left else None))
    return tuple(out)


def _next_fallback(
    problem: Problem, made: list[Placement], left: list[Placement], lay: Lay, seed: int
) -> tuple[Placement, Lay] | None:
    for one in left[:4]:
        found = _fallback(problem, (*made, one), lay, seed)
        if found is not None:
            return one, found
    return None


def _fallback(problem: Problem, made: Sequence[Placement], lay: Lay, seed: int) -> Lay | None:
    """Return a proven lay with the cuts made so far that differs from the lay being cut, None if none is found."""
    found = search(problem, seed=seed + 7, passes=FALLBACK_PASSES, made=tuple(made), goal=Goal.FIT)
    return found if found.fits and set(found.placements) != set(lay.placements) else None
