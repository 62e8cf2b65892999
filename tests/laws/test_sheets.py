"""What holds of every sheet: no row is lost, no part of a piece is off its tiles, any words can be printed."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pypdfium2
from hypothesis import given, settings
from hypothesis import strategies as st

from lastlook import knit, sheet, wearer
from lastlook.finding import Span
from lastlook.geometry import Path
from lastlook.knit import Side, WorkedRow, compose
from lastlook.lay import LeftOver
from lastlook.quantity import Gauge, Units
from lastlook.sheet.draw.spread_out import Onto
from lastlook.sheet.knitting import gather
from lastlook.sheet.layout.flow import pages as flowed
from lastlook.sheet.layout.flow import paragraph
from lastlook.sheet.layout.frame import Framing
from lastlook.sheet.mark import Face, Style
from lastlook.sheet.tile import fields, window_of
from lastlook.sheet.type import printable, width_mm, wrap
from lastlook.stock import read_gauge
from tests.areas import sheet_samples
from tests.areas.sheet import rectangle

WORDS = st.sampled_from(["K.", "P.", "K2, yo, k2tog.", "K2, ssk, k to end."])
SIDE = st.floats(20, 1500)


def _row(number: int, words: str) -> WorkedRow:
    side = Side.RIGHT if number % 2 else Side.WRONG
    return WorkedRow(number, side, 40, 40, 40, 40, (), Span(0, 0), "lace", words)


@given(st.lists(WORDS, min_size=1, max_size=60))
@settings(deadline=None)
def test_gathered_lines_are_all_rows_in_order(words: list[str]) -> None:
    rows = tuple(_row(number, said) for number, said in enumerate(words, 1))
    lines = gather(rows)
    assert tuple(row for line in lines for row in line.rows) == rows


@given(st.lists(WORDS, min_size=1, max_size=60))
@settings(deadline=None)
def test_what_comes_again_has_the_words_of_what_was_said(words: list[str]) -> None:
    rows = tuple(_row(number, said) for number, said in enumerate(words, 1))
    for line in gather(rows):
        if line.like is None:
            assert line.words == line.rows[0].words
            continue
        first, last = line.like
        block = rows[first - 1 : last]
        assert len(line.rows) == len(block) * line.times
        for spot, row in enumerate(line.rows):
            assert row.words == block[spot % len(block)].words


def _along(path: Path, way: Onto) -> list[tuple[float, float]]:
    """Return points all along an outline, where it lies in its field, none farther than 3 mm from the next."""
    out = []
    for segment in path.segments:
        steps = int(segment.length_mm() / 3) + 1
        out += [way.point(segment.at(step / steps)) for step in range(steps)]
    return out


@given(st.lists(st.tuples(SIDE, SIDE), min_size=1, max_size=6), st.sampled_from(list(sheet.Paper)))
@settings(max_examples=40, deadline=None)
def test_every_point_of_a_piece_is_on_a_tile_that_is_printed(
    sizes: list[tuple[float, float]], paper: sheet.Paper
) -> None:
    window = window_of(paper)
    pieces = tuple(rectangle(f"Piece {spot}", *size) for spot, size in enumerate(sizes))
    laid = fields(pieces, window)
    assert sorted(one.piece.name for field in laid for one in field.placed) == sorted(one.name for one in pieces)
    for field in laid:
        for one in field.placed:
            for x, y in _along(one.piece.cut_line, one.way):
                assert 0 <= x <= field.columns * window.width
                assert 0 <= y <= field.rows * window.height
                assert field.tile_at(
                    min(int(x // window.width), field.columns - 1), min(int(y // window.height), field.rows - 1)
                )


@given(st.text(max_size=200), st.sampled_from(list(Face)), st.floats(20, 200))
@settings(deadline=None)
def test_lines_stay_in_their_room_and_lose_no_word(text: str, face: Face, room: float) -> None:
    style = Style(9, face)
    lines = wrap(text, style, room)
    assert all(width_mm(line, style) <= room + 1e-6 for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


@given(st.text(max_size=60))
@settings(max_examples=25, deadline=None)
def test_any_words_can_be_printed(text: str) -> None:
    framing = Framing(text, text, sheet.Manner())
    whole = sheet.Sheet(text, flowed([paragraph(text, 100)], framing))
    document = pypdfium2.PdfDocument(sheet.pdf(whole))
    assert len(document) == 1
    assert ElementTree.fromstring(sheet.page_svg(whole.pages[0])).tag.endswith("svg")
    assert printable(printable(text, Face.TEXT), Face.TEXT) == printable(text, Face.TEXT)


@given(st.floats(0, 3000), st.floats(0, 3000))
@settings(deadline=None)
def test_every_rest_has_a_headline(width: float, length: float) -> None:
    table = sheet.Table(sheet_samples.table().cloth, 1550.0, (), (LeftOver(width, length),))
    said = sheet.cutting(sheet.Cutting("Skirt", "for Nell", "twill", table, True), sheet.Manner())
    assert said.pages


SOCKS = {"foot_girth": "23 cm", "foot_length": "25 cm", "ankle_girth": "22 cm", "calf_girth": "34 cm"}


def test_no_row_of_a_designed_sock_is_a_bare_label() -> None:
    """A round that is told needle by needle keeps all of its sentences."""
    body, _ = wearer.read_measures(SOCKS, Units.CM)
    gauge = read_gauge("30x42")
    assert isinstance(gauge, Gauge)
    made = compose.GARMENTS["socks"](wearer.Wearer("her", body.measures), compose.Asked(gauge))
    reading = knit.read(made.leaflet)
    (size,) = reading.by_size.values()
    rows = [row for piece in size.pieces for row in sheet.written(piece, 1, 0, reading.source.text).rows]
    assert not [row.words for row in rows if re.fullmatch(r"(Round|Row) \d+\.", row.words)]
    assert any(row.words.startswith("First needle: k to last 3 sts") for row in rows)
