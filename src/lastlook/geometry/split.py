"""Where a straight line crosses segments and paths, and cutting them there.

A *share* is a segment's parameter from 0 to 1; a *spot* on a path is the number of its segment plus a share.
"""

from __future__ import annotations

from collections.abc import Callable

from lastlook.geometry.curve import Cubic, Line, Segment
from lastlook.geometry.path import Path
from lastlook.geometry.point import Point, between

_STEPS = 24
"""Intervals searched for a change of sign; a cubic crosses a line at most three times."""
_HALVINGS = 60


def split(segment: Segment, share: float) -> tuple[Segment, Segment]:
    """Cut a segment in two at a parameter; both halves together are the same curve."""
    if isinstance(segment, Line):
        middle = segment.at(share)
        return Line(segment.start, middle), Line(middle, segment.end)
    a, b, c, d = segment.start, segment.out, segment.into, segment.end
    ab, bc, cd = between(a, b, share), between(b, c, share), between(c, d, share)
    abc, bcd = between(ab, bc, share), between(bc, cd, share)
    middle = between(abc, bcd, share)
    return Cubic(a, ab, abc, middle), Cubic(middle, bcd, cd, d)


def cut(path: Path, spot: float) -> tuple[Path, Path]:
    """Cut an open path in two; a spot at a joint cuts between its segments."""
    index = min(int(spot), len(path.segments) - 1)
    share = spot - index
    before, after = path.segments[:index], path.segments[index + 1 :]
    here = path.segments[index]
    if share <= 0:
        return Path(before), Path((here, *after))
    if share >= 1:
        return Path((*before, here)), Path(after)
    first, second = split(here, share)
    return Path((*before, first)), Path((second, *after))


def crossings(path: Path, through: Point, direction: Point) -> list[float]:
    """Return the spots where a path crosses the endless straight line, in the order of the path."""
    spots: list[float] = []
    for index, segment in enumerate(path.segments):
        for share in _shares(segment, through, direction):
            if not spots or abs(spots[-1] - (index + share)) > 1e-9:
                spots.append(index + share)
    return spots


def at(path: Path, spot: float) -> Point:
    """Return the point of a path at a spot."""
    index = min(int(spot), len(path.segments) - 1)
    return path.segments[index].at(spot - index)


def meeting(a: Point, a_direction: Point, b: Point, b_direction: Point) -> Point | None:
    """Return where two endless straight lines meet; None if they run alongside each other."""
    turn = a_direction[0] * b_direction[1] - a_direction[1] * b_direction[0]
    if abs(turn) < 1e-9:
        return None
    along = ((b[0] - a[0]) * b_direction[1] - (b[1] - a[1]) * b_direction[0]) / turn
    return (a[0] + along * a_direction[0], a[1] + along * a_direction[1])


def _shares(segment: Segment, through: Point, direction: Point) -> list[float]:
    def off(share: float) -> float:
        x, y = segment.at(share)
        return (x - through[0]) * direction[1] - (y - through[1]) * direction[0]

    if isinstance(segment, Line):
        first, last = off(0), off(1)
        if first == last:
            return []
        share = first / (first - last)
        return [share] if -1e-12 <= share <= 1 + 1e-12 else []
    if _one_side(segment, through, direction):
        return []
    marks = [step / _STEPS for step in range(_STEPS + 1)]
    values = [off(mark) for mark in marks]
    found = []
    for low, high, first, last in zip(marks, marks[1:], values, values[1:], strict=False):
        if first == 0:
            found.append(low)
        elif first * last < 0:
            found.append(_root(off, low, high))
    if values[-1] == 0:
        found.append(1.0)
    return found


def _one_side(segment: Cubic, through: Point, direction: Point) -> bool:
    """Whether a curve's corners all lie on one side of a line, and the curve with them."""
    corners = (segment.start, segment.out, segment.into, segment.end)
    sides = [(x - through[0]) * direction[1] - (y - through[1]) * direction[0] for x, y in corners]
    return min(sides) > 0 or max(sides) < 0


def _root(off: Callable[[float], float], low: float, high: float) -> float:
    sign = off(low) > 0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if (off(middle) > 0) == sign:
            low = middle
        else:
            high = middle
    return (low + high) / 2
