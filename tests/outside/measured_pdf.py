"""Measure a finished PDF by its own vectors, read back by another program's parser.

Every path of a page, forms opened, as points in millimetres from the top left corner of the paper.
"""

from __future__ import annotations

import ctypes
from collections.abc import Iterator

import pypdfium2
from pypdfium2 import raw

MM_PER_PT = 25.4 / 72
Point = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]
STILL: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def paths(document: pypdfium2.PdfDocument, number: int) -> list[list[Point]]:
    """Return the corner points of every path of a page, in mm."""
    page = document[number]
    height = page.get_height()
    count = raw.FPDFPage_CountObjects(page.raw)
    out = []
    for spot in range(count):
        for points in _object(raw.FPDFPage_GetObject(page.raw, spot), STILL):
            out.append([(x * MM_PER_PT, (height - y) * MM_PER_PT) for x, y in points])
    return out


def _object(thing: object, outer: Matrix) -> Iterator[list[Point]]:
    kind = raw.FPDFPageObj_GetType(thing)
    box = raw.FS_MATRIX()
    raw.FPDFPageObj_GetMatrix(thing, box)
    inner = _then((box.a, box.b, box.c, box.d, box.e, box.f), outer)
    if kind == raw.FPDF_PAGEOBJ_FORM:
        for spot in range(raw.FPDFFormObj_CountObjects(thing)):
            yield from _object(raw.FPDFFormObj_GetObject(thing, spot), inner)
    elif kind == raw.FPDF_PAGEOBJ_PATH:
        points = []
        for spot in range(raw.FPDFPath_CountSegments(thing)):
            x, y = ctypes.c_float(), ctypes.c_float()
            raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(thing, spot), x, y)
            points.append(_at(inner, (x.value, y.value)))
        yield points


def extent(points: list[Point]) -> tuple[float, float]:
    """Return how wide and high the points reach, in mm."""
    xs, ys = zip(*points, strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


def _then(first: Matrix, second: Matrix) -> Matrix:
    a, b, c, d, e, f = first
    p, q, r, s, t, u = second
    return (p * a + r * b, q * a + s * b, p * c + r * d, q * c + s * d, p * e + r * f + t, q * e + s * f + u)


def _at(matrix: Matrix, point: Point) -> Point:
    a, b, c, d, e, f = matrix
    return (a * point[0] + c * point[1] + e, b * point[0] + d * point[1] + f)
