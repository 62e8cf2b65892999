"""Cuts that were made: a cut is a fact, and whatever is laid anew leaves it where it is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from lastlook.finding import Finding
from lastlook.outfit.written.table import count, strangers, unread


@dataclass(frozen=True)
class CutMade:
    """One piece that was cut out, as the lay counts it."""

    piece: str
    copy: int
    part: int = 1
    day: str = ""


def read_cuts(entries: Any, path: str, findings: list[Finding]) -> tuple[CutMade, ...]:
    """Return the cuts; one that can't be read is said and left out."""
    if not isinstance(entries, list):
        findings.append(unread(path + "cut", "The cuts are not a list.", f"Begin each with [[{path}cut]]."))
        return ()
    out = []
    for spot, entry in enumerate(entries):
        at = f"{path}cut.{spot}."
        facts = entry if isinstance(entry, dict) else {}
        findings += strangers(facts, ("piece", "copy", "part", "day"), at)
        copy, part = count(facts, "copy", at, findings), count(facts, "part", at, findings)
        if "piece" not in facts or copy is None:
            said = "A cut does not say which piece it was."
            findings.append(unread(at.rstrip("."), said, "Give it its piece and its copy."))
            continue
        out.append(CutMade(str(facts["piece"]), copy, 1 if part is None else part, str(facts.get("day", ""))))
    return tuple(out)
