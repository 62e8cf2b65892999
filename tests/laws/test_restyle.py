"""What holds for every neck, opening and build: the page reads as adding up, or one sentence says why there is none."""

from __future__ import annotations

import pytest

from lastlook import knit, wearer
from lastlook.finding import Finding
from lastlook.knit import compose
from lastlook.knit.compose import alter
from lastlook.quantity import Origin, gauge_of

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
    "waist_girth": 780,
    "hip_girth": 1020,
    "waist_to_hip": 210,
}
STYLES = (
    alter.Style("v"),
    alter.Style("round", 90.0),
    alter.Style(opening="cardigan"),
    alter.Style(opening="pullover"),
    alter.Style("v", None, "cardigan"),
    alter.Style("v", None, "pullover"),
)
GARMENTS = ("raglan-pullover", "raglan-cardigan", "set-in-pullover", "set-in-cardigan", "slipover")


@pytest.mark.parametrize("number", range(len(GARMENTS) * len(STYLES)))
def test_a_front_made_another_adds_up(number: int) -> None:
    name, style = GARMENTS[number // len(STYLES)], STYLES[number % len(STYLES)]
    gauge = gauge_of(20 + number % 4, 28 + number % 5, Origin.MEASURED)
    who = wearer.Wearer("her", tuple(wearer.by_tape(one, float(mm)) for one, mm in BODY.items()))
    reading = knit.read(compose.GARMENTS[name](who, compose.Asked(gauge)).leaflet)
    size = next(iter(reading.by_size.values()))
    made = alter.restyled(size, style, reading.gauge)
    assert not isinstance(made, Finding)
    page = alter.sure(alter.alter(reading, made, alter.Changes()), size)
    assert page.leaflet, page.findings
    fronts = {piece.name for piece in page.pieces if piece.part_of is None and "front" in piece.name.lower()}
    if style.opening == "cardigan" or (style.opening is None and name.endswith("cardigan")):
        assert {"Left front", "Right front"} <= fronts
    else:
        assert "Front" in fronts
    for piece in page.pieces:
        for row, above in zip(piece.rows, piece.rows[1:], strict=False):
            assert row.after == above.before


@pytest.mark.parametrize("name", ["raglan-pullover", "set-in-pullover", "slipover"])
def test_a_pullover_in_the_round_adds_up(name: str) -> None:
    who = wearer.Wearer("her", tuple(wearer.by_tape(one, float(mm)) for one, mm in BODY.items()))
    gauge = gauge_of(22, 30, Origin.MEASURED)
    reading = knit.read(compose.GARMENTS[name](who, compose.Asked(gauge)).leaflet)
    size = next(iter(reading.by_size.values()))
    page = alter.sure(alter.alter(reading, size, alter.Changes(build="round")), size)
    if page.leaflet:
        body = next(piece for piece in page.pieces if piece.name == "Body")
        assert body.end_stitches == 2 * size.pieces[0].rows[dict(size.pieces[0].landmarks)["underarm"] - 1].after
    else:
        assert [one.kind for one in page.findings] == ["constraints-clash"], page.findings
