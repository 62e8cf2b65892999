"""A shouldered garment worked row by row, with its edges, mates and measures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.composed import FinishedMeasure
from lastlook.knit.compose.craft.edging import edged, in_fabric
from lastlook.knit.compose.craft.ladder import slope
from lastlook.knit.compose.craft.needle import Needle, begins, bind_off, dec
from lastlook.knit.compose.raglan.counts import SEAM_STITCHES
from lastlook.knit.compose.raglan.measures import across_by, down_by
from lastlook.knit.compose.raglan.pieces import HANDS, PLAIN, lower, shape_sides
from lastlook.knit.compose.shoulder.counts import ShoulderCounts, armhole_edge_mm, cap_edge_mm
from lastlook.knit.compose.shoulder.shape import ShoulderShape
from lastlook.knit.worked import Ended, WorkedPiece
from lastlook.piece import Edge, EdgeName, Mate, Unit

CAP_EASE_MM = 15.0
"""A knitted cap takes no more ease than 1-2 cm: common practice, no source."""


def shoulder_pieces(counts: ShoulderCounts, asked: Asked) -> tuple[WorkedPiece, ...]:
    """Return every piece of the garment."""
    fronts: tuple[WorkedPiece, ...]
    if asked.opening == "cardigan":
        fronts = (_half_front(counts, asked, "left"), _half_front(counts, asked, "right"))
    else:
        fronts = _front(counts, asked)
    sleeves = () if asked.sleeve == "none" else (_sleeve(counts, asked),)
    return tuple(in_fabric(piece, asked) for piece in (_back(counts, asked), *fronts, *sleeves))


def shoulder_mates(asked: Asked) -> tuple[Mate, ...]:
    """Return which edges are sewn together."""
    out = []
    for hand in ("left", "right"):
        front = f"{hand.title()} Front" if asked.opening == "cardigan" else "Front"
        out.append(Mate(EdgeName("Back", f"{hand} side"), EdgeName(front, f"{hand} side"), Unit.ROWS, 2.0))
        out.append(Mate(EdgeName("Back", f"{hand} shoulder"), EdgeName(front, f"{hand} shoulder"), Unit.STITCHES))
        out.append(Mate(EdgeName("Back", f"{hand} armhole"), EdgeName(front, f"{hand} armhole"), Unit.ROWS, 2.0))
    if asked.sleeve != "none":
        out.append(Mate(EdgeName("Back", "whole armhole"), EdgeName("Sleeves", "cap"), Unit.MM, 2 * CAP_EASE_MM))
    return tuple(out)


def shoulder_measures(shape: ShoulderShape, counts: ShoulderCounts, asked: Asked) -> tuple[FinishedMeasure, ...]:
    """Return every girth and length of the garment, sewn up."""
    across, down = across_by(asked), down_by(asked)
    halves = 1 if asked.opening == "pullover" else 2
    seams = 4 * SEAM_STITCHES + (2 * SEAM_STITCHES if halves == 2 else 0)
    top = sum(counts.shoulder) * 2 + counts.neck
    out = [
        across("bust girth", shape.bust, counts.back + halves * counts.front - seams, shape.band),
        across("hem girth", shape.hem, counts.hem + halves * counts.front_hem - seams, shape.band),
        down("hem to underarm", shape.side, counts.side_rows),
        down("armhole depth", shape.armhole, counts.armhole_rows),
        across("across the back", shape.across, top - 2 * SEAM_STITCHES, 0.0),
        across("back neck", shape.back_neck, counts.neck, 0.0),
    ]
    if asked.sleeve != "none":
        out += [
            across("upper sleeve girth", shape.upper_sleeve, counts.sleeve - 2 * SEAM_STITCHES, 0.0),
            across("cuff girth", shape.cuff, counts.cuff - 2 * SEAM_STITCHES, 0.0),
            down("sleeve seam", shape.sleeve_seam, counts.sleeve_rows),
        ]
    return tuple(out)


def _armhole(counts: ShoulderCounts) -> tuple[int, ...]:
    """Return what one armhole edge loses in each row after the bind-off."""
    rows = counts.armhole_rows - 2
    return ((1, 0) * counts.armhole_decreases + (0,) * rows)[:rows]


def _underarms(needle: Needle, counts: ShoulderCounts) -> None:
    for edge in ("right", "left"):
        needle.row(PLAIN, (bind_off(edge, counts.underarm),) if counts.underarm else ())


def _back(counts: ShoulderCounts, asked: Asked) -> WorkedPiece:
    needle = lower(counts, asked, counts.hem, ("left", "right"))
    _underarms(needle, counts)
    for take in _armhole(counts):
        needle.row(PLAIN, (dec("left"), dec("right")) if take else ())
    needle.mark("shoulder")
    for stitches in counts.shoulder:
        for edge in ("right", "left"):
            needle.row(PLAIN, (bind_off(edge, stitches),))
    edges = [*_edges("Back", counts, asked, ("left", "right")), Edge(EdgeName("Back", "neck"), stitches=counts.neck)]
    return needle.off("Back", Ended.BOUND_OFF, edges)


def _front(counts: ShoulderCounts, asked: Asked) -> tuple[WorkedPiece, ...]:
    needle = lower(counts, asked, counts.hem, ("left", "right"))
    _underarms(needle, counts)
    takes = _armhole(counts)
    start = len(takes) - counts.neck_rows
    for take in takes[:start]:
        needle.row(PLAIN, (dec("left"), dec("right")) if take else ())
    needle.mark("neck")
    whole = needle.off("Front", Ended.OPEN, _edges("Front", counts, asked, ("left", "right")))
    side = (needle.stitches - counts.neck_center) // 2
    sides = []
    for arm in ("right", "left"):
        half = Needle(side)
        _neck_and_shoulder(half, arm, takes[start:], (0, 0, *_neck(counts, asked)[: counts.neck_rows - 2]), counts)
        name = f"Front, {HANDS[arm]} side"
        sides.append(replace(half.off(name, Ended.BOUND_OFF), part_of="Front", cast_on=None, landmarks=()))
    return whole, *sides


def _neck(counts: ShoulderCounts, asked: Asked) -> tuple[int, ...]:
    """Return what the neck edge loses in each row: at once in a round neck, evenly in a V."""
    rows, decreases = counts.neck_rows, counts.neck_decreases
    spread = slope(decreases, rows - 2) if asked.neck == "v" else None
    takes = spread.takes if spread else (1, 0) * decreases
    return (*takes, *(0,) * (rows - len(takes)))


def _half_front(counts: ShoulderCounts, asked: Asked, hand: str) -> WorkedPiece:
    arm, name = HANDS[hand], f"{hand.title()} Front"
    needle = lower(counts, asked, counts.front_hem, (arm,))
    for _ in range(2):
        starts = begins(needle.side) == arm and counts.underarm
        needle.row(PLAIN, (bind_off(arm, counts.underarm),) if starts else ())
    takes = _armhole(counts)
    start = len(takes) - counts.neck_rows
    neck = HANDS[arm]
    for number, take in enumerate(takes[:start]):
        shapings = (dec(arm),) if take else ()
        if number == start - (1 if neck == "left" else 2) and counts.front_center:
            shapings = (bind_off(neck, counts.front_center), *shapings)
        needle.row(PLAIN, shapings)
    needle.mark("neck")
    _neck_and_shoulder(needle, arm, takes[start:], _neck(counts, asked), counts)
    return needle.off(name, Ended.BOUND_OFF, _edges(name, counts, asked, (hand,)))


def _neck_and_shoulder(
    needle: Needle, arm: str, takes: Sequence[int], neck_takes: Sequence[int], counts: ShoulderCounts
) -> None:
    """Work one side from the start of the neck, and bind its shoulder off in steps, the last on taking it off."""
    neck = HANDS[arm]
    for take, neck_take in zip(takes, neck_takes, strict=True):
        shapings = [dec(arm)] if take else []
        needle.row(PLAIN, [*shapings, *([dec(neck, neck_take, 0)] if neck_take else [])])
    needle.mark("shoulder")
    if arm == "left":
        needle.row(PLAIN)
    for stitches in counts.shoulder[:-1]:
        needle.row(PLAIN, (bind_off(arm, stitches),))
        needle.row(PLAIN)


def _sleeve(counts: ShoulderCounts, asked: Asked) -> WorkedPiece:
    needle = edged(asked, counts.cuff, counts.cuff_rows)
    change = (counts.sleeve - counts.cuff) // 2
    shape_sides(needle, change, counts.sleeve_rows - counts.cuff_rows, ("left", "right"), counts.sleeve_free_rows)
    needle.mark("underarm")
    g, r = asked.stitches_per_mm, asked.rows_per_mm
    length = (counts.cap_top - 2 * SEAM_STITCHES) / g
    if counts.cap is not None:
        _underarms(needle, counts)
        for take in counts.cap.takes:
            needle.row(PLAIN, (dec("left", take), dec("right", take)) if take else ())
        length = 2 * cap_edge_mm(counts.underarm, counts.cap.decreases, len(counts.cap.takes), counts.cap_top, g, r)
    edges = (Edge(EdgeName("Sleeves", "cap"), mm=length), Edge(EdgeName("Sleeves", "seam"), rows=counts.sleeve_rows))
    return needle.off("Sleeves", Ended.BOUND_OFF, edges, make=2)


def _edges(name: str, counts: ShoulderCounts, asked: Asked, hands: Sequence[str]) -> list[Edge]:
    g, r = asked.stitches_per_mm, asked.rows_per_mm
    lost = counts.underarm + counts.armhole_decreases
    one = armhole_edge_mm(lost, counts.underarm, counts.armhole_rows, g, r)
    out = [Edge(EdgeName(name, "whole armhole"), mm=2 * one)]
    for hand in hands:
        out.append(Edge(EdgeName(name, f"{hand} side"), rows=counts.side_rows))
        out.append(Edge(EdgeName(name, f"{hand} armhole"), rows=counts.armhole_rows))
        out.append(Edge(EdgeName(name, f"{hand} shoulder"), stitches=sum(counts.shoulder)))
    return out
