"""A piece of our own read back from its SVG, edge by edge, exactly as it was written."""

from __future__ import annotations

import re
from xml.etree.ElementTree import Element

from lastlook.finding import Finding
from lastlook.geometry import Cubic, Line, Path, Point, Segment, distance_mm
from lastlook.paper.paper_piece import Level, Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use
from lastlook.paper.take.outline import JOINED_MM, MOST_POINTS, too_many, unread

MARK = "data-piece"
MOST_QUANTITY = 100
_STEP = re.compile(r"([MLC])([^MLCZ]*)|Z")
_NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")


def own_piece(root: Element) -> PaperPiece | Finding | None:
    """Return the piece that a drawing of ours holds, None if it is none of ours, or what of it can't be read."""
    if root.get(MARK) is None:
        return None
    try:
        return _piece(root)
    except _Unclear as unclear:
        return unclear.finding


class _Unclear(Exception):
    """Some part of the drawing is not as it was written."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.say)
        self.finding = finding


def _piece(root: Element) -> PaperPiece:
    name = root.get(MARK, "")
    elements = list(root.iter())
    sides = _sides(elements)
    quantity = root.get("data-quantity", "1")
    if not sides or not quantity.isdigit() or not 0 < int(quantity) <= MOST_QUANTITY:
        raise _Unclear(_broken(name, "Its edges or its quantity are gone."))
    if any(distance_mm(a.end, b.start) > JOINED_MM for a, b in zip(sides, [*sides[1:], sides[0]], strict=True)):
        raise _Unclear(_broken(name, "Its edges no longer come together at the corners."))
    grain = next((one for one in elements if one.get("id") == "grain"), None)
    line = _strokes(grain.get("d", ""))[0] if grain is not None and grain.get("d") else None
    centre = root.get("data-centre")
    return PaperPiece(
        name,
        tuple(sides),
        int(quantity),
        root.get("data-pair") == "mirrored",
        _notches(elements, "notch"),
        _levels(root.get("data-levels", "")),
        (line.start, line.end) if line else ((0.0, 0.0), (0.0, -100.0)),
        _pairs(centre)[0] if centre else None,
        root.get("data-role", "skirt"),
        _notches(elements, "mark"),
    )


def _sides(elements: list[Element]) -> list[SeamEdge]:
    darts: dict[str, list[Point]] = {}
    for one in elements:
        if one.get("data-dart") is not None:
            darts.setdefault(one.get("data-dart", ""), []).append(_strokes(one.get("d", ""))[0].segments[0].end)
    out = []
    for one in elements:
        name = one.get("data-edge")
        if name is None:
            continue
        parts = _strokes(one.get("d", ""))
        points = tuple(darts.get(name, []))
        if len(points) != len(parts) - 1:
            raise _Unclear(_broken(name, "Its darts and the parts between them do not agree."))
        uses = [use for use in Use if use.value == one.get("data-use")]
        allowance = _NUMBER.fullmatch(one.get("data-allowance", "0"))
        out.append(
            SeamEdge(
                name,
                tuple(parts),
                points,
                float(allowance.group()) if allowance else 0.0,
                uses[0] if uses else Use.SEAM,
            )
        )
    return out


def _notches(elements: list[Element], what: str) -> tuple[Notch, ...]:
    return tuple(
        Notch(one.get(f"data-{what}", ""), one.get("data-on", ""), _pairs(one.get("data-at", ""))[0])
        for one in elements
        if one.get(f"data-{what}") is not None
    )


def _levels(text: str) -> tuple[Level, ...]:
    found = re.findall(r"([a-z ]+) ([-+.\deE]+)(?:; |$)", text)
    return tuple(Level(name, float(y)) for name, y in found if _NUMBER.fullmatch(y))


def _strokes(text: str) -> list[Path]:
    """Return the strokes of a path written in M, L, C and Z alone."""
    out: list[Path] = []
    segments: list[Segment] = []
    spot: Point | None = None
    for step in _STEP.finditer(text):
        letter = step.group(1) or "Z"
        spots = _pairs(step.group(2)) if letter != "Z" else []
        if letter == "M":
            out += [Path(tuple(segments))] if segments else []
            segments, spot = [], spots[0]
        elif spot is not None and letter == "L":
            segments.append(Line(spot, spots[0]))
            spot = spots[0]
        elif spot is not None and letter == "C" and len(spots) == 3:
            segments.append(Cubic(spot, *spots))
            spot = spots[2]
        if len(segments) > MOST_POINTS:
            raise _Unclear(too_many(len(segments)))
    out += [Path(tuple(segments))] if segments else []
    if not out:
        raise _Unclear(_broken("piece", "A line of it has no points."))
    return out


def _pairs(text: str) -> list[Point]:
    numbers = [float(one) for one in _NUMBER.findall(text)]
    if len(numbers) < 2 or len(numbers) % 2 or not all(abs(one) < 1e7 for one in numbers):
        raise _Unclear(_broken("piece", "One of its places is no pair of numbers."))
    return [(x, -y if y else 0.0) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]


def _broken(name: str, why: str) -> Finding:
    return unread(
        f"The drawing of “{name}” was changed in a way that can't be read back.", why, "Write the piece anew."
    )
