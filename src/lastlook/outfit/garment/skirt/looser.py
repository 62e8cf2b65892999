"""What makes a skirt wide enough where it is not: solved, tried on all seams and levels, offered with its edits.

The waist keeps its band: band and top grow together. Knee and hem take flare, the hip its side seams.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import replace

from lastlook import paper
from lastlook.finding import Cure
from lastlook.outfit.answer import Answer
from lastlook.outfit.garment.level import Level
from lastlook.outfit.garment.sewn import Sewn
from lastlook.outfit.garment.skirt.levels import sewn_levels
from lastlook.outfit.outfit import Outfit
from lastlook.paper import Alteration, Drafted
from lastlook.piece import Meets
from lastlook.quantity import Missing

STEP_MM = 0.5
MOST_MM = 60.0
"""An edge that has to move further wants another size (common practice, no source)."""
MOST_FLARE_MM = 150.0
"""Flare beyond this at an edge is another kind of skirt (common practice, no source)."""
TRIES = 4
Make = Callable[[float], Sequence[Alteration]]


def looser(outfit: Outfit, one: Sewn, level: Level) -> Cure | None:
    """Return the alterations that give a level its least ease, or take it back to its most; None where none were found.

    They were tried: the level fits, no seam opened, and no level that fitted stopped fitting.
    """
    make = _maker(one, level.name)
    over = level.over
    if make is None or isinstance(over, Missing):
        return None
    short = level.ease.low_mm - over.low
    by_all = short if short > 0 else -(over.high - level.ease.high_mm)
    edges = sum(piece.times for piece in one.drafted.pieces for side in piece.sides if _is_side(piece, side.name))
    if not edges:
        return None
    each = math.copysign(math.ceil(abs(by_all) / edges / STEP_MM) * STEP_MM, by_all)
    for _ in range(TRIES):
        steps = tuple(make(each))
        if abs(each) > (MOST_FLARE_MM if level.name.endswith("in a step") else MOST_MM) or not steps:
            return None
        if _is_good(outfit, one, steps, level.name):
            return _cure(one, steps)
        each += math.copysign(max(STEP_MM, round(abs(each) * 0.25)), each)
    return None


def _is_side(piece: paper.PaperPiece, name: str) -> bool:
    return piece.role == "skirt" and (name == "side" or name.endswith(" side"))


def _maker(one: Sewn, level: str) -> Make | None:
    """Return what widens a level by so much at each side edge."""
    place = level.removesuffix(" when sitting").removesuffix(" in a step")
    widen, flare = paper.ALTERATIONS["widen"], paper.ALTERATIONS["flare"]
    if place in ("knee", "hem"):
        return lambda mm: _level(one.drafted, flare("all", _at_hem(one.drafted, place, mm)))
    if place in ("hip", "high hip"):
        return lambda mm: _level(one.drafted, widen("all", mm, "hip and hem" if place == "hip" else place))
    if one.plan.elastic is not None:
        return None
    return lambda mm: _waist(one.drafted, mm)


def _level(drafted: Drafted, step: Alteration) -> tuple[Alteration, ...]:
    """Return a step, and the hair at the waist that makes the side seams equal after it."""
    return (step, *paper.levelled(drafted, (step,)))


def _at_hem(drafted: Drafted, place: str, mm: float) -> float:
    """Return how far the hem end of a side swings so that a level widens by `mm`."""
    piece = next((piece for piece in drafted.pieces if piece.role == "skirt"), None)
    hip, knee = (piece.level("hip"), piece.level("knee")) if piece else (None, None)
    depth = paper.hem_depth_mm(drafted.pieces)
    if place == "hem" or hip is None or knee is None or depth is None or knee >= hip:
        return mm
    return round(mm * max(1.0, (depth + hip) / (hip - knee)), 1)


def _waist(drafted: Drafted, mm: float) -> Sequence[Alteration]:
    """Widen the top at its sides, and the band by what the top became longer."""
    seam = next((one for one in drafted.seams if "band" in one.mate.b.piece.lower()), None)
    top = _level(drafted, paper.ALTERATIONS["widen"]("all", mm, "waist"))
    if seam is None:
        return top
    after = next((one for one in paper.alter(drafted, top).seams if one.mate.b == seam.mate.b), None)
    if after is None:
        return ()
    left_behind = round(after.difference - seam.difference, 3)
    return (*top, paper.ALTERATIONS["band-length"](seam.mate.b.piece, left_behind)) if left_behind else top


def _is_good(outfit: Outfit, one: Sewn, steps: Sequence[Alteration], level: str) -> bool:
    after = replace(one, drafted=paper.alter(one.drafted, steps))
    if len(after.drafted.findings) > len(one.drafted.findings):
        return False
    before = {str(seam.mate.a): seam.meets for seam in one.drafted.seams}
    if any(seam.meets is Meets.NO and before.get(str(seam.mate.a)) is not Meets.NO for seam in after.drafted.seams):
        return False
    fitted = {each.name for each in sewn_levels(outfit, one) if each.answer[0] is Answer.YES}
    now = {each.name for each in sewn_levels(outfit, after) if each.answer[0] is Answer.YES}
    return level in now and fitted <= now


def _cure(one: Sewn, steps: Sequence[Alteration]) -> Cure:
    say = " ".join(step.say() for step in steps)
    return Cure(say, tuple(paper.edit(step, f"sewing.{one.plan.name}.") for step in steps))
