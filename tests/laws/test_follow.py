"""What hangs on a skirt follows it: facing, lining, band, belt and their marks, whatever was altered."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from lastlook import paper
from lastlook.paper import Drafted, PaperPiece
from lastlook.piece import Meets

BODY = {"waist_girth": 710.0, "hip_girth": 970.0, "waist_to_hip": 200.0}
KINDS = ("straight", "a-line", "gored")
CHANGES = (
    "widen piece=all by={}mm at=waist",
    "widen piece=all by={}mm at=hip",
    "widen piece=all by={}mm at=all",
    "raise-waist piece=all by={}mm",
    "lengthen piece=all by={}mm",
    "flare piece=all by={}mm",
)
CENTRED = ("full-seat by={}mm", "full-abdomen by={}mm", "sway-back by={}mm", "dart-width piece=Back by={}mm")
amounts = some.floats(-12, 12).map(lambda mm: round(mm, 1))


def altered(kind: str, parts: str, lines: list[str]) -> tuple[Drafted, Drafted]:
    plain = paper.draft(kind, BODY, {"length_mm": 620.0, **dict.fromkeys(parts.split(), 1.0)})
    steps = [paper.read_words(line) for line in lines]
    return plain, paper.alter(plain, [step for step in steps if not hasattr(step, "certainty")])  # type: ignore[misc]


def waist_mm(one: PaperPiece | None) -> float:
    waist = one.side("waist") if one else None
    assert waist is not None
    return waist.sewn_mm


@some.composite
def changes(draw: some.DrawFn) -> tuple[str, list[str]]:
    kind = draw(some.sampled_from(KINDS))
    words = CHANGES if kind == "gored" else CHANGES + CENTRED
    return kind, [draw(some.sampled_from(words)).format(draw(amounts)) for _ in range(draw(some.integers(1, 3)))]


@given(changes())
@settings(max_examples=40, deadline=None)
def test_band_and_belt_follow_the_top(asked: tuple[str, list[str]]) -> None:
    plain, after = altered(asked[0], "belt", asked[1])
    top = [seam for seam in after.seams if seam.mate.b.piece == "Waistband"]
    assert [seam.meets for seam in top] == [Meets.EXACTLY]
    grew = (after.girths_mm["waist"] or 0) - (plain.girths_mm["waist"] or 0)
    belts = [one.sides[0].sewn_mm for set_ in (plain, after) if (one := set_.piece("Belt"))]
    assert belts[1] - belts[0] == pytest.approx(grew, abs=1e-6)
    band = after.piece("Waistband")
    assert band is not None
    spots = [notch.point[0] for notch in band.notches if notch.edge == "waist"]
    assert spots == sorted(spots) and spots[0] > 0 and spots[-1] < waist_mm(band)


@given(changes())
@settings(max_examples=40, deadline=None)
def test_lining_and_facing_keep_the_waist_of_their_piece(asked: tuple[str, list[str]]) -> None:
    _, after = altered(asked[0], "facing lining", asked[1])
    for piece in [one for one in after.pieces if one.role == "skirt"]:
        assert waist_mm(after.piece(f"{piece.name} lining")) == pytest.approx(waist_mm(piece), abs=0.01)
        assert waist_mm(after.piece(f"{piece.name} facing")) == pytest.approx(waist_mm(piece), abs=0.01)


@given(some.sampled_from(CENTRED[:3]), amounts, some.sampled_from(["a-line", "straight"]))
@settings(max_examples=30, deadline=None)
def test_a_change_for_the_figure_leaves_waist_and_side_seam_as_they_are(line: str, by: float, kind: str) -> None:
    plain, after = altered(kind, "", [line.format(by)])
    assert all(seam.meets is Meets.EXACTLY for seam in after.seams)
    name = "Front" if "abdomen" in line else "Back"
    old, new = plain.piece(name), after.piece(name)
    assert waist_mm(new) == pytest.approx(waist_mm(old), abs=1e-6)
    assert old is not None and new is not None
    grew = {side.name: new.side(side.name).sewn_mm - side.sewn_mm for side in old.sides}  # type: ignore[union-attr]
    assert grew["centre"] == pytest.approx(-by if "sway" in line else by, abs=1e-6)
    assert grew["side"] == pytest.approx(0, abs=1e-6)
    wider = 0 if "sway" in line else by
    assert (after.girths_mm["hip"] or 0) - (plain.girths_mm["hip"] or 0) == pytest.approx(wider, abs=1e-6)


def test_a_band_that_is_there_already_stays() -> None:
    plain = paper.draft("a-line", BODY, {"length_mm": 620.0, "band_mm": 729.05})
    step = paper.read_words("widen piece=all by=5mm at=waist")
    assert not hasattr(step, "certainty")
    after = paper.alter(plain, [step])  # type: ignore[list-item]
    assert waist_mm(after.piece("Waistband")) == waist_mm(plain.piece("Waistband"))
    assert [seam.meets for seam in after.seams] == [Meets.EXACTLY, Meets.NO]
