"""A fitted two-piece skirt: front and back quarters, darts that share the suppression with the sides, and a band.

*Suppression* is what the hip has more than the waist, ease on both. Widths and darts of 2 cm: WikiEducator,
Handout for drafting skirt block (read). A side edge takes 4 cm at most, a front dart 2.5 cm, a back dart 3 cm, then
there are two (from memory of textbooks).
"""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.draft.ask import Ask
from lastlook.paper.draft.block import Quarter, level_side, quarter
from lastlook.paper.draft.parts.waistband import Band, waistband
from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seam_edge import Use
from lastlook.paper.seams import Counted, Fullness, Join
from lastlook.piece import EdgeName

BACK_WIDER_HIP_MM = 7.5
BACK_WIDER_WAIST_MM = 6.0
"""Back quarter wider than an even quarter, front narrower by as much (WikiEducator handout: 27 and 25.5; 22.2 - 2
and 21 - 2; worked for waist 76, hip 100)."""
MOST_SIDE_MM = 40.0
MOST_FRONT_DART_MM = 25.0
MOST_BACK_DART_MM = 30.0
LEAST_DART_MM = 10.0
ABOVE_HIP_MM = 25.0
"""A dart ends at least this far above the fullest hip (2.5-4 cm, from memory of textbooks)."""


def fitted(ask: Ask, hem_mm: float) -> Drafted:
    """Return front, back and waistband for a hem of that girth."""
    front = _plan(ask, "Front", -1, hem_mm)
    back = _plan(ask, "Back", 1, hem_mm)
    front_piece = quarter(front)
    back_piece = quarter(level_side(back, _side_mm(front_piece))) if front_piece else None
    if front_piece is None or back_piece is None:
        return Drafted(ask.kind, (), (), ask.measures, ask.options, findings=(no_shape(ask, hem_mm),))
    band = waistband(band_for(ask, (back_piece, front_piece)))
    return Drafted(
        ask.kind,
        (front_piece, back_piece, band),
        joins_of(front_piece, back_piece, band),
        ask.measures,
        ask.options,
        findings=(*ask.findings, *_notes(ask, front, back)),
    )


def joins_of(front: PaperPiece, back: PaperPiece, band: PaperPiece) -> tuple[Join, ...]:
    """Return the side seams, the centre seam if there is one, and the waist seam."""
    joins = [Join((EdgeName(front.name, "side"),), (EdgeName(back.name, "side"),))]
    tops = (EdgeName(front.name, "waist"), EdgeName(back.name, "waist"))
    joins.append(Join(tops, (EdgeName(band.name, "waist"),), Counted.WHOLE, Fullness.EASED))
    return tuple(joins)


def band_for(ask: Ask, order: tuple[PaperPiece, ...]) -> Band:
    """Return the band for a finished waist, or the one that is there already, with the skirt's seams marked."""
    length = ask.options.get("band_mm", ask.top_mm)
    lengths = [(piece.side("waist"), piece) for piece in order]
    shares = tuple((piece.name, side.sewn_mm * piece.times) for side, piece in lengths if side)
    return Band(length, ask.option("band_width_mm"), ask.option("lap_mm"), ask.option("seam_allowance_mm"), shares)


def _plan(ask: Ask, name: str, sign: int, hem_mm: float) -> Quarter:
    hip = ask.around_hip_mm / 4 + sign * BACK_WIDER_HIP_MM
    waist = (ask.top_mm + ask.option("ease_in_mm")) / 4 + sign * BACK_WIDER_WAIST_MM
    is_back = sign > 0
    length = ask.option("back_dart_length_mm" if is_back else "front_dart_length_mm")
    length = min(length, max(20.0, ask.hip_depth_mm - ABOVE_HIP_MM))
    most = MOST_BACK_DART_MM if is_back else MOST_FRONT_DART_MM
    centre = Use.SEAM if is_back and ask.option("centre_back_seam") else Use.FOLD
    return Quarter(
        name, waist, hip, hip + (hem_mm - ask.around_hip_mm) / 4, ask.hip_depth_mm, ask.length_mm,
        dip_mm=ask.option("back_dip_mm") if is_back else 0.0,
        side_rise_mm=ask.option("side_rise_mm"),
        darts=tuple((intake, length) for intake in _intakes(ask, hip - waist, most)),
        seam_mm=ask.option("seam_allowance_mm"),
        side_seam_mm=ask.options.get("side_allowance_mm", ask.option("seam_allowance_mm")),
        hem_allowance_mm=ask.option("hem_allowance_mm"),
        centre=centre,
        levels=ask.levels,
    )  # fmt: skip


def _intakes(ask: Ask, suppression_mm: float, most_mm: float) -> tuple[float, ...]:
    """Return the darts of a quarter: one of the width that was asked for, else what the limits ask for."""
    asked = ask.options.get("dart_mm")
    if asked is not None and LEAST_DART_MM / 2 <= asked < suppression_mm:
        return (asked,)
    return darts_for(suppression_mm, ask.option("dart_mm") if asked is None else 0.0, most_mm)


def darts_for(suppression_mm: float, wanted_mm: float, most_mm: float) -> tuple[float, ...]:
    """Return the intakes of the darts of one quarter; what they leave goes into the side seam.

    >>> darts_for(66.5, 20.0, 30.0)
    (26.5,)
    """
    if suppression_mm < LEAST_DART_MM or wanted_mm < LEAST_DART_MM:
        return ()
    single = max(min(wanted_mm, suppression_mm), suppression_mm - MOST_SIDE_MM)
    if single <= most_mm:
        return (single,)
    each = min(single / 2, most_mm)
    return (each, each)


def _side_mm(piece: PaperPiece) -> float:
    side = piece.side("side")
    return side.sewn_mm if side else 0.0


def _notes(ask: Ask, *plans: Quarter) -> tuple[Finding, ...]:
    """Say where even two darts leave the side seam more than it takes."""
    out = []
    for plan in plans:
        left = plan.hip_mm - plan.waist_mm - sum(intake for intake, _ in plan.darts)
        if left > MOST_SIDE_MM + 0.05:
            out.append(_steep(replace(plan), left))
    return tuple(out)


def _steep(plan: Quarter, left: float) -> Finding:
    taken = " and ".join(f"{intake:.0f} mm" for intake, _ in plan.darts) or "none"
    return Finding(
        "side-curve-steep",
        Certainty.DOUBTFUL,
        f"The side seam of {plan.name} curves in by {left:.0f} mm between hip and waist; "
        f"about {MOST_SIDE_MM:.0f} mm lies well.",
        f"The hip is that much wider than the waist; the darts take {taken}. Common practice, no source.",
        "Make a toile of the hip, or take the rest up in gathers, pleats or a yoke.",
        where=Where(piece=plan.name, edge="side"),
    )


def no_shape(ask: Ask, hem_mm: float) -> Finding:
    """Return that no skirt has these figures."""
    return Finding(
        "draft-without-shape",
        Certainty.PROVEN,
        f"No {ask.kind} skirt has a waist of {ask.top_mm / 10:.1f} cm, a hip of {ask.around_hip_mm / 10:.1f} cm, "
        f"{ask.hip_depth_mm / 10:.1f} cm deep, a hem of {hem_mm / 10:.1f} cm and a length of "
        f"{ask.length_mm / 10:.1f} cm.",
        "The side seam would have to lie flatter than it can, or the skirt ends above the hip.",
        "Look at the length, the hip depth and the hem again.",
    )
