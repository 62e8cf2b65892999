"""What holds for every body and gauge: a composed raglan meets at every seam and conserves its stitches."""

from __future__ import annotations

from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from lastlook import wearer
from lastlook.knit import compose
from lastlook.knit.compose.craft.evenly import groups, intervals, left_over_rows, skips, spread_rows
from lastlook.knit.compose.craft.ladder import slope
from lastlook.piece import Meets, Unit
from lastlook.quantity import Origin, gauge_of

BODIES = st.fixed_dictionaries(
    {
        "bust_girth": st.integers(600, 1700),
        "upper_arm_girth": st.integers(180, 560),
        "wrist_girth": st.integers(110, 220),
        "neck_base_girth": st.integers(280, 480),
        "scye_depth": st.integers(140, 280),
        "back_waist_length": st.integers(280, 500),
        "underarm_length": st.integers(300, 560),
    }
)
GAUGES = st.tuples(st.floats(10, 40), st.floats(1.15, 1.6)).map(
    lambda pair: gauge_of(round(pair[0], 1), round(pair[0] * pair[1], 1), Origin.MEASURED)
)


@settings(max_examples=120, deadline=None)
@given(BODIES, GAUGES, st.sampled_from(["pullover", "cardigan"]), st.sampled_from(["round", "v"]), st.data())
def test_every_raglan_meets(body, gauge, opening, neck, data) -> None:  # type: ignore[no-untyped-def]
    who = wearer.Wearer("her", tuple(wearer.by_tape(name, float(mm)) for name, mm in body.items()))
    ease = compose.EASE[data.draw(st.sampled_from(sorted(compose.EASE)))]
    made = compose.design_raglan(who, compose.Asked(gauge, opening, neck=neck, ease=ease))
    if not made.leaflet:
        assert any(one.kind == "constraints-clash" for one in made.findings)
        return
    assert len(made.seams) == 10
    assert all(seam.difference == 0 for seam in made.seams)
    for piece in made.pieces:
        for row, following in zip(piece.rows, piece.rows[1:], strict=False):
            assert row.after == following.before == row.before - row.used + row.gives
            assert row.after >= 1
    fronts = {piece.name: piece for piece in made.pieces if "Front" in piece.name and piece.part_of is None}
    if opening == "cardigan":
        left, right = fronts["Left Front"], fronts["Right Front"]
        assert left.cast_on == right.cast_on
        assert abs(len(left.rows) - len(right.rows)) <= 1


@settings(max_examples=100, deadline=None, phases=(Phase.generate,))
@given(BODIES, GAUGES, st.sampled_from(sorted(compose.GARMENTS)), st.sampled_from(["round", "v"]))
def test_every_garment_meets(body, gauge, name, neck) -> None:  # type: ignore[no-untyped-def]
    more = {
        "head_girth": 560.0,
        "hand_girth": 190.0,
        "foot_length": 245.0,
        "ball_girth": 230.0,
        "hand_length": 180.0,
        "back_width": body["bust_girth"] * 0.38,
        "centre_back_to_wrist": body["underarm_length"] + 350,
    }
    who = wearer.Wearer("her", tuple(wearer.by_tape(one, float(mm)) for one, mm in {**body, **more}.items()))
    made = compose.GARMENTS[name](who, compose.Asked(gauge, neck=neck))
    if not made.leaflet:
        assert any(one.kind == "constraints-clash" for one in made.findings)
        return
    for seam in made.seams:
        assert seam.meets is not Meets.NO or seam.mate.unit is Unit.MM, seam
    for piece in made.pieces:
        for row, following in zip(piece.rows, piece.rows[1:], strict=False):
            assert row.after == following.before == row.before - row.used + row.gives
            assert row.after >= 1


@given(st.integers(1, 60), st.integers(2, 300))
def test_intervals_use_every_row(shapings: int, rows: int) -> None:
    table = intervals(shapings, rows)
    if table:
        assert sum(times for _, times in table) == shapings
        assert sum(every * times for every, times in table) + left_over_rows(shapings, rows) == rows
        assert all(every % 2 == 0 for every, _ in table)
        spots = spread_rows(shapings, rows)
        assert len(set(spots)) == shapings
        assert all(spot % 2 == 1 and 1 <= spot <= rows for spot in spots)


@given(st.integers(0, 300), st.integers(1, 40))
def test_groups_sum(stitches: int, parts: int) -> None:
    assert sum(groups(stitches, parts)) == stitches
    assert max(groups(stitches, parts)) - min(groups(stitches, parts)) <= 1


@given(st.integers(10, 300), st.integers(1, 300))
def test_skips_use_the_whole_edge(rows: int, picked: int) -> None:
    if rows // 2 < picked < rows:
        table = skips(rows, picked)
        assert sum(pick * times for pick, times in table) == picked
        assert rows - picked <= sum(times for _, times in table) <= rows - picked + 1


@given(st.integers(0, 200), st.integers(1, 80))
def test_a_slope_takes_what_it_must(decreases: int, pairs: int) -> None:
    found = slope(decreases, 2 * pairs)
    if found is None:
        assert decreases > 3 * pairs
    else:
        assert found.decreases == decreases
        assert len(found.takes) == 2 * pairs
