"""Mock-ups of a sewn garment as the outfit's document keeps them, in the order in which they were put on."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from lastlook.finding import Finding, Where
from lastlook.outfit.written.table import unread
from lastlook.paper.toile import Toile, read_toile


def read_toiles(entries: Any, path: str, findings: list[Finding]) -> tuple[Toile, ...]:
    """Return the toiles, numbered from 1."""
    if not isinstance(entries, list):
        findings.append(unread(path + "toiles", "The toiles are not a list.", f"Begin each with [[{path}toiles]]."))
        return ()
    out = []
    for place, entry in enumerate(entries):
        toile, said = read_toile(entry if isinstance(entry, dict) else {}, place + 1)
        findings += [replace(one, where=Where(fact=f"{path}toiles.{place}")) for one in said]
        out.append(toile)
    return tuple(out)
