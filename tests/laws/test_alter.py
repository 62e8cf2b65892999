"""What holds for every alteration: at its own gauge a piece comes back, at another its mates still meet."""

from __future__ import annotations

from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from lastlook import wearer
from lastlook.finding import SourceText
from lastlook.knit import compose
from lastlook.knit.compose import alter
from lastlook.knit.compose.alter.shape.scale import Scale, spread
from lastlook.knit.reading import LeafletReading, SizeReading
from lastlook.quantity import Origin, gauge_of

BODY = {
    "bust_girth": 960,
    "upper_arm_girth": 300,
    "wrist_girth": 160,
    "neck_base_girth": 360,
    "scye_depth": 190,
    "back_waist_length": 400,
    "underarm_length": 440,
    "waist_girth": 780,
    "hip_girth": 1020,
    "waist_to_hip": 210,
}
GAUGES = st.tuples(st.floats(12, 36), st.floats(1.2, 1.5)).map(
    lambda pair: gauge_of(round(pair[0], 1), round(pair[0] * pair[1], 1), Origin.MEASURED)
)


def reading_of(made: compose.Composed, gauge) -> tuple[LeafletReading, SizeReading]:  # type: ignore[no-untyped-def]
    size = SizeReading(made.size, "adds up", made.pieces, made.seams)
    source = SourceText(made.leaflet)
    return LeafletReading(source, made.title, (made.size,), gauge, 1, 1, (), {made.size: size}, ()), size


def design(gauge, opening: str, neck: str) -> compose.Composed:  # type: ignore[no-untyped-def]
    who = wearer.Wearer("her", tuple(wearer.by_tape(name, float(mm)) for name, mm in BODY.items()))
    return compose.design_raglan(who, compose.Asked(gauge, opening, neck))


@settings(max_examples=12, deadline=None, phases=(Phase.generate,))
@given(GAUGES, st.sampled_from(["pullover", "cardigan"]), st.sampled_from(["round", "v"]))
def test_own_gauge_gives_the_piece_back(gauge, opening, neck) -> None:  # type: ignore[no-untyped-def]
    made = design(gauge, opening, neck)
    again = alter.alter(*reading_of(made, gauge), alter.Changes(gauge))
    for old, new in zip(made.pieces, again.pieces, strict=True):
        assert (old.cast_on, old.rows, old.end_stitches) == (new.cast_on, new.rows, new.end_stitches)
    assert all(seam.difference == 0 for seam in again.seams)


@settings(max_examples=25, deadline=None, phases=(Phase.generate,))
@given(GAUGES, GAUGES, st.sampled_from(["pullover", "cardigan"]), st.sampled_from(["round", "v"]), st.data())
def test_another_gauge_keeps_shape_and_seams(first, second, opening, neck, data) -> None:  # type: ignore[no-untyped-def]
    made = design(first, opening, neck)
    longer = {place: data.draw(st.integers(-20, 60)) for place in alter.LONGER}
    changes = alter.Changes(second, longer, {"upper-arm": data.draw(st.integers(0, 60))})
    again = alter.alter(*reading_of(made, first), changes)
    assert again.pieces
    assert all(seam.difference == 0 for seam in again.seams)
    stitch, row = 100 / second.stitches.best, 100 / second.rows.best
    for one in again.measures:
        off = 2.01 * stitch if "width" in one.name else 3.01 * row
        assert abs(one.miss_mm) <= off, one
    for piece in again.pieces:
        for a, b in zip(piece.rows, piece.rows[1:], strict=False):
            assert a.after == b.before
    sums = {piece.name: len(piece.rows) for piece in again.pieces}
    if opening == "cardigan":
        assert abs(sums["Left Front"] - sums["Back"]) <= 1
    else:
        assert sums["Front"] + sums["Front, left side"] - 1 == sums["Back"]


@given(st.integers(1, 300), st.floats(0.4, 2.5))
def test_heights_keep_their_side(rows: int, share: float) -> None:
    assert (Scale(1.0, share).height(rows) - rows) % 2 == 0
    assert abs(Scale(1.0, share).height(rows) - rows * share) <= 1.01


@given(st.lists(st.integers(0, 79), min_size=1, max_size=40, unique=True), st.integers(1, 90), st.integers(40, 160))
def test_spread_places_every_shaping(old: list[int], events: int, rows: int) -> None:
    assert sum(spread(sorted(old), 80, events, rows)) == events
