"""Pieces from files that others made: DXF of several years, SVG with units and transforms, tables, tracings."""

from __future__ import annotations

import io
import math
import random

import ezdxf
import pytest

from lastlook import paper
from lastlook.finding import Finding
from lastlook.geometry import Line, Path, at, nearest, polygon
from lastlook.paper import PaperPiece, take

TRAPEZE = [(0.0, 0.0), (200.0, 0.0), (180.0, 500.0), (0.0, 500.0)]
BODY = {"waist_girth": 710.0, "hip_girth": 970.0, "waist_to_hip": 200.0}


def dxf(version: str, unit: int) -> str:
    drawing = ezdxf.new(version)
    drawing.header["$INSUNITS"] = unit
    drawing.modelspace().add_polyline2d(TRAPEZE, close=True, dxfattribs={"layer": "1"})
    out = io.StringIO()
    drawing.write(out)
    return out.getvalue()


@pytest.mark.parametrize("version", ["R2000", "R2004", "R2007", "R2010", "R2013", "R2018"])
@pytest.mark.parametrize("unit, mm", [(4, 1.0), (5, 10.0), (1, 25.4)])
def test_dxf_of_many_years_comes_in_at_true_size(version: str, unit: int, mm: float) -> None:
    (outline,) = take.read_dxf(dxf(version, unit)).outlines
    assert outline.layer == "cut"
    assert outline.path.area_mm2() == pytest.approx(95_000 * mm * mm)


def test_dxf_of_splines_arcs_and_blocks_is_followed_and_joined() -> None:
    drawing = ezdxf.new("R2010")
    drawing.header["$INSUNITS"] = 4
    space = drawing.modelspace()
    space.add_line((300, 0), (400, 0))
    space.add_arc((400, 0), 100, 90, 180)
    space.add_line((400, 0), (400, 100))
    block = drawing.blocks.new("PIECE")
    block.add_lwpolyline(TRAPEZE, close=True)
    space.add_blockref("PIECE", (1000, 0))
    space.add_circle((700, 0), 50)
    out = io.StringIO()
    drawing.write(out)
    areas = sorted(one.path.area_mm2() for one in take.read_dxf(out.getvalue()).closed)
    assert areas == pytest.approx([math.pi * 2500, math.pi * 2500, 95_000], rel=1e-3)


def test_a_block_of_the_apparel_convention_is_one_piece_with_its_marks() -> None:
    """Layers 1, 4, 6, 7 and 14 of ASTM D6673-10: boundary, notches, mirror line, grain, sew line."""
    drawing = ezdxf.new("R12")
    block = drawing.blocks.new("Front")
    seam = [(0.0, 0.0), (8.0, 0.0), (7.0, 20.0), (0.0, 20.0)]
    block.add_polyline2d([(0.0, -2.0), (8.6, -2.0), (7.4, 20.6), (0.0, 20.6)], close=True, dxfattribs={"layer": "1"})
    block.add_polyline2d(seam, close=True, dxfattribs={"layer": "14"})
    block.add_line((4, 5), (4, 15), dxfattribs={"layer": "7"})
    block.add_line((0, 0), (0, 20), dxfattribs={"layer": "6"})
    block.add_point((7.9, 12), dxfattribs={"layer": "4"})
    block.add_text("Units: ENGLISH", dxfattribs={"layer": "1"})
    drawing.modelspace().add_blockref("Front", (0, 0))
    out = io.StringIO()
    drawing.write(out)
    taken = take.read_dxf(out.getvalue())
    (outline,) = taken.outlines
    assert (outline.name, outline.layer, taken.findings) == ("Front", "seam", ())
    piece = take.piece_of(outline, take.Naming("Front"))
    assert not isinstance(piece, Finding)
    assert piece.fold_edge == "centre" and piece.grain == ((4 * 25.4, 5 * 25.4), (4 * 25.4, 15 * 25.4))
    widths = {side.name: round(side.allowance_mm / 25.4, 1) for side in piece.sides}
    assert widths == {"hem": 2.0, "side": 0.5, "waist": 0.6, "centre": 0.0}
    (notch,) = piece.notches
    assert notch.edge == "side" and piece.notch_mm(notch) == pytest.approx(12 * 25.4, abs=3)


@pytest.mark.parametrize("kind", ["a-line", "gored", "half-circle", "gathered"])
def test_pieces_go_out_as_dxf_and_come_back(kind: str) -> None:
    drafted = paper.draft(kind, BODY, {"length_mm": 620})
    text = take.write_dxf(drafted.pieces)
    assert isinstance(text, str)
    outlines = {one.name: one for one in take.read_dxf(text).closed}
    for piece in drafted.pieces:
        line = outlines[piece.name].path
        for side in piece.sides:
            for part in side.parts:
                assert max(nearest(line, spot).away_mm for spot in part.points(0.5)) < 0.01
        made = take.piece_of(outlines[piece.name], take.Naming(piece.name))
        assert not isinstance(made, Finding)
        again = take.write_dxf([made])
        assert isinstance(again, str)
        (back,) = take.read_dxf(again).closed
        assert max(nearest(line, spot).away_mm for spot in back.path.points(1.0)) < 0.01
        assert made.fold_edge == piece.fold_edge
        assert [round(dart.intake_mm, 2) for dart in made.darts] == [round(dart.intake_mm, 2) for dart in piece.darts]


def drawn_front() -> tuple[PaperPiece, Path]:
    """Return a front, and its outline as others draw it: no names, darts as notches cut into the waist."""
    front = paper.draft("a-line", BODY, {"length_mm": 620}).pieces[0]
    segments = []
    for side in front.sides:
        for number, part in enumerate(side.parts):
            segments += part.segments
            if number < len(side.darts):
                dart = side.darts[number]
                segments += [Line(dart.first, dart.point), Line(dart.point, dart.second)]
    return front, Path(tuple(segments))


def test_a_nameless_outline_is_named_and_keeps_its_darts() -> None:
    front, line = drawn_front()
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" width="50cm" height="100cm" viewBox="0 -200 1000 2000">'
        f'<g transform="scale(2) translate(40 60)"><path d="{take.path_text(line)}"/></g></svg>'
    )
    outline = take.read_svg(svg).closed[0]
    piece = take.piece_of(outline, take.Naming("Front", fold="centre", depths_mm={"hip": 200.0}))
    assert not isinstance(piece, Finding)
    for side in front.sides:
        found = piece.side(side.name)
        assert found is not None and found.sewn_mm == pytest.approx(side.sewn_mm, abs=0.01)
    assert [dart.intake_mm for dart in piece.darts] == pytest.approx([dart.intake_mm for dart in front.darts], abs=0.01)
    assert piece.fold_edge == "centre"


def test_allowances_are_taken_off_a_cutting_line() -> None:
    front = paper.draft("a-line", BODY, {"length_mm": 620}).pieces[0]
    outline = take.Outline(front.cut_line)
    naming = take.Naming("Front", take.Drawn.CUT, fold="centre", allowances_mm={"hem": 50.8})
    piece = take.piece_of(outline, naming)
    assert not isinstance(piece, Finding)
    for name in ("centre", "hem", "side"):
        old, new = front.side(name), piece.side(name)
        assert old is not None and new is not None and new.sewn_mm == pytest.approx(old.sewn_mm, abs=0.1)


def test_a_table_of_points_says_its_unit_or_is_asked() -> None:
    told = take.read_table("unit: cm\npiece: Front\n0 0\n20,5 0\n20 60\n0; 60\n")
    assert (told.outlines[0].name, told.outlines[0].path.area_mm2()) == ("Front", pytest.approx(121_500))
    assert [one.kind for one in take.read_table("1 2\n3 4\n5 9").findings] == ["scale-assumed"]


def test_the_noise_of_a_tracing_is_smoothed_within_half_a_millimetre() -> None:
    chance = random.Random(1)
    line = polygon(TRAPEZE)
    raw = [
        (x + chance.gauss(0, 0.3), y + chance.gauss(0, 0.3)) for x, y in (at(line, step / 60) for step in range(240))
    ]
    (outline,) = take.traced(raw).outlines
    assert outline.path.area_mm2() == pytest.approx(95_000, rel=0.002)
    assert take.guess(take.runs_of(outline.path)) == ("hem", "side", "waist", "centre")


HOSTILE = [
    '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hosts">]><svg xmlns="http://www.w3.org/2000/svg">&x;</svg>',
    "<svg>" + "<g>" * 1_000_000,
    "",
    "\x00\x01",
    '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0 ' + "L1 1 " * 1_000_000 + '"/></svg>',
    '<svg><path d="M0 0 L nan 3 zz"/></svg>',
    '<svg><g id="a"><use href="#a"/><use href="#a"/><use href="#a"/><use href="#a"/></g></svg>',
    "<html/>",
    '<svg width="1e400mm"><path d="M0 0 L1e308 3 L1e309 4 Z"/></svg>',
]


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
@pytest.mark.timeout(5)
def test_a_hostile_drawing_is_one_clear_finding(text: str) -> None:
    taken = take.read_svg(text)
    assert [one.kind for one in taken.findings] == ["pieces-unread"]
    assert not taken.outlines and not taken.pieces


def test_scripts_and_events_are_refused() -> None:
    for what in ('<script>go()</script><path d="M0 0 H9 V9 Z"/>', '<path onload="go()" d="M0 0 H9 V9 Z"/>'):
        taken = take.read_svg(f'<svg width="9mm" viewBox="0 0 9 9">{what}</svg>')
        assert not taken.outlines and [one.kind for one in taken.findings] == ["pieces-unread"]
