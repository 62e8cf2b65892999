"""A garment to be sewn, derived: drafted for the wearer, altered, trued, and laid on its cloth.

A stored lay is judged again with the pieces as they are now; only if it breaks is it stale.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from lastlook import lay, paper
from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit.garment.printed_length import assumed_length_mm
from lastlook.outfit.garment.problem import problem
from lastlook.outfit.outfit import Outfit, Sewing
from lastlook.outfit.taken import taken_in, with_envelope
from lastlook.quantity import Missing, Origin
from lastlook.stock import Cloth
from lastlook.wearer import Measure, measure

ASKED = (
    "waist_girth",
    "hip_girth",
    "top_hip_girth",
    "waist_to_top_hip",
    "waist_to_hip",
    "waist_to_hem",
    "waist_to_knee",
    "stature",
    "knee_girth",
    "stride_girth",
    "waist_girth_sitting",
    "hip_girth_sitting",
)
"""The measures that drafts and their fit ask for."""


ROOMY = 0.8
"""Boxes that fill less than this of a cloth leave nothing to prove before a search."""


@dataclass(frozen=True)
class Sewn:
    """What a sewing comes to."""

    plan: Sewing
    drafted: paper.Drafted
    findings: tuple[Finding, ...]
    """What truing has to say, with cures that point into this outfit."""
    cloth: Cloth | None
    problem: lay.Problem | None
    placements: tuple[lay.Placement, ...] | Missing
    judgement: lay.Judgement | None
    """Of the stored lay with the pieces as they are now; None where there is none."""
    hopeless: tuple[Finding, ...] = ()
    """Proofs that no lay exists; asked only where none holds."""

    @property
    def cut(self) -> tuple[lay.Placement, ...]:
        """Return where the pieces lie that were cut out already."""
        return () if isinstance(self.placements, Missing) else cut_of(self.plan, self.placements)


def cut_of(plan: Sewing, placements: tuple[lay.Placement, ...]) -> tuple[lay.Placement, ...]:
    """Return the placements that were cut out already."""
    known = {(one.piece, one.copy, one.part) for one in plan.cut}
    return tuple(one for one in placements if (one.id, one.copy, one.part) in known)


def sewn(outfit: Outfit, plan: Sewing) -> Sewn:
    """Return what a sewing comes to."""
    drafted = draft(outfit, plan)
    findings = tuple(paper.true(drafted, f"sewing.{plan.name}."))
    cloth = outfit.cloth(plan.cloth)
    asked = problem(cloth, drafted.pieces, plan.fold) if cloth and drafted.pieces else None
    placements = stored(outfit, plan)
    judged = None
    if asked is not None and not isinstance(placements, Missing):
        judged = lay.judge(asked, placements, cut_of(plan, placements))
    holds = judged is not None and judged.proven
    hopeless = _hopeless(asked) if asked is not None and not holds else ()
    return Sewn(plan, drafted, findings, cloth, asked, placements, judged, hopeless)


@lru_cache(maxsize=16)
def _hopeless(asked: lay.Problem) -> tuple[Finding, ...]:
    """Return why no lay can exist, where that is proven before any search; a roomy cloth is not asked."""
    boxes = [_box(piece) for piece in asked.pieces]
    cloth = asked.cloth
    wide = cloth.width_mm - 2 * cloth.selvedge_mm
    too_wide = [
        _too_wide(piece.id, across, wide)
        for piece, (_, across) in zip(asked.pieces, boxes, strict=True)
        if across > wide and piece.tilt_deg == 0 and piece.grain_deg is not None and piece.pieced is None
    ]
    if too_wide:
        return tuple(too_wide)
    plain = cloth.outline is None and cloth.fold is lay.Fold.NONE and cloth.length_mm is not None
    if plain and all(along <= (cloth.length_mm or 0.0) for along, _ in boxes):
        need = sum(along * across * piece.quantity for piece, (along, across) in zip(asked.pieces, boxes, strict=True))
        if need < ROOMY * wide * (cloth.length_mm or 0.0):
            return ()
    return tuple(one for one in lay.search(asked, passes=0).findings if one.certainty is Certainty.PROVEN)


def _box(piece: lay.Wanted) -> tuple[float, float]:
    """Return how far a piece, opened out, reaches along the cloth and across it, in mm."""
    xs, ys = zip(*piece.outline, strict=True)
    along, across = max(xs) - min(xs), (max(ys) - min(ys)) * (2 if piece.on_fold else 1)
    return (across, along) if piece.grain_deg == 90.0 else (along, across)


def _too_wide(name: str, across_mm: float, wide_mm: float) -> Finding:
    return Finding(
        "piece-without-room",
        Certainty.PROVEN,
        f"{name} is {across_mm / 10:.1f} cm wide across the grain; the cloth has {wide_mm / 10:.1f} cm between its "
        "selvedges.",
        "A piece keeps its grain along the cloth, so it can't be turned to go in.",
        "Cut it in two with a seam, make it narrower, or take another cloth.",
        where=Where(piece=name),
    )


def draft(outfit: Outfit, plan: Sewing) -> paper.Drafted:
    """Return the pieces of a sewing for this wearer, altered as planned."""
    known = {name: measure(outfit.wearer, name) for name in ASKED}
    measures = {name: one.mm.best for name, one in known.items() if isinstance(one, Measure)}
    measures |= _knee(outfit, measures)
    if plan.taken:
        easing = _easing(plan, outfit.cloth(plan.cloth))
        taken = with_envelope(taken_in(outfit.document, plan.taken, measures, easing), plan.envelope)
        return paper.alter(taken, plan.alterations)
    options = dict(plan.options)
    length = measures.get("waist_to_hem") or assumed_length_mm(outfit, plan)
    if length is not None:
        options.setdefault("length_mm", length)
    drafted = paper.draft(plan.kind, measures, options)
    return paper.alter(replace(drafted, easing=_easing(plan, outfit.cloth(plan.cloth))), plan.alterations)


def _knee(outfit: Outfit, measures: Mapping[str, float]) -> dict[str, float]:
    """Return how far the knee lies below the waist, from both heights, where it was not measured."""
    waist, knee = measure(outfit.wearer, "waist_height"), measure(outfit.wearer, "knee_height")
    if "waist_to_knee" in measures or isinstance(waist, Missing) or isinstance(knee, Missing):
        return {}
    return {"waist_to_knee": waist.mm.best - knee.mm.best}


def _easing(plan: Sewing, cloth: Cloth | None) -> paper.Easing:
    """Return what the cloth lets itself be eased: as a test strip showed, else the prior of its fibre."""
    if plan.eases is not None:
        return paper.Easing(plan.eases, Origin.MEASURED)
    return paper.easing_of(cloth.fibre) if cloth else paper.UNKNOWN


def stored(outfit: Outfit, plan: Sewing) -> tuple[lay.Placement, ...] | Missing:
    """Return the placements of the stored lay, Missing where there is none that can be read."""
    lack = Missing("the lay", "Let the pieces be laid again.")
    text = outfit.document.text(plan.lay) if plan.lay else None
    if text is None:
        return lack
    try:
        value = json.loads(text)
    except ValueError:
        return lack
    placements = lay.read_placements(value.get("placements") if isinstance(value, dict) else None)
    return lack if placements is None else placements
