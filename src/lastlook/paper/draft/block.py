"""A quarter of a fitted skirt: half of a front or back, from the waist over the hip to the hem.

The centre line lies at x = 0 and the waist at the front centre at y = 0. The waist edge leaves the centre square,
stands square on the side seam, and is shaped so that it runs smoothly once the darts are closed.
Shape after the two-dart block of WikiEducator, Handout for drafting skirt block (read): waist raised at the side.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from lastlook.geometry import Cubic, Line, Path, Point, arc, direction, distance_mm, ends_along, turned
from lastlook.paper.paper_piece import Level, Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge, Use
from lastlook.paper.solve import solve

STEEPEST_DEG = 60.0
NARROWER, WIDER = (0.95, 0.85, 0.75, 0.65), 1.3
"""Where the side of the waist is looked for, as shares of its length with darts open; further in it would fold over."""
LEVELLED_MM = (3.0, 8.0, 25.0)
"""The back's side waist is moved by at most so much, tried in turn, to make both side seams equal."""
HANDLE = 1 / 3
"""A handle of a third of the chord gives an even curve."""


@dataclass(frozen=True)
class Quarter:
    """The figures of one quarter, all in mm and finished."""

    name: str
    waist_mm: float
    hip_mm: float
    hem_mm: float
    hip_depth_mm: float
    length_mm: float
    dip_mm: float = 0.0
    side_rise_mm: float = 10.0
    darts: tuple[tuple[float, float], ...] = ()
    """Intake and length of each dart, from the centre outwards."""
    seam_mm: float = 15.0
    side_seam_mm: float = 15.0
    hem_allowance_mm: float = 50.8
    centre: Use = Use.FOLD
    levels: tuple[Level, ...] = ()


def quarter(plan: Quarter) -> PaperPiece | None:
    """Return the piece, its waist exactly as long as planned; None where no shape has these figures."""
    widest = plan.waist_mm + sum(intake for intake, _ in plan.darts)

    def over(side_x: float) -> float:
        return sum(part.length_mm() for part in _waist(plan, side_x)[0]) - plan.waist_mm

    low = next((widest * share for share in NARROWER if over(widest * share) < 0), None)
    side_x = None if low is None else solve(over, low, widest * WIDER)
    hem = _hem_corner(plan)
    return None if side_x is None or hem is None else _piece(plan, side_x, hem)


def level_side(back: Quarter, side_mm: float) -> Quarter:
    """Return the quarter with its side waist raised or lowered until the side seam has a given length."""

    def over(rise: float) -> float:
        piece = quarter(replace(back, side_rise_mm=rise))
        side = piece.side("side") if piece else None
        return (side.sewn_mm if side else math.inf) - side_mm

    for reach in LEVELLED_MM:
        rise = solve(over, back.side_rise_mm - reach, back.side_rise_mm + reach)
        if rise is not None:
            return replace(back, side_rise_mm=rise)
    return back


def bend(start: Point, leaves: Point, end: Point, arrives: Point) -> Cubic:
    """Return an even curve between two points with these directions."""
    reach = distance_mm(start, end) * HANDLE
    out = (start[0] + leaves[0] * reach, start[1] + leaves[1] * reach)
    return Cubic(start, out, (end[0] - arrives[0] * reach, end[1] - arrives[1] * reach), end)


def _piece(plan: Quarter, side_x: float, hem: Point) -> PaperPiece:
    waist, points = _waist(plan, side_x)
    top, foot = (0.0, -plan.dip_mm), (0.0, -plan.length_mm)
    hip = (plan.hip_mm, -plan.hip_depth_mm)
    side = Path((Line(hem, hip), _hip_curve(plan, side_x)))
    sides = (
        SeamEdge("centre", (Path((Line(top, foot),)),), (), _centre_mm(plan), plan.centre),
        SeamEdge("hem", (_hem_line(plan, hem),), (), plan.hem_allowance_mm, Use.HEM),
        SeamEdge("side", (side,), (), plan.side_seam_mm),
        SeamEdge("waist", waist, points, plan.seam_mm),
    )
    middle = plan.hip_mm / 2
    grain = (
        (middle, -plan.hip_depth_mm - 20),
        (middle, -plan.length_mm + (plan.length_mm - plan.hip_depth_mm) / 4),
    )
    pair = plan.centre is not Use.FOLD
    notches = (Notch("hip", "side", hip),)
    return PaperPiece(plan.name, sides, 2 if pair else 1, pair, notches, plan.levels, grain)


def _centre_mm(plan: Quarter) -> float:
    return 0.0 if plan.centre is Use.FOLD else plan.seam_mm


def _hip_curve(plan: Quarter, side_x: float) -> Cubic:
    """Return the side seam from hip to waist: it leaves the straight side smoothly and leans on to the waist."""
    hip, waist = (plan.hip_mm, -plan.hip_depth_mm), (side_x, plan.side_rise_mm)
    hem = _hem_corner(plan) or (plan.hip_mm, -plan.length_mm)
    up, chord = direction(hem, hip), direction(hip, waist)
    lean = math.atan2(up[0] * chord[1] - up[1] * chord[0], up[0] * chord[0] + up[1] * chord[1])
    return bend(hip, up, waist, turned(chord, math.degrees(lean) * 0.5))


def _hem_corner(plan: Quarter) -> Point | None:
    """Return the foot of the side seam: as long below the hip as the centre, the hem as wide as planned."""
    below = plan.length_mm - plan.hip_depth_mm
    if below <= 0:
        return None
    wider = plan.hem_mm - plan.hip_mm
    slant = math.degrees(wider / below) if wider >= 0 else _taper_deg(plan, below)
    if slant is None or slant > STEEPEST_DEG:
        return None
    return _foot(plan, below, slant)


def _foot(plan: Quarter, below: float, slant: float) -> Point:
    angle = math.radians(slant)
    return (plan.hip_mm + below * math.sin(angle), -plan.hip_depth_mm - below * math.cos(angle))


def _taper_deg(plan: Quarter, below: float) -> float | None:
    """Return the slant of a side that runs inwards, from the length of its hem."""

    def over(slant: float) -> float:
        return _hem_line(plan, _foot(plan, below, slant)).length_mm() - plan.hem_mm

    return solve(over, -STEEPEST_DEG / 2, 0.0)


def _hem_line(plan: Quarter, corner: Point) -> Path:
    """Return the hem, every spot as far below the hip line: straight under the hip, then an arc about its end.

    A side that runs inwards leaves no arc; its hem is straight and turns square to the side over the last fifth.
    """
    foot, hip = (0.0, -plan.length_mm), (plan.hip_mm, -plan.hip_depth_mm)
    if corner[0] - plan.hip_mm > 1e-6:
        under, below = (plan.hip_mm, -plan.length_mm), plan.length_mm - plan.hip_depth_mm
        slant = math.degrees(math.atan2(corner[0] - hip[0], hip[1] - corner[1]))
        curve = arc(hip, below, -90.0, -90.0 + slant)
        ends = (replace(curve.segments[0], start=under), *curve.segments[1:])
        ends = (*ends[:-1], replace(ends[-1], end=corner))
        return Path((Line(foot, under), *ends))
    turn = (corner[0] * 0.8, foot[1])
    return Path((Line(foot, turn), bend(turn, (1.0, 0.0), corner, turned(direction(corner, hip), -90))))


def _waist(plan: Quarter, side_x: float) -> tuple[tuple[Path, ...], tuple[Point, ...]]:
    """Return the parts of the waist edge from the side to the centre, and the dart points between them."""
    side, top = (side_x, plan.side_rise_mm), (0.0, -plan.dip_mm)
    mouths = [_dart(plan, side_x, number) for number in range(len(plan.darts))][::-1]
    leaves = turned(ends_along(_hip_curve(plan, side_x)), 90)
    parts, spot = [], side
    for first, second, point in mouths:
        parts.append(Path((bend(spot, leaves, first, turned(direction(first, point), -90)),)))
        spot, leaves = second, turned(direction(second, point), -90)
    parts.append(Path((bend(spot, leaves, top, (-1.0, 0.0)),)))
    return tuple(parts), tuple(point for _, _, point in mouths)


def _dart(plan: Quarter, side_x: float, number: int) -> tuple[Point, Point, Point]:
    """Return the mouth and the point of a dart; one stands at half the waist and 1 cm, more divide it evenly."""
    intake, length = plan.darts[number]
    share = (number + 1) / (len(plan.darts) + 1)
    inner = sum(one for one, _ in plan.darts[:number])
    x = plan.waist_mm * share + (10.0 if len(plan.darts) == 1 else 0.0) + inner + intake / 2
    rise = plan.side_rise_mm + plan.dip_mm
    y = -plan.dip_mm + rise * (x / side_x) ** 2
    along = direction((0.0, 0.0), (1.0, 2 * rise * x / side_x**2))
    down = (along[1], -along[0])
    first = (x + along[0] * intake / 2, y + along[1] * intake / 2)
    second = (x - along[0] * intake / 2, y - along[1] * intake / 2)
    return first, second, (x + down[0] * length, y + down[1] * length)
