"""Truing a set of pieces: every seam walked, every dart closed, every corner looked at, before anything is cut."""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Finding
from lastlook.paper.drafted import Drafted
from lastlook.paper.truing.cure import Remedy
from lastlook.paper.truing.seams import edit, open_seams
from lastlook.paper.truing.shape import shape_findings

__all__ = ["Remedy", "edit", "true", "trued"]


def true(drafted: Drafted, facts: str = "") -> tuple[Finding, ...]:
    """Return what does not come together, with cures that add alterations under `facts` in the outfit's document."""
    return (*open_seams(drafted, facts), *shape_findings(drafted))


def trued(drafted: Drafted) -> Drafted:
    """Return the set with what truing has to say among its findings."""
    return replace(drafted, findings=(*drafted.findings, *true(drafted)))
