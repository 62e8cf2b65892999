"""True size, measured on the finished PDF with another parser (PDFium).

A point is 1/72 inch and an inch 25.4 mm (ISO 32000-1, 8.3.2.3; international yard and pound agreement, 1959), so
that a 100 mm square is 283.46 points and a 4 inch square 288.
"""

from __future__ import annotations

import itertools

import pypdfium2
import pytest
from pypdfium2 import raw

from lastlook import sheet
from lastlook.quantity import Units
from tests.areas import sheet_samples
from tests.outside import measured_pdf

PAPERS = {
    "A4, centimetres": sheet.Manner(paper=sheet.Paper.A4, units=Units.CM),
    "Letter, inches": sheet.Manner(paper=sheet.Paper.LETTER, units=Units.INCHES),
}
NEAR_MM = 0.01
FRAMED = ["booklet", "cutting", "last look", "pair", "record", "schedule"]
FRACTIONS = "⅛ ¼ ⅜ ½ ⅝ ¾ ⅞ ⅓ ⅔"
SQUARES_PT = {100.0: 283.46, 101.6: 288.0}


def _tiles(manner: sheet.Manner) -> pypdfium2.PdfDocument:
    pattern = sheet.Pattern("Harbour choir skirt", "for Nell", sheet_samples.skirt())
    return pypdfium2.PdfDocument(sheet.pdf(sheet.tiles(pattern, manner)))


def _sheets(manner: sheet.Manner) -> dict[str, bytes]:
    looks = (sheet_samples.look(sheet_samples.Step.CUT),)
    back = sheet_samples.back()
    knitting = sheet.Knitting(
        f"Harbour choir pullover {FRACTIONS}",
        "Size 36",
        (sheet.ToKnit(back, sheet_samples.outline_of(back)),),
        sheet_samples.gauge(),
        looks=looks,
    )
    cut = sheet.Cutting("Skirt", "for Nell", "green twill", sheet_samples.table(), True, looks)
    return {
        "booklet": sheet.pdf(sheet.booklet(knitting, manner)),
        "cutting": sheet.pdf(sheet.cutting(cut, manner)),
        "last look": sheet.pdf(sheet.last_look(sheet.Look("Outfit", "for Nell", looks), manner)),
        "pair": sheet.pdf(sheet.pair(sheet.Pair("Cardigan", "Size 36", *sheet_samples.fronts()), manner)),
        "record": sheet.pdf(sheet.record(sheet_samples.RECORD, manner)),
        "schedule": sheet.pdf(sheet.schedule(sheet_samples.SCHEDULE, manner)),
    }


@pytest.mark.parametrize("manner", PAPERS.values(), ids=PAPERS.keys())
def test_both_squares_have_their_size(manner: sheet.Manner) -> None:
    document = _tiles(manner)
    sizes = [measured_pdf.extent(points) for points in measured_pdf.paths(document, 0)]
    for side_mm, side_pt in SQUARES_PT.items():
        found = [size for size in sizes if max(abs(one - side_mm) for one in size) < 0.3]
        assert len(found) == 1
        for one in found[0]:
            assert one == pytest.approx(side_mm, abs=1e-3)
            assert one / measured_pdf.MM_PER_PT == pytest.approx(side_pt, abs=0.005)


@pytest.mark.parametrize("manner", PAPERS.values(), ids=PAPERS.keys())
def test_every_tile_shows_its_piece_at_its_true_size_and_place(manner: sheet.Manner) -> None:
    document = _tiles(manner)
    for piece in sheet_samples.skirt():
        xs, ys = zip(*piece.cut_line.points(0.01), strict=True)
        sides = sorted((max(xs) - min(xs), max(ys) - min(ys)))
        corners = []
        for number in range(2, len(document)):
            for points in measured_pdf.paths(document, number):
                long = sorted(measured_pdf.extent(points))
                if all(abs(a - b) < NEAR_MM for a, b in zip(long, sides, strict=True)):
                    corners.append((min(x for x, _ in points), min(y for _, y in points)))
        assert len(corners) >= 3, f"{piece.name} is not on its tiles at its true size"
        for axis in (0, 1):
            steps = sorted({round(corner[axis], 3) for corner in corners})
            for a, b in itertools.pairwise(steps):
                assert b - a == pytest.approx(round(b - a), abs=5e-3), "tiles don't step by whole millimetres"


@pytest.mark.parametrize("manner", PAPERS.values(), ids=PAPERS.keys())
@pytest.mark.parametrize("name", FRAMED)
def test_the_tape_on_every_page_is_true(name: str, manner: sheet.Manner) -> None:
    document = pypdfium2.PdfDocument(_sheets(manner)[name])
    unit = 10.0 if manner.units is Units.CM else 25.4
    for number in range(len(document)):
        band = max(measured_pdf.paths(document, number)[0:1], key=len)
        long = measured_pdf.extent(band)[0]
        assert long / unit == pytest.approx(round(long / unit), abs=1e-4)
        assert long > 150


@pytest.mark.parametrize("manner", PAPERS.values(), ids=PAPERS.keys())
def test_every_tile_names_whose_it_is_and_carries_a_true_tape(manner: sheet.Manner) -> None:
    document = _tiles(manner)
    long = 100.0 if manner.units is Units.CM else 101.6
    for number in range(2, len(document)):
        assert "for Nell" in document[number].get_textpage().get_text_bounded()
        bands = [measured_pdf.extent(points) for points in measured_pdf.paths(document, number)]
        assert any(abs(wide - long) < 1e-3 and abs(high - 6.5) < 1e-3 for wide, high in bands)


@pytest.mark.parametrize("manner", PAPERS.values(), ids=PAPERS.keys())
def test_every_join_is_crossed_by_a_tape_of_the_length_it_says(manner: sheet.Manner) -> None:
    document = _tiles(manner)
    long, said = (60.0, "60 mm") if manner.units is Units.CM else (63.5, "2½ in")
    joined = 0
    for number in range(2, len(document)):
        text = document[number].get_textpage().get_text_bounded()
        sizes = [sorted(measured_pdf.extent(points)) for points in measured_pdf.paths(document, number)]
        crossing = [one for one in sizes if abs(one[0] - 5.0) < 1e-3 and abs(one[1] - long) < 1e-3]
        if "laid up to this line" in text or "cut here" in text:
            assert crossing and said in text
            joined += 1
    assert joined > 10


@pytest.mark.parametrize("manner", PAPERS.values(), ids=PAPERS.keys())
def test_the_file_asks_the_printer_not_to_scale_it(manner: sheet.Manner) -> None:
    files = [*_sheets(manner).values(), sheet.pdf(sheet.tiles(_pattern(), manner))]
    for data in files:
        document = pypdfium2.PdfDocument(data)
        assert not raw.FPDF_VIEWERREF_GetPrintScaling(document.raw)
        width, height = document[0].get_size()
        assert sorted((width, height)) == pytest.approx(
            sorted(side / measured_pdf.MM_PER_PT for side in manner.paper.value), abs=0.01
        )


def _pattern() -> sheet.Pattern:
    return sheet.Pattern("Harbour choir skirt", "for Nell", sheet_samples.skirt()[2:])


def test_every_fraction_prints() -> None:
    document = pypdfium2.PdfDocument(_sheets(sheet.Manner())["booklet"])
    text = document[0].get_textpage().get_text_bounded()
    for fraction in FRACTIONS.split():
        assert fraction in text


@pytest.mark.parametrize("name", FRAMED)
def test_the_size_is_named_on_every_page(name: str) -> None:
    document = pypdfium2.PdfDocument(_sheets(sheet.Manner())[name])
    for number in range(len(document)):
        text = document[number].get_textpage().get_text_bounded()
        assert "Size 36" in text or "for Nell" in text


def test_the_same_sheet_is_the_same_bytes() -> None:
    assert _sheets(sheet.Manner()) == _sheets(sheet.Manner())
