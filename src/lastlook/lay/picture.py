"""A lay drawn to scale as SVG: the cloth with its selvedges, flaws and folds, and every piece with its grain."""

from __future__ import annotations

from collections.abc import Sequence
from xml.sax.saxutils import escape

from lastlook.lay.cloth import Outline
from lastlook.lay.judge.laid import copies, zones
from lastlook.lay.measure import used_length_mm
from lastlook.lay.placement import Placement
from lastlook.lay.wanted import Problem

STYLE = (
    ".cloth{fill:#f6f1e7;stroke:#333;stroke-width:2}.piece{fill:#fff;stroke:#222;stroke-width:2}"
    ".under{fill:#e9e2d2;stroke:#222;stroke-width:1;stroke-dasharray:8 6}.flaw{fill:#a33;fill-opacity:.6}"
    ".selvedge,.fold{stroke:#777;stroke-width:2;fill:none}.fold{stroke-dasharray:24 8}"
    "text{font:32px sans-serif;fill:#222}"
)


def as_svg(problem: Problem, placements: Sequence[Placement]) -> str:
    """Return a drawing of the open cloth, one unit a millimetre, the length from left to right."""
    cloth = problem.cloth
    long = cloth.length_mm or used_length_mm(problem, placements)
    body = [_shape(cloth.outline or ((0, 0), (long, 0), (long, cloth.width_mm), (0, cloth.width_mm)), "cloth")]
    for y in (cloth.selvedge_mm, cloth.width_mm - cloth.selvedge_mm):
        body.append(f'<line class="selvedge" x1="0" y1="{y:g}" x2="{long:g}" y2="{y:g}"/>')
    body += [_shape(flaw, "flaw") for flaw in cloth.flaws]
    for zone in zones(cloth, long):
        if zone.fold_at is not None:
            ends = (
                (zone.fold_at, 0, zone.fold_at, cloth.width_mm)
                if zone.axis == 0
                else (0, zone.fold_at, long, zone.fold_at)
            )
            body.append('<line class="fold" x1="{:g}" y1="{:g}" x2="{:g}" y2="{:g}"/>'.format(*ends))
    for one in placements:
        body += _piece(problem, one, cloth.length_mm or 0.0)
    box = f"-20 -20 {long + 40:g} {cloth.width_mm + 40:g}"
    head = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}"><style>{STYLE}</style>'
    return "\n".join([head, *body, "</svg>", ""])


def _piece(problem: Problem, one: Placement, length: float) -> list[str]:
    piece = problem.piece(one.id)
    if piece is None:
        return []
    out = []
    for number, copy in enumerate(copies(piece, one, problem.cloth, length)):
        shapes = [tuple((float(x), float(y)) for x, y in shape) for shape in copy.outlines]
        out += [_shape(shape, "under" if number else "piece") for shape in shapes]
        spots = [spot for shape in shapes for spot in shape]
        x = (min(x for x, _ in spots) + max(x for x, _ in spots)) / 2
        y = (min(y for _, y in spots) + max(y for _, y in spots)) / 2
        out.append(f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="middle">{escape(one.id)} {copy.copy}</text>')
    return out


def _shape(outline: Outline, kind: str) -> str:
    return f'<polygon class="{kind}" points="{" ".join(f"{x:.3f},{y:.3f}" for x, y in outline)}"/>'
