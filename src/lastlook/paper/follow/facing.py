"""A facing for a waist without a band: the top of a piece with its darts closed, as deep as wanted."""

from __future__ import annotations

from collections.abc import Callable

from lastlook.geometry import Path, Point, Run, beside, direction, mapped, polyline, swung, turn_deg
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use

DEPTH_MM = 50.0
"""5 cm (2 in); common practice, no source."""
OVERCAST_MM = 6.0
"""The lower edge is only overcast."""
CHORD_MM = 0.05


def closed_edge(side: SeamEdge) -> Path:
    """Return an edge as it lies once its darts are sewn: at each dart, what came before swings up to the second leg."""
    whole = side.parts[0]
    for dart, after in zip(side.darts, side.parts[1:], strict=True):
        turn = turn_deg(direction(dart.point, dart.first), direction(dart.point, dart.second))
        swung_up = swung(whole, dart.point, turn)
        last = mapped(Path(swung_up.segments[-1:]), _sent(swung_up.end, dart.second))
        whole = Path((*swung_up.segments[:-1], *last.segments, *after.segments))
    return whole


def facing(piece: PaperPiece, waist: SeamEdge, depth: float, seam: float) -> PaperPiece:
    """Return the facing of one piece: its waist edge, darts closed, and a line below it at the same distance."""
    top = closed_edge(waist)
    low = beside(Run(top, -depth), CHORD_MM).reversed()
    on_fold = piece.fold_edge is not None
    inner = ("centre", 0.0, Use.FOLD) if on_fold else ("side", seam, Use.SEAM)
    sides = (
        SeamEdge(inner[0], (polyline((top.end, low.start)),), (), inner[1], inner[2]),
        SeamEdge("lower edge", (low,), (), OVERCAST_MM, Use.OPEN),
        SeamEdge("side" if on_fold else "other side", (polyline((low.end, top.start)),), (), seam),
        SeamEdge("waist", (top,), (), seam),
    )
    x = (top.start[0] + top.end[0]) / 2
    grain = ((x, top.end[1] - depth * 0.2), (x, top.end[1] - depth * 0.8))
    name = f"{piece.name} facing"
    return PaperPiece(name, sides, piece.quantity, piece.mirrored_pair, grain=grain, role="part")


def _sent(spot: Point, to: Point) -> Callable[[Point], Point]:
    def send(point: Point) -> Point:
        return to if point == spot else point

    return send
