"""A paper piece as a true-size SVG: one user unit is one millimetre, upwards on paper is upwards in the picture.

The lines to work by are `cut`, `seam`, `grain` and `fold`; every edge is there once more with its name, so that
the file can be read back as the same piece.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from xml.sax.saxutils import escape, quoteattr

from lastlook.geometry import Line, Path, Point, right_of, start_direction
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import SeamEdge

MARGIN_MM = 10.0
NOTCH_MM = 6.0
BESIDE_MM = 3.0
_LINE = 'fill="none" stroke="#1b1b1b" stroke-width="0.3"'
_THIN = 'fill="none" stroke="#1b1b1b" stroke-width="0.3" stroke-dasharray="4 2"'
_QUIET = 'fill="none" stroke="none"'


def write_svg(piece: PaperPiece) -> str:
    """Return the piece as SVG text at true size."""
    spots = [*piece.cut_line.points(1.0), *piece.seam_line.points(1.0)]
    left, right = min(x for x, _ in spots) - MARGIN_MM, max(x for x, _ in spots) + MARGIN_MM
    low, high = min(y for _, y in spots) - MARGIN_MM, max(y for _, y in spots) + MARGIN_MM
    width, height = right - left, high - low
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(width)}mm" height="{_n(height)}mm" '
        f'viewBox="{_n(left)} {_n(-high)} {_n(width)} {_n(height)}" {_about(piece)}>'
    )
    lines = [head, f"  <title>{escape(piece.name)}</title>", *_outlines(piece), *_edges(piece), *_inner(piece)]
    return "\n".join([*lines, *_words(piece), "</svg>", ""])


def path_text(path: Path) -> str:
    """Return a path in SVG's letters, y turned downwards."""
    out = [f"M{_p(path.start)}"]
    for number, segment in enumerate(path.segments):
        if path.is_closed() and number == len(path.segments) - 1 and isinstance(segment, Line):
            break
        if isinstance(segment, Line):
            out.append(f"L{_p(segment.end)}")
        else:
            out.append(f"C{_p(segment.out)} {_p(segment.into)} {_p(segment.end)}")
    return " ".join([*out, "Z"] if path.is_closed() else out)


def _about(piece: PaperPiece) -> str:
    facts = {
        "data-piece": piece.name,
        "data-quantity": str(piece.quantity),
        "data-pair": "mirrored" if piece.mirrored_pair else "alike",
        "data-role": piece.role,
        "data-levels": "; ".join(f"{level.name} {_n(level.y_mm)}" for level in piece.levels),
    }
    if piece.centre:
        facts["data-centre"] = _p(piece.centre)
    return " ".join(f"{name}={quoteattr(value)}" for name, value in facts.items())


def _outlines(piece: PaperPiece) -> list[str]:
    out = [
        f'  <path id="cut" d="{path_text(piece.cut_line)}" {_LINE}/>',
        f'  <path id="seam" d="{path_text(piece.seam_line)}" {_THIN}/>',
        f'  <path id="grain" d="{_straight(piece.grain)}" {_LINE}/>',
    ]
    if piece.fold:
        out.append(f'  <path id="fold" d="{_straight(piece.fold)}" {_LINE}/>')
    return out


def _edges(piece: PaperPiece) -> list[str]:
    return [
        f'  <path id="edge-{_slug(side.name)}" data-edge={quoteattr(side.name)} data-use="{side.use.value}" '
        f'data-allowance="{_n(side.allowance_mm)}" d="{_parts(side)}" {_QUIET}/>'
        for side in piece.sides
    ]


def _inner(piece: PaperPiece) -> list[str]:
    out = []
    for number, dart in enumerate(piece.darts, 1):
        legs = f"M{_p(dart.first)} L{_p(dart.point)} L{_p(dart.second)}"
        out.append(f'  <path id="dart-{number}" data-dart={quoteattr(dart.edge)} d="{legs}" {_LINE}/>')
    for what, notches in (("notch", piece.notches), ("mark", piece.marks)):
        for number, notch in enumerate(notches, 1):
            about = f"data-{what}={quoteattr(notch.name)} data-on={quoteattr(notch.edge)}"
            tick = f'data-at="{_p(notch.point)}" d="{_tick(piece, notch.edge, notch.point)}"'
            out.append(f'  <path id="{what}-{number}" {about} {tick} {_LINE}/>')
    return out


def _tick(piece: PaperPiece, edge: str, point: Point) -> str:
    """Draw a notch as a short line inwards, square to the edge."""
    side = piece.side(edge)
    away = right_of(start_direction(side.path)) if side else (0.0, 1.0)
    return _straight((point, (point[0] - away[0] * NOTCH_MM, point[1] - away[1] * NOTCH_MM)))


def _words(piece: PaperPiece) -> Iterable[str]:
    """Write the name beside the grain line, which lies on the piece however it is curved."""
    cut = f"cut {piece.quantity}" + (" as a mirrored pair" if piece.mirrored_pair else "")
    cut += f", {piece.fold_edge} on the fold" if piece.fold_edge else ""
    style = 'font-family="sans-serif" fill="#1b1b1b"'
    (a, b), (c, d) = piece.grain
    is_upright = abs(d - b) > abs(c - a)
    x, y = _n((a + c) / 2 + (BESIDE_MM if is_upright else 0.0)), (b + d) / 2 + (0.0 if is_upright else 1.0)
    yield f'  <text x="{x}" y="{_n(-y)}" font-size="9" {style}>{escape(piece.name)}</text>'
    yield f'  <text x="{x}" y="{_n(-y + 9)}" font-size="6" {style}>{escape(cut)}</text>'


def _parts(side: SeamEdge) -> str:
    return " ".join(path_text(part) for part in side.parts)


def _straight(ends: tuple[Point, Point]) -> str:
    return f"M{_p(ends[0])} L{_p(ends[1])}"


def _slug(name: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-") or "edge"


def _p(spot: Point) -> str:
    return f"{_n(spot[0])},{_n(-spot[1])}"


def _n(value: float) -> str:
    return f"{value:.6f}".rstrip("0").rstrip(".").replace("-0", "0") if abs(value) < 5e-7 else _plain(value)


def _plain(value: float) -> str:
    return f"{value:.6f}".rstrip("0").rstrip(".")
