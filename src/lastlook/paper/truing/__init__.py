"""Truing a set of pieces: every seam walked, every dart closed, every corner looked at, before anything is cut."""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Finding
from lastlook.paper.alter import Alteration, alter, read_alteration
from lastlook.paper.drafted import Drafted
from lastlook.paper.fit import Over, fit_of, hem_findings, opening_note, seated_findings
from lastlook.paper.truing.cure import Remedy, levelled
from lastlook.paper.truing.seams import edit, open_seams
from lastlook.paper.truing.shape import shape_findings

__all__ = ["Remedy", "closed", "edit", "levelled", "true", "trued"]


def true(drafted: Drafted, facts: str = "") -> tuple[Finding, ...]:
    """Return what does not come together, with cures that add alterations under `facts` in the outfit's document."""
    return (*open_seams(drafted, facts), *shape_findings(drafted))


def trued(drafted: Drafted) -> Drafted:
    """Return the set with what truing, the hem, sitting down and the opening have to say among its findings."""
    worn = seated_findings(fit_of(drafted, drafted.measures, {}))
    hem = hem_findings(drafted, drafted.easing)
    waist, hip, depth = (
        drafted.girths_mm["waist"],
        drafted.measures.get("hip_girth"),
        drafted.measures.get("waist_to_hip"),
    )
    opening = () if waist is None or hip is None or depth is None else (opening_note(Over(waist, hip, depth)),)
    return replace(drafted, findings=(*drafted.findings, *true(drafted), *hem, *worn, *opening))


def closed(drafted: Drafted) -> tuple[tuple[Alteration, ...], Drafted]:
    """Return the first alterations offered for every open seam, and the set with them made."""
    steps: list[Alteration] = []
    for _ in range(MOST_ROUNDS):
        cures = [found.cures[0] for found in true(drafted) if found.cures]
        if not cures:
            break
        read = [read_alteration(dict(one.value)) for one in cures[0].edits if isinstance(one.value, tuple)]
        made = [one for one in read if not isinstance(one, Finding)]
        steps += made
        drafted = alter(drafted, made)
    return tuple(steps), drafted


MOST_ROUNDS = 6
"""A skirt has few seams that can stand open; each round closes one."""
