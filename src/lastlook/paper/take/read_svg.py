"""Pieces from an SVG: one of our own comes back as the piece it was, any other as outlines in mm.

Units, `viewBox`, transforms, groups and `use` are followed; scripts, pictures and styles are passed over.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from xml.etree.ElementTree import Element

import svgelements

from lastlook.finding import Certainty, Finding
from lastlook.geometry import Path, Point
from lastlook.paper.take.outline import MOST_POINTS, Outline, Taken, closed, too_many, unread
from lastlook.paper.take.own_svg import own_piece
from lastlook.paper.take.safe_xml import tree
from lastlook.paper.take.strokes import SHAPES, length_and_unit, letters_of, strokes

MM = {"mm": 1.0, "cm": 10.0, "in": 25.4, "pt": 25.4 / 72, "pc": 25.4 / 6, "px": 25.4 / 96, "": 25.4 / 96, "q": 0.25}
"""Of each unit (CSS Values and Units, absolute lengths)."""
PASSED_OVER = {
    *("defs", "symbol", "clipPath", "mask", "pattern", "marker"),
    *("script", "style", "image", "metadata", "text"),
}
HREF = "{http://www.w3.org/1999/xlink}href"
MOST_USES = 500
DEEPEST_USE = 4


def read_svg(text: str) -> Taken:
    """Return what an SVG text holds."""
    root = tree(text)
    if isinstance(root, Finding):
        return Taken(findings=(root,))
    if _bare(root.tag) != "svg":
        found = unread("The file is no SVG.", f"It begins with <{_bare(root.tag)}>.", "Save the pieces as SVG.")
        return Taken(findings=(found,))
    piece = own_piece(root)
    if isinstance(piece, Finding):
        return Taken(findings=(piece,))
    if piece is not None:
        return Taken((piece,))
    walk = _Walk({one.get("id", ""): one for one in root.iter() if one.get("id")}, [])
    scale, notes = _scale(root)
    finding = _gather(walk, root, scale, "", 0)
    if finding:
        return Taken(findings=(finding,))
    if not walk.outlines:
        found = unread("The drawing has no lines.", "No path or shape was found in it.", "Save it with its outlines.")
        return Taken(findings=(found,))
    return Taken(outlines=tuple(walk.outlines), findings=notes)


@dataclass
class _Walk:
    """What was gathered on the way through the tree."""

    by_id: dict[str, Element]
    outlines: list[Outline]
    points: int = 0
    uses: int = 0


def _scale(root: Element) -> tuple[svgelements.Matrix, tuple[Finding, ...]]:
    """Return the way from user units to mm: from width and viewBox, or 96 to the inch, said to be a guess."""
    width, unit = length_and_unit(root.get("width", ""))
    box = [float(one) for one in re.findall(r"[-+]?[\d.]+(?:[eE][-+]?\d+)?", root.get("viewBox", ""))]
    factor = MM.get(unit, MM["px"])
    if len(box) == 4 and box[2] > 0 and width > 0 and unit != "%":
        factor *= width / box[2]
    if not 1e-6 < factor < 1e6:
        factor = MM["px"]
    matrix = svgelements.Matrix(factor, 0, 0, factor, 0, 0)
    known = width > 0 and unit not in ("", "px", "%")
    return matrix, () if known else (scale_assumed("96 to the inch"),)


def scale_assumed(taken: str) -> Finding:
    """Return that a drawing does not say how large it is, and what was taken."""
    return Finding(
        "scale-assumed",
        Certainty.UNKNOWN,
        f"Whether the drawing is at true size is not known yet: it names no unit, and {taken} was taken.",
        "Programs differ: 72, 90 and 96 to the inch are all in use.",
        "Measure one edge on the paper and say how long it is.",
    )


def _gather(walk: _Walk, element: Element, matrix: svgelements.Matrix, layer: str, used: int) -> Finding | None:
    for child in element:
        tag = _bare(child.tag)
        if tag in PASSED_OVER or child.get("display") == "none":
            continue
        inner = _moved(child, matrix)
        name = _label(child)
        if tag in SHAPES:
            finding = _take(walk, child, tag, inner, Outline(Path(()), name, layer))
        elif tag == "use":
            finding = _follow(walk, child, inner, layer, used)
        else:
            finding = _gather(walk, child, inner, name if tag == "g" and name else layer, used)
        if finding:
            return finding
    return None


def _label(element: Element) -> str:
    """Return what a drawing program calls an element: its label, or else its id."""
    labels = [value for key, value in element.items() if _bare(key) == "label"]
    return labels[0] if labels else element.get("id", "")


def _follow(walk: _Walk, use: Element, matrix: svgelements.Matrix, layer: str, used: int) -> Finding | None:
    """Draw what a `use` points at, a few deep and a few hundred in all."""
    target = walk.by_id.get((use.get("href") or use.get(HREF) or "").removeprefix("#"))
    walk.uses += 1
    if target is None or used >= DEEPEST_USE or walk.uses > MOST_USES:
        return None
    x, y = length_and_unit(use.get("x", "0"))[0], length_and_unit(use.get("y", "0"))[0]
    inner = svgelements.Matrix(1, 0, 0, 1, x, y) * matrix
    holder = Element("g")
    holder.append(target)
    return _gather(walk, holder, inner, layer, used + 1)


def _moved(element: Element, matrix: svgelements.Matrix) -> svgelements.Matrix:
    words = element.get("transform")
    if not words or len(words) > 2000:
        return matrix
    try:
        return svgelements.Matrix(words) * matrix
    except (ValueError, IndexError, TypeError, AttributeError):
        return matrix


def _take(walk: _Walk, element: Element, tag: str, matrix: svgelements.Matrix, as_named: Outline) -> Finding | None:
    words = letters_of(element, tag)
    walk.points += len(words) // 8
    if walk.points > MOST_POINTS:
        return too_many(walk.points)
    try:
        paths = strokes(words, matrix)
    except ValueError:
        called = f" (“{as_named.name}”)" if as_named.name else ""
        return unread(f"A line of the drawing can't be read{called}.", "Its letters make no path.", "Draw it anew.")
    for path in paths:
        if not all(math.isfinite(x) and math.isfinite(y) for x, y in _spots(path)):
            return unread(
                "A line of the drawing runs to no place.", "One of its numbers is not finite.", "Draw it anew."
            )
        walk.outlines.append(Outline(closed(path), as_named.name, as_named.layer))
    return None


def _spots(path: Path) -> list[Point]:
    return [path.start, *(segment.end for segment in path.segments)]


def _bare(tag: object) -> str:
    return str(tag).rsplit("}", 1)[-1]
