"""What is composed, read by the reader, which shares no code with the composer: every page adds up, word for word."""

from __future__ import annotations

import pytest

from lastlook import knit, wearer
from lastlook.knit import compose
from lastlook.outfit.garment.knitted_shape import girth_at_underarm, heights, is_whole
from lastlook.quantity import Missing, Origin, gauge_of

BODY = {
    "bust_girth": 960,
    "upper_arm_girth": 300,
    "wrist_girth": 160,
    "neck_base_girth": 360,
    "scye_depth": 190,
    "back_waist_length": 400,
    "underarm_length": 440,
    "back_width": 360,
    "centre_back_to_wrist": 780,
    "head_girth": 560,
    "hand_girth": 190,
    "hand_length": 180,
    "foot_length": 245,
    "ball_girth": 230,
    "waist_girth": 780,
    "hip_girth": 1020,
    "waist_to_hip": 210,
}
PAIRS = [
    ("raglan-pullover", "round"),
    ("raglan-cardigan", "v"),
    ("neck-down-pullover", "round"),
    ("neck-down-cardigan", "v"),
    ("hem-up-pullover", "v"),
    ("hem-up-cardigan", "round"),
    ("set-in-cardigan", "round"),
    ("drop-shoulder-pullover", "round"),
    ("slipover", "v"),
    ("hat", "round"),
    ("mittens", "round"),
    ("socks", "round"),
]


@pytest.mark.parametrize(("name", "neck"), PAIRS)
def test_a_composed_page_adds_up(name: str, neck: str) -> None:
    who = wearer.Wearer("her", tuple(wearer.by_tape(one, float(mm)) for one, mm in BODY.items()))
    gauge = gauge_of(20, 28, Origin.MEASURED)
    made = compose.GARMENTS[name](who, compose.Asked(gauge, neck=neck))
    reading = knit.read(made.leaflet)
    assert [size.verdict for size in reading.by_size.values()] == ["adds up"], reading.findings[:2]
    words = [reading.source.words(span) for span in reading.not_understood]
    assert not words
    read = {piece.name.lower().rstrip("s"): piece for size in reading.by_size.values() for piece in size.pieces}
    for piece in made.pieces:
        if piece.part_of is None:
            assert read[piece.name.lower().rstrip("s")].cast_on == piece.cast_on


@pytest.mark.parametrize("name", ["neck-down-pullover", "neck-down-cardigan", "hem-up-pullover", "hem-up-cardigan"])
def test_a_garment_in_one_piece_is_judged_round_the_body(name: str) -> None:
    """The girths that an outfit reads off the page are those that were composed, no seam taken from them."""
    who = wearer.Wearer("her", tuple(wearer.by_tape(one, float(mm)) for one, mm in BODY.items()))
    gauge = gauge_of(20, 28, Origin.MEASURED)
    made = compose.GARMENTS[name](who, compose.Asked(gauge))
    (size,) = knit.read(made.leaflet).by_size.values()
    shapes = {piece.name: found for piece in size.pieces if (found := heights(piece)) is not None}
    whole = next(shape for shape in shapes.values() if is_whole(shape.piece))
    girth = girth_at_underarm([whole], gauge)
    assert not isinstance(girth, Missing)
    wanted = {one.name: one.gets_mm for one in made.measures}
    band = 0.0 if "pullover" in name else 25.0 - gauge.width_mm(2).best
    assert girth.best + band == pytest.approx(wanted["bust girth"])
    assert shapes["Sleeve"].width(gauge, 2).best == pytest.approx(wanted["upper sleeve girth"])


def test_the_rows_beside_a_neck_lie_folded_with_their_yoke() -> None:
    """A yoke's first rows go back and forth on what is a tube: they lie in two layers like its rounds."""
    who = wearer.Wearer("her", tuple(wearer.by_tape(one, float(mm)) for one, mm in BODY.items()))
    gauge = gauge_of(20, 28, Origin.MEASURED)
    (yoke, _) = compose.GARMENTS["neck-down-pullover"](who, compose.Asked(gauge)).pieces
    outline = knit.outline(yoke, gauge)
    assert outline is not None and yoke.cast_on
    at_neck = [x for x, y in outline.points() if abs(y) < 1e-6]
    assert max(at_neck) - min(at_neck) == pytest.approx(gauge.width_mm(yoke.cast_on / 2).best)
