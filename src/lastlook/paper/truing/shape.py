"""Whether darts, corners, notches and the hem are true: legs equal, edges smooth over closed darts, corners square."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.finding import Certainty, Finding, Where
from lastlook.geometry import Line, end_direction, start_direction, turn_deg
from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge, closing_deg
from lastlook.paper.seams import Join

LEGS_MM = 0.5
KINK_DEG = 4.0
"""A turn of more than this shows as a point or a dip on the finished edge; common practice, no source."""
NOTCH_MM = 2.0
"""Notches walk together within 2 mm (common practice, no source)."""
LEVEL_MM = 3.0


def shape_findings(drafted: Drafted) -> tuple[Finding, ...]:
    """Return what is not true about the shapes, piece by piece, then where pieces come together."""
    out: list[Finding] = []
    for piece in drafted.pieces:
        out += _darts(piece)
        out += _hem_level(piece)
    for join in drafted.joins:
        if len(join.a) == len(join.b) == 1:
            out += _together(drafted, join)
    return tuple(out)


def _darts(piece: PaperPiece) -> list[Finding]:
    out = []
    for side in piece.sides:
        for number, dart in enumerate(side.darts):
            first, second = dart.legs_mm
            if abs(first - second) > LEGS_MM:
                out.append(_legs(piece, side, first, second))
            kink = closing_deg(dart, side.parts[number], side.parts[number + 1])
            if abs(kink) > KINK_DEG and abs(first - second) <= LEGS_MM:
                out.append(_kinked(piece, side, kink))
    return out


def _legs(piece: PaperPiece, side: SeamEdge, first: float, second: float) -> Finding:
    return Finding(
        "dart-legs-differ",
        Certainty.PROVEN,
        f"The legs of a dart of {piece.name} differ by {abs(first - second):.1f} mm.",
        f"One is {first:.1f} mm long, the other {second:.1f} mm; sewn together, the {side.name} edge gets a step.",
        "Fold the dart as it will be sewn and draw the edge anew across it.",
        where=Where(piece=piece.name, edge=side.name),
    )


def _kinked(piece: PaperPiece, side: SeamEdge, kink: float) -> Finding:
    what = "dips" if kink > 0 else "peaks"
    return Finding(
        "dart-edge-kinked",
        Certainty.DOUBTFUL,
        f"The {side.name} edge of {piece.name} {what} by {abs(kink):.0f} degrees where a dart closes.",
        "The edge runs straight across the open dart; folded, it no longer does.",
        "Fold the dart towards the centre, draw the edge smooth across it, cut, and unfold.",
        where=Where(piece=piece.name, edge=side.name),
    )


def _hem_level(piece: PaperPiece) -> list[Finding]:
    """Compare how far below the hip the hem lies at the centre and down the side."""
    hip, centre, side = piece.level("hip"), piece.side("centre"), piece.side("side")
    if hip is None or centre is None or side is None or piece.centre is not None:
        return []
    below = side.parts[0].segments[0]
    if not isinstance(below, Line) or abs(below.end[1] - hip) > LEVEL_MM:
        return []
    at_centre, at_side = hip - min(centre.start[1], centre.end[1]), below.length_mm()
    if abs(at_centre - at_side) <= LEVEL_MM:
        return []
    return [
        Finding(
            "hem-not-level",
            Certainty.DOUBTFUL,
            f"The hem of {piece.name} hangs {abs(at_centre - at_side):.1f} mm "
            f"{'lower' if at_side > at_centre else 'higher'} at the side than at the centre.",
            f"Below the hip it is {at_centre:.1f} mm at the centre and {at_side:.1f} mm down the side.",
            "Draw the hem anew, every spot as far below the hip line.",
            where=Where(piece=piece.name, edge="hem"),
        )
    ]


def _together(drafted: Drafted, join: Join) -> list[Finding]:
    a, b = drafted.piece(join.a[0].piece), drafted.piece(join.b[0].piece)
    side_a, side_b = (a.side(join.a[0].edge) if a else None), (b.side(join.b[0].edge) if b else None)
    if a is None or b is None or side_a is None or side_b is None:
        return []
    out = []
    for end in ("waist", "hem"):
        angles = [_corner(a, side_a, end), _corner(b, side_b, end)]
        if all(angle is not None for angle in angles):
            total = sum(angle or 0.0 for angle in angles)
            if abs(total - 180) > KINK_DEG:
                out.append(_not_square(a, b, side_a.name, end, total))
    return out + _notches((a, b), (side_a, side_b))


def _corner(piece: PaperPiece, side: SeamEdge, end: str) -> float | None:
    """Return the inner angle between a side and the waist or hem edge, in degrees."""
    edge = piece.side(end)
    if edge is None:
        return None
    if side.end == edge.start:
        return 180 - turn_deg(end_direction(side.parts[-1]), start_direction(edge.parts[0]))
    if side.start == edge.end:
        return 180 - turn_deg(end_direction(edge.parts[-1]), start_direction(side.parts[0]))
    return None


def _not_square(a: PaperPiece, b: PaperPiece, seam: str, end: str, total: float) -> Finding:
    what = "a point" if total < 180 else "a dip"
    return Finding(
        "corner-not-square",
        Certainty.DOUBTFUL,
        f"Where {a.name} and {b.name} meet at the {end}, the edge makes {what} of {abs(total - 180):.0f} degrees.",
        f"The corners at the {seam} seam add up to {total:.0f} degrees; only 180 runs on smoothly.",
        f"Lay the two pieces together at the seam and draw the {end} smooth across it.",
        where=Where(piece=a.name, edge=end),
    )


def _notches(pieces: Sequence[PaperPiece], sides: Sequence[SeamEdge]) -> list[Finding]:
    """Compare notches of the same name, measured from the waist end of both edges."""
    a, b = pieces
    out = []
    for notch in a.notches:
        mate = next((one for one in b.notches if one.name == notch.name and one.edge == sides[1].name), None)
        if notch.edge != sides[0].name or mate is None:
            continue
        places = (_from_top(a, sides[0], notch), _from_top(b, sides[1], mate))
        if abs(places[0] - places[1]) > NOTCH_MM:
            out.append(_part(a, b, notch, places))
    return out


def _from_top(piece: PaperPiece, side: SeamEdge, notch: Notch) -> float:
    along = piece.notch_mm(notch) or 0.0
    return along if side.start[1] > side.end[1] else side.sewn_mm - along


def _part(a: PaperPiece, b: PaperPiece, notch: Notch, places: tuple[float, float]) -> Finding:
    return Finding(
        "notches-part",
        Certainty.DOUBTFUL,
        f"The {notch.name} notches of {a.name} and {b.name} come {abs(places[0] - places[1]):.1f} mm apart.",
        f"From the top they lie at {places[0]:.1f} mm and {places[1]:.1f} mm of the {notch.edge}.",
        "Walk the seam from the top and mark the notch of one piece on the other.",
        where=Where(piece=a.name, edge=notch.edge),
    )
