"""An outline taken apart at its corners, and a first guess at what each run is.

A *run* is the outline between two corners. A dart drawn as a notch, two straight runs of one length that meet
inside, is a dart. Guesses go by place: the top is the waist, the foot the hem, an upright straight run the
centre, the left one of two.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from lastlook.geometry import Path, direction, distance_mm, ends_along, starts_along, turn_deg

CORNER_DEG = 25.0
LEGS_SHARE = 0.08
"""Legs of a drawn dart differ by less than this share of their length."""
DEEPEST_MM, WIDEST_MM = 250.0, 80.0
UPRIGHT_DEG = 3.0
STRAIGHT_SHARE = 1.0005


def runs_of(path: Path, corner_deg: float = CORNER_DEG) -> tuple[Path, ...]:
    """Return the runs of a closed outline, in the order of the walk."""
    segments = path.segments
    sharp = [
        number
        for number, here in enumerate(segments)
        if abs(turn_deg(ends_along(segments[number - 1]), starts_along(here))) > corner_deg
    ]
    if len(sharp) < 2:
        return (path,)
    turned = segments[sharp[0] :] + segments[: sharp[0]]
    cuts = [one - sharp[0] for one in sharp] + [len(segments)]
    return tuple(Path(turned[a:b]) for a, b in itertools.pairwise(cuts))


def dart_at(runs: Sequence[Path], number: int) -> bool:
    """Whether a run and the next are the legs of a dart that was drawn as a notch."""
    a, b = runs[number], runs[(number + 1) % len(runs)]
    first, second = a.length_mm(), b.length_mm()
    straight = all(one.length_mm() < distance_mm(one.start, one.end) * STRAIGHT_SHARE for one in (a, b))
    alike = abs(first - second) < LEGS_SHARE * max(first, second)
    small = max(first, second) < DEEPEST_MM and distance_mm(a.start, b.end) < min(WIDEST_MM, first)
    turn = turn_deg(direction(a.start, a.end), direction(b.start, b.end))
    return straight and alike and small and turn < -90


def guess(runs: Sequence[Path]) -> tuple[str, ...]:
    """Return a name for every run, '' for the legs of darts."""
    spots = [spot for run in runs for spot in run.points(1.0)]
    box = (min(x for x, _ in spots), min(y for _, y in spots), max(x for x, _ in spots), max(y for _, y in spots))
    legs = {n for number in range(len(runs)) if dart_at(runs, number) for n in (number, (number + 1) % len(runs))}
    names = ["" if number in legs else _name(run, box) for number, run in enumerate(runs)]
    centres = [number for number, name in enumerate(names) if name == "centre"]
    for number in sorted(centres, key=lambda one: runs[one].start[0])[1:]:
        names[number] = "side"
    return tuple(names)


def _name(run: Path, box: tuple[float, float, float, float]) -> str:
    left, low, right, high = box
    x = sum(spot[0] for spot in run.points(1.0)) / len(run.points(1.0))
    y = (run.start[1] + run.end[1]) / 2
    along = direction(run.start, run.end)
    steep = abs(math.degrees(math.atan2(abs(along[1]), abs(along[0])))) > 45
    if not steep:
        return "waist" if y > (low + high) / 2 else "hem"
    upright = abs(along[0]) < math.sin(math.radians(UPRIGHT_DEG))
    straight = run.length_mm() < distance_mm(run.start, run.end) * STRAIGHT_SHARE
    at_end = min(abs(x - left), abs(x - right)) < (right - left) * 0.05
    if upright and straight and at_end and run.length_mm() > (high - low) * 0.5:
        return "centre"
    return "side"
