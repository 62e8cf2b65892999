"""From what was seen to the alterations that answer it.

Signs and changes: Fitting Dresses, USDA, rev. 1946, as retold (read) for hips, riding up, puckers and hem; swing
directions and amounts common practice, no source. A change all round is shared over the four side edges.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.paper.alter import Alteration, FullAbdomen, FullSeat, HighHip, Lengthen, SwayBack, Unfold, Widen
from lastlook.paper.fit.sharing import per_edge_mm
from lastlook.paper.toile.observed import Observation, Seen, Toile, counts, is_sure

FIRST_TRY_MM = 12.0
"""Where a sign gives no figure: about the middle of 1/4-1 in (common practice, no source)."""
PIECES = {"front": ("Front",), "back": ("Back",)}


@dataclass(frozen=True)
class Proposal:
    """One observation with what to change, and whether it is sure."""

    observation: Observation
    alterations: tuple[Alteration, ...]
    because: str
    sure: bool


def propose(toile: Toile) -> tuple[Proposal, ...]:
    """Return what each observation asks for; what isn't sewn yet, or was sewn off its line, asks for nothing."""
    return tuple(_answer(toile, one) for one in toile.observations if counts(toile, one))


def _answer(toile: Toile, one: Observation) -> Proposal:
    if one.off_its_line_mm:
        say = f"The seam lies {one.off_its_line_mm:.0f} mm beside its line: sew it again before the paper is changed."
        return Proposal(one, (), say, True)
    if one.on_purpose:
        return Proposal(one, (), f"Kept as a reserve of {one.amount_mm:.0f} mm, to be taken in later.", True)
    alterations, because = _change(one)
    return Proposal(one, alterations, because, is_sure(toile, one))


def _change(one: Observation) -> tuple[tuple[Alteration, ...], str]:
    amount = one.amount_mm or FIRST_TRY_MM
    if one.seen in (Seen.PINCHED, Seen.SHORT_OF):
        return _girth(one, amount if one.seen is Seen.SHORT_OF else -amount)
    if one.seen in (Seen.RIDES_UP, Seen.PULLS, Seen.FOLD_UNDER_BAND) and one.part != "back":
        return _girth(Observation(Seen.SHORT_OF, "hip", one.part, amount), amount, "Too small at the hip: ")
    if one.seen in (Seen.FOLD_UNDER_BAND, Seen.DIPS):
        return (SwayBack(amount),), "The back waist is too long: lift it at the centre, to nothing at the sides."
    if one.seen is Seen.SWINGS_FORWARD:
        return (FullAbdomen(amount),), "The front is held up: let it down at the waist edge."
    if one.seen is Seen.SWINGS_BACK:
        return (FullSeat(amount),), "The back is held up: let it down at the waist edge."
    if one.seen is Seen.DIAGONAL:
        side = one.part if one.part.endswith("side") else "left side"
        steps = (Unfold("Front"), Unfold("Back"), HighHip(amount, side))
        return steps, f"The {side.removesuffix(' side')} hip is higher: let the cloth down at the waist there."
    words = (
        "Press the seam and look again: it may be the tension." if one.seen is Seen.PUCKERS else "Nothing to change."
    )
    return (), words


def _girth(one: Observation, by_mm: float, lead: str = "") -> tuple[tuple[Alteration, ...], str]:
    """Share a change of a girth over the side edges it concerns, or lengthen at the hem."""
    if one.at == "hem":
        return (Lengthen("all", by_mm),), f"{'Longer' if by_mm > 0 else 'Shorter'} by {abs(by_mm):.0f} mm at the hem."
    pieces = PIECES.get(one.part, ("Front", "Back"))
    each = per_edge_mm(by_mm, 2) * (2 / len(pieces))
    at = "hip and hem" if one.at == "hip" else "all" if one.at == "side seam" else one.at
    words = f"{abs(by_mm):.0f} mm in all, {abs(each):.1f} mm at each of {2 * len(pieces)} edges."
    return tuple(Widen(piece, each, at) for piece in pieces), lead + words
