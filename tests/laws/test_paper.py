"""What holds of every skirt: an alteration and its inverse change nothing, seams that meet meet, files keep pieces."""

from __future__ import annotations

import math
import sys
import time
from collections.abc import Iterator

from hypothesis import assume, given, settings
from hypothesis import strategies as some

from lastlook import paper
from lastlook.finding import Certainty, Finding
from lastlook.geometry import Point, distance_mm, nearest
from lastlook.paper import Drafted, PaperPiece, make
from lastlook.piece import Meets

made = sys.modules["lastlook.paper.alter"]
KINDS = sorted(paper.KINDS)
SAME_MM = 1e-6
measures = some.fixed_dictionaries(
    {
        "waist_girth": some.floats(520, 1100),
        "hip_girth": some.floats(800, 1250),
        "waist_to_hip": some.floats(150, 250),
        "waist_to_knee": some.floats(500, 620),
    }
)
options = some.fixed_dictionaries({"length_mm": some.floats(450, 1000), "ease_waist_mm": some.floats(5, 40)})


def drafted_of(kind: str, body: dict[str, float], wishes: dict[str, float]) -> Drafted:
    drafted = paper.draft(kind, body, wishes)
    assume(drafted.pieces)
    return drafted


@some.composite
def pieces(draw: some.DrawFn) -> PaperPiece:
    drafted = drafted_of(draw(some.sampled_from(KINDS)), draw(measures), draw(options))
    return draw(some.sampled_from([one for one in drafted.pieces if one.role == "skirt"]))


@some.composite
def altered_pieces(draw: some.DrawFn) -> PaperPiece:
    piece = draw(pieces())
    for _ in range(draw(some.integers(0, 2))):
        after = draw(alterations(piece)).apply(piece)
        piece = piece if isinstance(after, Finding) else after
    return piece


def alterations(piece: PaperPiece) -> some.SearchStrategy[paper.Alteration]:
    name = some.just(piece.name)
    by = some.floats(-25, 25).map(lambda mm: round(mm, 2))
    dart = some.integers(1, max(1, len(piece.darts)))
    tip = piece.darts[0].point if piece.darts else (60.0, 0.0)
    return some.one_of(
        some.builds(made.Lengthen, name, by, some.sampled_from(["hem", "line"])),
        some.builds(made.Widen, name, by, some.sampled_from(["waist", "high hip", "hip", "hem", "hip and hem", "all"])),
        some.builds(made.Flare, name, by),
        some.builds(made.RaiseWaist, name, by),
        some.builds(made.TiltWaist, name, by, some.sampled_from(["centre", "side"])),
        some.builds(made.SwayBack, by, name),
        some.builds(made.FullSeat, by, name),
        some.builds(made.FullAbdomen, by, name),
        some.builds(made.HighHip, by, some.sampled_from(["left side", "right side"]), name),
        some.builds(made.Allowance, name, by, some.sampled_from(["side", "hem", "waist"])),
        some.builds(made.DartWidth, name, by, dart),
        some.builds(made.DartLength, name, by, dart),
        some.builds(made.DartMove, name, by, dart),
        some.builds(made.DartSplit, name, dart, some.floats(15, 60)),
        some.builds(made.DartJoin, name, some.just(1)),
        some.builds(made.DartRemove, name, dart, some.sampled_from(["ease", "side"])),
        some.builds(made.Spread, name, by, some.just(tip), some.just((tip[0] + 20, -600.0))),
        some.builds(made.Unfold, name),
    )


def spots(piece: PaperPiece) -> Iterator[Point]:
    yield from piece.seam_line.points(2.0)
    for dart in piece.darts:
        yield from (dart.first, dart.point, dart.second)
    yield from (notch.point for notch in piece.notches)
    yield from piece.grain


def apart_mm(a: PaperPiece, b: PaperPiece) -> float:
    """Return the most that two pieces differ by, outline against outline and mark against mark."""
    marks = [list(spots(one))[len(one.seam_line.points(2.0)) :] for one in (a, b)]
    assert len(marks[0]) == len(marks[1])
    worst = max((distance_mm(x, y) for x, y in zip(*marks, strict=True)), default=0.0)
    for one, other in ((a, b), (b, a)):
        line = other.seam_line
        worst = max([worst, *(exactly(line, spot) for spot in one.seam_line.points(40.0))])
    return worst


def exactly(line: object, spot: Point) -> float:
    away: float = nearest(line, spot).away_mm  # type: ignore[arg-type]
    return 0.0 if away < 2e-6 else away


@given(some.data())
@settings(max_examples=80, deadline=None)
def test_an_alteration_and_its_inverse_change_nothing(data: some.DataObject) -> None:
    piece = data.draw(altered_pieces())
    alteration = data.draw(alterations(piece))
    after = alteration.apply(piece)
    assume(not isinstance(after, Finding))
    back = alteration.inverse(piece).apply(after)
    assert not isinstance(back, Finding), f"{alteration} went and did not come back: {back.say}"
    assert [side.name for side in back.sides] == [side.name for side in piece.sides] or "unfold" in str(
        alteration
    ).lower()
    for old in piece.sides:
        new = back.side(old.name)
        assert new is not None and abs(new.sewn_mm - old.sewn_mm) < SAME_MM
        assert new.allowance_mm == old.allowance_mm or math.isclose(new.allowance_mm, old.allowance_mm)
        for one, other in zip(old.darts, new.darts, strict=True):
            assert distance_mm(one.point, other.point) < SAME_MM
            assert distance_mm(one.first, other.first) < SAME_MM and distance_mm(one.second, other.second) < SAME_MM
    assert apart_mm(piece, back) < SAME_MM


@given(some.data())
@settings(max_examples=40, deadline=None)
def test_an_alteration_is_written_and_read_back(data: some.DataObject) -> None:
    alteration = data.draw(alterations(data.draw(pieces())))
    assert paper.read_alteration(paper.write_alteration(alteration)) == alteration


@some.composite
def bodies(draw: some.DrawFn) -> dict[str, float]:
    """Return bodies of every sort: hips smaller than the waist or far larger, short and long ones."""
    waist = draw(some.floats(500, 1500))
    body = {"waist_girth": waist, "hip_girth": max(500.0, waist + draw(some.floats(-200, 450)))}
    body |= {"waist_to_hip": draw(some.floats(120, 280)), "waist_to_knee": draw(some.floats(400, 700))}
    return body


@given(some.sampled_from(KINDS), bodies(), options)
@settings(max_examples=80, deadline=None)
def test_what_is_drafted_meets_and_has_the_girths_asked_for(
    kind: str, body: dict[str, float], wishes: dict[str, float]
) -> None:
    drafted = drafted_of(kind, body, wishes)
    for seam in drafted.seams:
        assert seam.meets in (Meets.EXACTLY, Meets.ON_PURPOSE), f"{seam.mate.a}: {seam.difference}"
        assert seam.meets is Meets.ON_PURPOSE or abs(seam.difference) <= 0.1
    assert not [one for one in paper.true(drafted) if one.certainty is Certainty.PROVEN]
    waist = drafted.girths_mm["waist"]
    assert waist is not None and abs(waist - body["waist_girth"] - wishes["ease_waist_mm"]) < 0.1
    if kind in ("straight", "a-line", "gored"):
        hip, ease = drafted.girths_mm["hip"], {"a-line": 63.5}.get(kind, 50.8)
        assert hip is not None and abs(hip - body["hip_girth"] - ease) < 0.5
    for piece in drafted.pieces:
        assert piece.seam_line.is_closed() and piece.seam_line.area_mm2() > 0
        assert piece.cut_line.area_mm2() >= piece.seam_line.area_mm2() - 1
        for dart in piece.darts:
            assert abs(dart.legs_mm[0] - dart.legs_mm[1]) < 1e-6


@given(some.floats(560, 900), some.floats(-60, 60))
@settings(max_examples=25, deadline=None)
def test_every_cure_that_is_offered_closes_the_waist(waist_mm: float, off_mm: float) -> None:
    assume(abs(off_mm) > 0.2)
    body = {"waist_girth": waist_mm, "hip_girth": waist_mm + 240, "waist_to_hip": 200}
    drafted = paper.draft("a-line", body, {"length_mm": 620, "band_mm": waist_mm + 19.05 + off_mm})
    for finding in paper.true(drafted, "sewing.skirt."):
        for cure in finding.cures:
            steps = [paper.read_alteration(dict(edit.value)) for edit in cure.edits if isinstance(edit.value, tuple)]
            after = paper.alter(drafted, [step for step in steps if not isinstance(step, Finding)])
            assert all(seam.meets is not Meets.NO for seam in after.seams), cure.say
            before, now = drafted.girths_mm["hip"], after.girths_mm["hip"]
            assert before is not None and now is not None and abs(before - now) < 0.01


@given(pieces())
@settings(max_examples=40, deadline=None)
def test_a_piece_comes_back_from_its_file(piece: PaperPiece) -> None:
    taken = paper.read_svg(paper.write_svg(piece))
    assert not taken.findings
    (back,) = taken.pieces
    assert (back.name, back.quantity, back.mirrored_pair, back.fold_edge) == (
        piece.name,
        piece.quantity,
        piece.mirrored_pair,
        piece.fold_edge,
    )
    assert apart_mm(piece, back) < 0.01


@given(some.text(max_size=300))
def test_any_text_is_read_as_a_drawing_or_refused(text: str) -> None:
    taken = paper.read_svg(text)
    assert taken.findings or taken.outlines or taken.pieces


def test_an_alteration_redraws_everything_in_50_ms() -> None:
    body = {"waist_girth": 710, "hip_girth": 970, "waist_to_hip": 200}
    drafted = paper.draft("a-line", body, {"length_mm": 620, "lining": 1, "belt": 1})
    steps = (made.Widen("all", 5, "hip"), made.Lengthen("all", 20), made.DartWidth("Front", 3))
    best = min(_redrawn_s(drafted, steps) for _ in range(5))
    assert best < 0.05


def _redrawn_s(drafted: Drafted, steps: tuple[paper.Alteration, ...]) -> float:
    start = time.perf_counter()
    after = paper.alter(drafted, steps)
    assert after.girths_mm and after.seams and all(piece.cut_line for piece in after.pieces)
    return time.perf_counter() - start


@given(some.floats(0, 40))
@settings(max_examples=20, deadline=None)
def test_side_allowances_grow_as_far_as_the_cloth_goes_and_no_further(spare_mm: float) -> None:
    body = {"waist_girth": 710.0, "hip_girth": 970.0, "waist_to_hip": 200.0}
    drafted = paper.draft("a-line", body, {"length_mm": 620})
    side = drafted.pieces[0].side("side")
    assert side is not None
    most = side.allowance_mm + spare_mm

    def lies(one: Drafted) -> bool:
        edge = one.pieces[0].side("side")
        return edge is not None and edge.allowance_mm <= most + 1e-9

    wider = make.widest_sides_mm(drafted, lies)
    assert lies(make.with_wider_sides(drafted, wider))
    assert min(spare_mm, 25.0) - 1.0 <= wider <= min(spare_mm, 25.0) + 1e-9
