"""What holds of every path: cutting keeps the shape, a grown square is a square, an arc is round."""

from __future__ import annotations

import math

from hypothesis import given
from hypothesis import strategies as some

from lastlook.geometry import (
    Cubic,
    Path,
    Point,
    Run,
    arc,
    at,
    crossings,
    cut,
    distance_mm,
    grown,
    mirrored,
    nearest,
    polyline,
    shifted,
    swung,
)

numbers = some.floats(-500, 500, allow_nan=False).map(lambda x: round(x, 3))
points = some.tuples(numbers, numbers)


def gentle(a: Point, b: Point, lift: float, drop: float) -> Cubic:
    """Return a curve that never turns back on itself, as edges of pieces are."""
    x, y = b[0] - a[0], b[1] - a[1]
    out = (a[0] + x / 3 - y * lift, a[1] + y / 3 + x * lift)
    return Cubic(a, out, (a[0] + x * 2 / 3 - y * drop, a[1] + y * 2 / 3 + x * drop), b)


leans = some.floats(-0.5, 0.5)
cubics = some.builds(gentle, points, points, leans, leans).filter(lambda one: distance_mm(one.start, one.end) > 1)


@given(cubics, some.floats(0.05, 0.95))
def test_a_cut_path_is_as_long_as_before(cubic: Cubic, share: float) -> None:
    whole = Path((cubic,))
    first, second = cut(whole, share)
    assert first.end == second.start
    assert abs(first.length_mm() + second.length_mm() - whole.length_mm()) < 1e-6 * (1 + whole.length_mm())


@given(cubics, points, some.floats(-180, 180))
def test_moving_changes_no_length(cubic: Cubic, by: tuple[float, float], degrees: float) -> None:
    whole = Path((cubic,))
    for moved in (shifted(whole, by), swung(whole, by, degrees), mirrored(whole, by[0])):
        assert math.isclose(moved.length_mm(), whole.length_mm(), rel_tol=1e-9, abs_tol=1e-6)


@given(cubics, some.floats(0.05, 0.95))
def test_the_nearest_place_to_a_point_of_the_path_is_the_point(cubic: Cubic, share: float) -> None:
    whole = Path((cubic,))
    assert nearest(whole, at(whole, share)).away_mm < 1.0


@given(cubics, numbers)
def test_a_crossing_lies_on_the_line(cubic: Cubic, y: float) -> None:
    whole = Path((cubic,))
    for spot in crossings(whole, (0.0, y), (1.0, 0.0)):
        assert abs(at(whole, spot)[1] - y) < 1e-6


@given(some.floats(50, 2000), some.floats(5, 360))
def test_an_arc_is_round_and_as_long_as_it_says(radius: float, degrees: float) -> None:
    path = arc((3.0, 4.0), radius, 10, 10 + degrees)
    assert math.isclose(path.length_mm(), radius * math.radians(degrees), rel_tol=1e-7)
    assert all(abs(distance_mm((3.0, 4.0), spot) - radius) < radius * 1e-7 for spot in path.points(0.5)[1:-1])


@given(some.floats(20, 900), some.floats(20, 900), some.lists(some.floats(0, 60), min_size=4, max_size=4))
def test_a_rectangle_grows_by_the_width_of_each_side(wide: float, high: float, widths: list[float]) -> None:
    corners = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high), (0.0, 0.0))
    runs = [Run(polyline(corners[n : n + 2]), widths[n]) for n in range(4)]
    area = (wide + widths[1] + widths[3]) * (high + widths[0] + widths[2])
    assert math.isclose(grown(runs).area_mm2(), area, rel_tol=1e-6)
