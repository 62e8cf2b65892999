"""Which steps of a piece are meant for one size only: 'Large size only: … All sizes: …'."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.knit.needle.hands import Task
from lastlook.leaflet import Leaflet
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step


def for_size(task: Task, leaflet: Leaflet, size: int) -> Task:
    """Return a piece with the steps that concern this size."""
    if len(leaflet.sizes) < 2:
        return task
    text = leaflet.source.text
    kept: list[Step] = []
    meant: set[int] | None = None
    for step in task.steps:
        if isinstance(step, say.Section):
            meant = None
        elif isinstance(step, say.Nothing):
            words = " ".join(text[step.span.start : step.span.end + 14].lower().split())
            meant = _meant(words, leaflet.sizes, meant)
        if meant is None or size in meant:
            kept.append(step)
    return task if len(kept) == len(task.steps) else replace(task, steps=tuple(kept))


def _meant(words: str, sizes: tuple[str, ...], before: set[int] | None) -> set[int] | None:
    """Return the sizes that what follows is for; None where it is for all."""
    if re.match(r"\W*(?:all|both) sizes\b", words):
        return None
    found = re.match(r"\W*(?:for )?(.{1,40}?)\bsizes?,? only\b|\W*sizes? (.{1,40}?) only\b", words)
    if found is None:
        return before
    named = set(re.findall(r"[a-z0-9½¼¾]+", found[1] or found[2] or ""))
    meant = {number for number, label in enumerate(sizes) if label.lower() in named}
    return meant or before
