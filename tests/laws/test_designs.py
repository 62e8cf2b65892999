"""Whatever is designed for any body reads as adding up, every word understood: kind, neck, sleeve, edge, gauge, ease.

The reader shares no code with the writer, so that each example is proven by a stranger.
"""

from __future__ import annotations

from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from lastlook import knit, wearer
from lastlook.finding import Finding
from lastlook.knit import compose
from lastlook.knit.compose.bands.holes import holes_for
from lastlook.knit.compose.garments import IN_PIECES
from lastlook.knit.worked import Ended, WorkedPiece
from lastlook.piece import Meets
from lastlook.quantity import Origin, gauge_of

SMALL = ("hat", "mittens", "socks")
LACE = """Multiple of 8 plus 1.
Row 1 (right side): K 1, * yo, k 2, sl 1, k 2 tog, psso, k 2, yo, k 1; repeat from * to end.
Row 2: Purl.
"""
BASKET = "Multiple of 4\nRow 1: * K 2, p 2; repeat from * to end.\nRow 2: * P 2, k 2; repeat from * to end."
SLEEVELESS = ("set-in-pullover", "set-in-cardigan", "drop-shoulder-pullover", "drop-shoulder-cardigan", "slipover")


@st.composite
def bodies(draw: st.DrawFn) -> wearer.Wearer:
    bust = draw(st.integers(700, 1500))
    share = draw(st.integers(27, 36)) / 100
    measures = {
        "bust_girth": bust,
        "waist_girth": bust * draw(st.integers(75, 95)) / 100,
        "hip_girth": bust * draw(st.integers(95, 115)) / 100,
        "waist_to_hip": 210,
        "upper_arm_girth": bust * share,
        "elbow_girth": bust * share * 0.88,
        "wrist_girth": draw(st.integers(140, 195)),
        "neck_base_girth": draw(st.integers(310, 430)),
        "scye_depth": draw(st.integers(160, 240)),
        "back_waist_length": draw(st.integers(330, 450)),
        "underarm_length": draw(st.integers(370, 500)),
        "back_width": bust * 0.38,
        "centre_back_to_wrist": draw(st.integers(720, 860)),
        "head_girth": draw(st.integers(500, 620)),
        "hand_girth": draw(st.integers(165, 220)),
        "foot_length": draw(st.integers(210, 280)),
        "ball_girth": draw(st.integers(205, 270)),
        "hand_length": draw(st.integers(155, 205)),
    }
    return wearer.Wearer("her", tuple(wearer.by_tape(name, float(mm)) for name, mm in measures.items()))


@st.composite
def wishes(draw: st.DrawFn, name: str) -> compose.Asked:
    stitches = draw(st.integers(120, 340)) / 10
    gauge = gauge_of(stitches, round(stitches * draw(st.integers(120, 150)) / 100, 1), Origin.MEASURED)
    edging = compose.edging_of(
        draw(st.sampled_from(["rib", "garter", "2x2", "3x2", *([] if name in SMALL else ["hem"])]))
    )
    texture = compose.texture_of(draw(st.sampled_from([LACE, BASKET])))
    assert isinstance(edging, compose.Edging) and isinstance(texture, compose.Texture)
    return compose.Asked(
        gauge,
        neck=draw(st.sampled_from(["round", "v"])),
        sleeve=draw(st.sampled_from(["long", "three-quarter", "short", *(["none"] if name in SLEEVELESS else [])])),
        edging=edging,
        ease=compose.EASE[draw(st.sampled_from(sorted(compose.EASE)))],
        crochet_per_10cm=draw(st.sampled_from([None, None, 18.0])),
        texture=draw(st.sampled_from([None, None, texture])) if name in IN_PIECES else None,
        buttons=draw(
            st.sampled_from([None, compose.Buttons(15.0), compose.Buttons(22.0, 6), compose.Buttons(12.0, 9)])
        ),
    )


def _ribbed(piece: WorkedPiece) -> int:
    """Return the rows of a rib, with the one that evens its count out."""
    return sum(row.structure.startswith("rib") or row.structure == "evened" for row in piece.rows)


@given(
    st.integers(20, 300),
    st.floats(1.0, 4.0),
    st.integers(2, 8),
    st.one_of(st.none(), st.builds(compose.Buttons, st.floats(8, 40), st.one_of(st.none(), st.integers(1, 15)))),
    st.one_of(st.none(), st.floats(0, 900)),
)
def test_buttonholes_lie_within_their_band(stitches, per_mm, wide, buttons, bust_mm) -> None:  # type: ignore[no-untyped-def]
    holes = holes_for(stitches, per_mm / 10, wide, buttons, bust_mm)
    if isinstance(holes, Finding):
        assert holes.kind == "constraints-clash"
        return
    gaps = holes.gaps
    assert holes.before + holes.after + sum(gaps) + wide * len(holes.starts) == stitches
    assert min(holes.before, holes.after) >= 3
    assert not gaps or min(gaps) >= 2
    if buttons and buttons.count:
        assert len(holes.starts) == buttons.count
    if holes.at_bust is not None and bust_mm is not None:
        assert abs(holes.starts[holes.at_bust] + wide / 2 - bust_mm * per_mm / 10) <= 1


@settings(max_examples=100, deadline=None, derandomize=True, phases=(Phase.generate,))
@given(bodies(), st.sampled_from(sorted(compose.GARMENTS)), st.data())
def test_every_design_adds_up(who: wearer.Wearer, name: str, data: st.DataObject) -> None:
    made = compose.GARMENTS[name](who, data.draw(wishes(name)))
    if not made.leaflet:
        assert any(one.kind == "constraints-clash" for one in made.findings), made.findings
        return
    reading = knit.read(made.leaflet)
    assert {size.verdict for size in reading.by_size.values()} == {"adds up"}, made.leaflet
    assert not [reading.source.words(span) for span in reading.not_understood], made.leaflet
    assert all(seam.meets is not Meets.NO for seam in made.seams)
    read = {piece.name.lower().rstrip("s"): piece for size in reading.by_size.values() for piece in size.pieces}
    for piece in made.pieces:
        if piece.part_of is None:
            there = read[piece.name.lower().rstrip("s")]
            assert there.cast_on == piece.cast_on
            if any(row.structure.startswith("rib") for row in piece.rows):
                assert _ribbed(there) == _ribbed(piece), made.leaflet
            if not any(one.part_of == piece.name for one in made.pieces):
                last = -1 if piece.ended is Ended.FASTENED_OFF else None
                assert [row.after for row in there.rows] == [row.after for row in piece.rows][:last], made.leaflet
            for row, following in zip(piece.rows, piece.rows[1:], strict=False):
                assert row.after == following.before
