"""A garment to be sewn, derived: drafted for the wearer, altered, trued, and laid on its cloth.

A stored lay is judged again with the pieces as they are now; only if it breaks is it stale.
"""

from __future__ import annotations

import json
from dataclasses import dataclass

from lastlook import lay, paper
from lastlook.finding import Finding
from lastlook.outfit.garment.problem import problem
from lastlook.outfit.outfit import Outfit, Sewing
from lastlook.quantity import Missing
from lastlook.stock import Cloth
from lastlook.wearer import Measure, measure

ASKED = ("waist_girth", "hip_girth", "top_hip_girth", "waist_to_hip", "waist_to_hem", "waist_to_knee", "stature")
"""The measures that drafts ask for."""


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


def sewn(outfit: Outfit, plan: Sewing) -> Sewn:
    """Return what a sewing comes to."""
    drafted = draft(outfit, plan)
    findings = tuple(paper.true(drafted, f"sewing.{plan.name}."))
    cloth = outfit.cloth(plan.cloth)
    asked = problem(cloth, drafted.pieces, plan.fold) if cloth and drafted.pieces else None
    placements = stored(outfit, plan)
    judged = None
    if asked is not None and not isinstance(placements, Missing):
        judged = lay.judge(asked, placements)
    return Sewn(plan, drafted, findings, cloth, asked, placements, judged)


def draft(outfit: Outfit, plan: Sewing) -> paper.Drafted:
    """Return the pieces of a sewing for this wearer, altered as planned."""
    known = {name: measure(outfit.wearer, name) for name in ASKED}
    measures = {name: one.mm.best for name, one in known.items() if isinstance(one, Measure)}
    outfit.cloth(plan.cloth)
    return paper.alter(paper.draft(plan.kind, measures, dict(plan.options)), plan.alterations)


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
