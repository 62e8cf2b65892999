"""The strokes of an SVG shape as paths in mm, every curve as cubics, y turned upwards."""

from __future__ import annotations

import re
from xml.etree.ElementTree import Element

import svgelements

from lastlook.geometry import Cubic, Line, Path, Point, Segment

SHAPES = {"path", "polygon", "polyline", "line", "rect", "circle", "ellipse"}
_NUMBER = re.compile(r"\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)\s*([a-zA-Z%]*)\s*")
_ARC_CUBICS = 12
"""An arc becomes this many cubics; a full circle then leaves its true radius by a few millionths."""


def strokes(letters: str, matrix: svgelements.Matrix) -> list[Path]:
    """Return the strokes of a path's letters; raises ValueError where they make none."""
    try:
        drawn = svgelements.Path(letters) * matrix
        found = [_path(sub) for sub in drawn.as_subpaths()]
    except (IndexError, TypeError, AttributeError, ZeroDivisionError, OverflowError) as wrong:
        raise ValueError("the letters make no path") from wrong
    return [path for path in found if path is not None]


def letters_of(element: Element, tag: str) -> str:
    """Return a shape in the letters of a path."""

    def number(name: str) -> float:
        return length_and_unit(element.get(name, "0"))[0]

    if tag == "path":
        return element.get("d", "")
    if tag in ("polygon", "polyline"):
        return f"M {element.get('points', '')}" + (" Z" if tag == "polygon" else "")
    if tag == "line":
        return f"M {number('x1')} {number('y1')} L {number('x2')} {number('y2')}"
    if tag == "rect":
        x, y, w, h = (number(name) for name in ("x", "y", "width", "height"))
        return f"M {x} {y} h {w} v {h} h {-w} Z"
    rx, ry = (number("r"), number("r")) if tag == "circle" else (number("rx"), number("ry"))
    x, y = number("cx") - rx, number("cy")
    return f"M {x} {y} a {rx} {ry} 0 0 0 {2 * rx} 0 a {rx} {ry} 0 0 0 {-2 * rx} 0 Z"


def _path(sub: svgelements.Subpath) -> Path | None:
    """Return one stroke; each segment starts exactly where the one before it ends."""
    segments: list[Segment] = []
    for one in svgelements.Path(sub):
        stays = one.start == one.end and isinstance(one, svgelements.Line | svgelements.Close)
        if isinstance(one, svgelements.Move) or one.start is None or one.end is None or stays:
            continue
        for segment in _segments(one):
            segments.append(_from(segments[-1].end, segment) if segments else segment)
    return Path(tuple(segments)) if segments else None


def _from(start: Point, segment: Segment) -> Segment:
    if isinstance(segment, Line):
        return Line(start, segment.end)
    return Cubic(start, segment.out, segment.into, segment.end)


def _segments(one: svgelements.PathSegment) -> list[Segment]:
    if isinstance(one, svgelements.CubicBezier):
        return [Cubic(_spot(one.start), _spot(one.control1), _spot(one.control2), _spot(one.end))]
    if isinstance(one, svgelements.QuadraticBezier):
        a, c, b = _spot(one.start), _spot(one.control), _spot(one.end)
        out = (a[0] + (c[0] - a[0]) * 2 / 3, a[1] + (c[1] - a[1]) * 2 / 3)
        return [Cubic(a, out, (b[0] + (c[0] - b[0]) * 2 / 3, b[1] + (c[1] - b[1]) * 2 / 3), b)]
    if isinstance(one, svgelements.Arc):
        return [part for cubic in one.as_cubic_curves(_ARC_CUBICS) for part in _segments(cubic)]
    return [Line(_spot(one.start), _spot(one.end))]


def _spot(point: svgelements.Point) -> Point:
    return (float(point.x), -float(point.y))


def length_and_unit(text: str) -> tuple[float, str]:
    """Return a number and the unit behind it; nothing where it is no number."""
    match = _NUMBER.fullmatch(text)
    return (float(match.group(1)), match.group(2).lower()) if match else (0.0, "")
