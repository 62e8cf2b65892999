"""Sheets as PDF bytes: the one room of the PDF writer.

Millimetres become points here and nowhere else. The same sheet gives the same bytes; the file asks the printer
not to scale it; founts are embedded; a group that is shared is kept once and shown through each page's window.
"""

from __future__ import annotations

import io

from reportlab.lib.colors import HexColor
from reportlab.pdfbase.pdfmetrics import getRegisteredFontNames, registerFont
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from lastlook.geometry import Cubic, Path
from lastlook.sheet.layout.page import Page, Sheet
from lastlook.sheet.mark import (
    Align,
    Face,
    Group,
    Ink,
    Item,
    Matrix,
    Stroke,
    Words,
    point_at,
    scale,
    shift,
    then,
    turn,
)
from lastlook.sheet.type import FONTS, MM_PER_PT, printable, width_mm

PT_PER_MM = 72 / 25.4


def pdf(sheet: Sheet) -> bytes:
    """Return the finished PDF of a sheet."""
    _founts()
    out = io.BytesIO()
    canvas = Canvas(out, invariant=1, pageCompression=1, lang=sheet.language)
    canvas.setTitle(sheet.title)
    canvas.setCreator("Last Look")
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    shared: set[str] = set()
    for number, page in enumerate(sheet.pages):
        _page(canvas, page, number, shared)
    canvas.save()
    return out.getvalue()


def _founts() -> None:
    known = set(getRegisteredFontNames())
    for face in Face:
        if face.value not in known:
            registerFont(TTFont(face.value, str(FONTS / f"{face.value}.ttf")))


def _page(canvas: Canvas, page: Page, number: int, shared: set[str]) -> None:
    canvas.setPageSize((page.width_mm * PT_PER_MM, page.height_mm * PT_PER_MM))
    if page.label:
        canvas.bookmarkPage(f"page-{number}")
        canvas.addOutlineEntry(page.label, f"page-{number}", 0)
    upright = then(scale(PT_PER_MM, -PT_PER_MM), shift(0, page.height_mm * PT_PER_MM))
    _draw(canvas, page.items, upright, shared)
    canvas.showPage()


def _draw(canvas: Canvas, items: tuple[Item, ...], matrix: Matrix, shared: set[str]) -> None:
    for item in items:
        if isinstance(item, Stroke):
            _stroke(canvas, item, matrix)
        elif isinstance(item, Words):
            _words(canvas, item, matrix)
        else:
            _group(canvas, item, matrix, shared)


def _group(canvas: Canvas, group: Group, matrix: Matrix, shared: set[str]) -> None:
    inner = then(group.matrix, matrix)
    canvas.saveState()
    if group.clip:
        frame = canvas.beginPath()
        x, y, width, height = group.clip
        corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]
        frame.moveTo(*point_at(inner, corners[0]))
        for corner in corners[1:]:
            frame.lineTo(*point_at(inner, corner))
        frame.close()
        canvas.clipPath(frame, stroke=0, fill=0)
    if group.shared:
        if group.shared not in shared:
            shared.add(group.shared)
            _form(canvas, group)
        canvas.transform(*then(scale(1 / PT_PER_MM), inner))
        canvas.doForm(group.shared)
    else:
        _draw(canvas, group.items, inner, shared)
    canvas.restoreState()


def _form(canvas: Canvas, group: Group) -> None:
    """Keep the items once, in points with y still downwards; whoever shows them turns them upright."""
    canvas.beginForm(str(group.shared), -20000, -20000, 20000, 20000)
    _draw(canvas, group.items, scale(PT_PER_MM), set())
    canvas.endForm()


def _stroke(canvas: Canvas, stroke: Stroke, matrix: Matrix) -> None:
    ink = stroke.ink
    whole = canvas.beginPath()
    for path in stroke.paths:
        _trace(whole, path, matrix)
    _dip(canvas, ink, matrix)
    canvas.drawPath(whole, stroke=int(ink.line is not None), fill=int(ink.fill is not None), fillMode=0)


def _trace(whole: PDFPathObject, path: Path, matrix: Matrix) -> None:
    whole.moveTo(*point_at(matrix, path.start))
    for segment in path.segments:
        if isinstance(segment, Cubic):
            ends = (point_at(matrix, segment.out), point_at(matrix, segment.into), point_at(matrix, segment.end))
            whole.curveTo(*ends[0], *ends[1], *ends[2])
        else:
            whole.lineTo(*point_at(matrix, segment.end))
    if path.is_closed():
        whole.close()


def _dip(canvas: Canvas, ink: Ink, matrix: Matrix) -> None:
    """Take up the ink; the width grows with the matrix."""
    a, b, c, d = matrix[:4]
    size = abs(a * d - b * c) ** 0.5
    if ink.line:
        canvas.setStrokeColor(HexColor(ink.line))
        canvas.setLineWidth(ink.width_mm * size)
        canvas.setLineJoin(1)
        canvas.setDash([length * size for length in ink.dash])
    if ink.fill:
        canvas.setFillColor(HexColor(ink.fill))


def _words(canvas: Canvas, words: Words, matrix: Matrix) -> None:
    style = words.style
    text = printable(words.text, style.face)
    if not text:
        return
    width_pt = width_mm(text, style) * PT_PER_MM
    back = {Align.START: 0.0, Align.MIDDLE: width_pt / 2, Align.END: width_pt}[words.align]
    upright = then(scale(MM_PER_PT, -MM_PER_PT), turn(words.turn_deg), shift(*words.at), matrix)
    line = canvas.beginText()
    line.setTextTransform(*then(shift(-back, 0), upright))
    line.setFont(style.face.value, style.size_pt)
    line.setFillColor(HexColor(style.colour))
    line.textOut(text)
    canvas.drawText(line)
