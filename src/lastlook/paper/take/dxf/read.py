"""Outlines from a DXF: polylines, lines, arcs, splines, circles, in model space and in blocks.

In a file of the apparel convention every piece is a block: its seam line, its cutting line, grain, fold and notches are
gathered into one outline. Needs the extra `dxf`.
"""

from __future__ import annotations

import io
from dataclasses import dataclass
from typing import Any

from lastlook.geometry import Cubic, Line, Path, Point, Segment, distance_mm
from lastlook.paper.take.dxf.layers import LAYERS, UNIT_WORDS
from lastlook.paper.take.outline import JOINED_MM, MOST_POINTS, Marks, Outline, Taken, closed, too_many, unread
from lastlook.paper.take.read_svg import scale_assumed

UNITS_MM = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0}
"""Of the header's unit code: inches, feet, mm, cm, m."""
MOST_CHARACTERS = 20_000_000


@dataclass(frozen=True)
class Stroke:
    """One line or point of the file, with the block that it was drawn in."""

    block: str
    layer: str
    path: Path | None
    spot: Point | None = None


def read_dxf(text: str) -> Taken:
    """Return what a DXF text holds."""
    try:
        import ezdxf
        from ezdxf.lldxf.const import DXFError
    except ImportError:
        why = "Reading DXF needs the package ezdxf."
        return Taken(findings=(unread("DXF can't be read on this machine.", why, "Install lastlook[dxf]."),))
    if len(text) > MOST_CHARACTERS:
        return Taken(findings=(too_many(len(text) // 40),))
    try:
        drawing = ezdxf.read(io.StringIO(text))  # type: ignore[attr-defined]
        entities = _entities(drawing.modelspace(), "", 0)
        factor = UNITS_MM.get(drawing.header.get("$INSUNITS", 0)) or _said_unit(drawing, entities)
        strokes = [_stroke(block, entity, factor or 1.0) for block, entity in entities]
    except (OSError, ValueError, KeyError, IndexError, TypeError, AttributeError, DXFError):
        found = unread("The file can't be read as DXF.", "Its groups make no drawing.", "Save it as DXF R12 or later.")
        return Taken(findings=(found,))
    count = sum(len(one.path.segments) for one in strokes if one.path)
    if count > MOST_POINTS:
        return Taken(findings=(too_many(count),))
    outlines = _outlines(strokes)
    if not outlines:
        return Taken(
            findings=(unread("The drawing has no lines.", "It holds no outline.", "Save it with its outlines."),)
        )
    return Taken(outlines=outlines, findings=() if factor else (scale_assumed("1 mm to the unit"),))


def _said_unit(drawing: Any, entities: list[tuple[str, Any]]) -> float | None:
    """Return the mm of a unit that a text of the file says, None where none does."""
    texts = [entity for _, entity in entities] + list(drawing.modelspace().query("TEXT"))
    for entity in texts:
        said = entity.dxf.text.upper() if entity.dxftype() == "TEXT" else ""
        if "UNITS:" in said.replace(" :", ":"):
            return next((mm for word, mm in UNIT_WORDS.items() if word in said), None)
    return None


def _stroke(block: str, entity: Any, factor: float) -> Stroke:
    from ezdxf.path import make_path

    layer = LAYERS.get(entity.dxf.layer, entity.dxf.layer)
    if entity.dxftype() == "TEXT":
        return Stroke(block, layer, None)
    if entity.dxftype() == "POINT":
        return Stroke(block, layer, None, _spot(entity.dxf.location, factor))
    return Stroke(block, layer, _path(make_path(entity), factor))


def _outlines(strokes: list[Stroke]) -> tuple[Outline, ...]:
    """Return the pieces of the convention, a block each, then all other lines as they are."""
    out: list[Outline] = []
    for block in dict.fromkeys(one.block for one in strokes):
        mine = [one for one in strokes if one.block == block]
        lines = _joined([(one.layer, one.path) for one in mine if one.path is not None], block)
        piece = _piece(block, lines, mine)
        out += [piece] if piece else lines
    return tuple(out)


def _piece(block: str, lines: list[Outline], strokes: list[Stroke]) -> Outline | None:
    """Return a block of the convention as one outline with its marks, None where it is none."""
    whole = {one.layer: one.path for one in reversed(lines) if one.path.is_closed() and one.layer in ("cut", "seam")}
    if not block or not whole:
        return None
    ends = {one.layer: (one.path.start, one.path.end) for one in lines if one.layer in ("grain", "fold")}
    notches = [one.spot for one in strokes if one.layer == "notch" and one.spot is not None]
    notches += [one.path.start for one in lines if one.layer == "notch"]
    line = "seam" if "seam" in whole else "cut"
    cut = whole.get("cut") if line == "seam" else None
    return Outline(whole[line], block, line, Marks(ends.get("grain"), ends.get("fold"), tuple(notches), cut))


DRAWN = {"LINE", "LWPOLYLINE", "POLYLINE", "ARC", "CIRCLE", "ELLIPSE", "SPLINE", "POINT", "TEXT"}
DEEPEST = 3


def _entities(space: Any, block: str, depth: int) -> list[tuple[str, Any]]:
    """Return what is drawn, with the block it is drawn in, blocks opened a few deep."""
    out: list[tuple[str, Any]] = []
    for entity in space:
        if entity.dxftype() in DRAWN:
            out.append((block, entity))
        elif entity.dxftype() == "INSERT" and depth < DEEPEST and len(out) < MOST_POINTS:
            out += _entities(list(entity.virtual_entities()), block or entity.dxf.name, depth + 1)
    return out


def _path(drawn: Any, factor: float) -> Path | None:
    segments: list[Segment] = []
    spot = _spot(drawn.start, factor)
    for step in drawn.commands():
        end = _spot(step.end, factor)
        name = step.type.name
        if name == "LINE_TO" and end != spot:
            segments.append(Line(spot, end))
        elif name == "CURVE4_TO":
            segments.append(Cubic(spot, _spot(step.ctrl1, factor), _spot(step.ctrl2, factor), end))
        elif name == "CURVE3_TO":
            c = _spot(step.ctrl, factor)
            out = (spot[0] + (c[0] - spot[0]) * 2 / 3, spot[1] + (c[1] - spot[1]) * 2 / 3)
            into = (end[0] + (c[0] - end[0]) * 2 / 3, end[1] + (c[1] - end[1]) * 2 / 3)
            segments.append(Cubic(spot, out, into, end))
        spot = end
    if segments and getattr(drawn, "is_closed", False) and segments[-1].end != segments[0].start:
        segments.append(Line(segments[-1].end, segments[0].start))
    return Path(tuple(segments)) if segments else None


def _joined(strokes: list[tuple[str, Path]], block: str) -> list[Outline]:
    """Join strokes of one layer end to end, then close them."""
    out: list[Outline] = []
    for layer in dict.fromkeys(layer for layer, _ in strokes):
        rest = [path for one, path in strokes if one == layer]
        while rest:
            path = rest.pop(0)
            while (found := _next(path, rest)) is not None:
                path = found
            out.append(Outline(closed(path), block, layer))
    return out


def _next(path: Path, rest: list[Path]) -> Path | None:
    """Return the path carried on by one of the rest, which is taken away; None where none goes on."""
    if path.is_closed() or distance_mm(path.start, path.end) <= JOINED_MM:
        return None
    for number, other in enumerate(rest):
        for way in (other, other.reversed()):
            if distance_mm(path.end, way.start) <= JOINED_MM:
                del rest[number]
                return _chained(path, way)
    return None


def _chained(path: Path, way: Path) -> Path:
    first = way.segments[0]
    start = Line(path.end, first.end) if isinstance(first, Line) else Cubic(path.end, first.out, first.into, first.end)
    return Path((*path.segments, start, *way.segments[1:]))


def _spot(point: Any, factor: float) -> Point:
    return (float(point.x) * factor, float(point.y) * factor)
