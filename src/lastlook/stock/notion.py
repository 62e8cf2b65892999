"""Small things at hand: buttons, zips, elastic, ribbon, thread."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lastlook.finding import Finding
from lastlook.quantity import Unread
from lastlook.stock.entry import Entry

KINDS = ("button", "zip", "elastic", "ribbon", "thread", "hook", "snap", "interfacing", "other")


@dataclass(frozen=True)
class Notion:
    """One kind of small thing, and how much of it there is."""

    name: str
    kind: str
    count: int | None = None
    length_mm: float | None = None
    diameter_mm: float | None = None
    thickness_mm: float | None = None
    colour: str = ""

    @property
    def buttonhole_mm(self) -> float | None:
        """Return the hole a button needs: diameter and thickness, 3 mm for a flat one.

        Sewing guide at about.com, 3 June 1999; the 3 mm is common practice without a source.
        """
        return None if self.diameter_mm is None else self.diameter_mm + (self.thickness_mm or 3.0)

    @property
    def least_overlap_mm(self) -> float | None:
        """Return how far a band must reach beyond its centre line: three quarters of the diameter."""
        return None if self.diameter_mm is None else 0.75 * self.diameter_mm


def read_notion(name: str, table: Mapping[str, object]) -> tuple[Notion, tuple[Finding, ...]]:
    """Return a notion from a table with its `kind`, and `count`, `length` or `diameter`."""
    entry = Entry("notion", name, table)
    kind = entry.text("kind", "other").lower().removesuffix("s")
    if kind not in KINDS:
        entry.unread("kind", Unread(kind, f"“{kind}” is no notion.", f"Use one of: {', '.join(KINDS)}."))
        kind = "other"
    count = entry.number("count", 10_000)
    notion = Notion(
        name,
        kind,
        None if count is None else int(count),
        entry.length_mm("length", 1_000_000),
        entry.length_mm("diameter", 200),
        entry.length_mm("thickness", 50),
        entry.text("colour"),
    )
    return notion, entry.close()
