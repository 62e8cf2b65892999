"""An outline as the tracing of a photograph gives it: many points, with a little noise that is smoothed away.

Corners are kept; between them no point moves further than the tolerance.
"""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.geometry import Point, direction, distance_mm, polygon, turn_deg
from lastlook.paper.take.outline import Outline, Taken, closed, unread

TOLERANCE_MM = 0.5
"""A traced outline is good to 1-2 mm at best; half a millimetre hides no shape."""
CORNER_DEG = 35.0
REACH = 4
"""A corner is looked for over this many points on both sides, so that noise makes none."""


def traced(points: Sequence[Point], name: str = "", tolerance_mm: float = TOLERANCE_MM) -> Taken:
    """Return a traced outline with its noise smoothed."""
    spots = [spot for n, spot in enumerate(points) if n == 0 or distance_mm(spot, points[n - 1]) > 1e-6]
    if len(spots) > 1 and distance_mm(spots[0], spots[-1]) < 1e-6:
        spots.pop()
    if len(spots) < 3:
        return Taken(
            findings=(unread("The tracing has no outline.", "It has fewer than three points.", "Trace it anew."),)
        )
    corners = _corners(spots)
    smooth = [spot if n in corners else _between(spots, n, tolerance_mm) for n, spot in enumerate(spots)]
    return Taken(outlines=(Outline(closed(polygon(_thinned(smooth, corners, tolerance_mm / 5))), name),))


def _corners(spots: Sequence[Point]) -> set[int]:
    count = len(spots)
    reach = max(1, min(REACH, count // 8))
    turns = []
    for n in range(count):
        before, here, after = spots[n - reach], spots[n], spots[(n + reach) % count]
        turns.append(abs(turn_deg(direction(before, here), direction(here, after))))
    near = range(-reach, reach + 1)
    return {n for n in range(count) if turns[n] > CORNER_DEG and turns[n] == max(turns[(n + k) % count] for k in near)}


def _between(spots: Sequence[Point], n: int, tolerance_mm: float) -> Point:
    """Return a point moved towards its neighbours' middle, by the tolerance at most."""
    a, here, b = spots[n - 1], spots[n], spots[(n + 1) % len(spots)]
    middle = ((a[0] + 2 * here[0] + b[0]) / 4, (a[1] + 2 * here[1] + b[1]) / 4)
    away = distance_mm(here, middle)
    share = 1.0 if away <= tolerance_mm else tolerance_mm / away
    return (here[0] + (middle[0] - here[0]) * share, here[1] + (middle[1] - here[1]) * share)


def _thinned(spots: Sequence[Point], corners: set[int], tolerance_mm: float) -> list[Point]:
    """Drop points that lie on the line from the last kept one to the next, within the tolerance."""
    out = [spots[0]]
    for n in range(1, len(spots)):
        a, here, b = out[-1], spots[n], spots[(n + 1) % len(spots)]
        along = direction(a, b)
        off = abs((here[0] - a[0]) * along[1] - (here[1] - a[1]) * along[0])
        if n in corners or off > tolerance_mm or distance_mm(a, here) > 10:
            out.append(here)
    return out
