"""Alter every leaflet that adds up, in every size, at three gauges, and read each page as a stranger would.

    python -m benchmarks alter [FOLDER …]

FOLDERs hold leaflets as text (default: examples/leaflets, and ../shared/examples/leaflets where it is there).
"""

from __future__ import annotations

import time
from collections import Counter
from pathlib import Path

from lastlook import knit
from lastlook.knit import LeafletReading
from lastlook.knit.compose import alter
from lastlook.quantity import Gauge, Missing, Origin, gauge_of

ROOT = Path(__file__).resolve().parent.parent
FOLDERS = (ROOT / "examples" / "leaflets", ROOT.parent / "shared" / "examples" / "leaflets")
GAUGES = (1.0, 0.8, 1.2)
"""The leaflet's own, a fifth coarser, a fifth finer."""


def at(gauge: Gauge, share: float) -> Gauge:
    """Return a gauge with that share of the stitches and rows."""
    rows = None if isinstance(gauge.rows, Missing) else round(gauge.rows.best * share, 1)
    return gauge_of(round(gauge.stitches.best * share, 1), rows, Origin.MEASURED)


def outcomes(reading: LeafletReading) -> Counter[str]:
    """Return how often a page adds up, and how often there is none, by what stands in its way."""
    out: Counter[str] = Counter()
    for size in (one for one in reading.by_size.values() if one.verdict == "adds up"):
        for share in GAUGES:
            gauge = at(reading.gauge, share) if reading.gauge else None
            made = alter.sure(alter.alter(reading, size, alter.Changes(gauge=gauge)), size)
            out["adds up" if made.leaflet else made.findings[0].kind] += 1
    return out


def main(words: list[str]) -> int:
    """Run it and print the table; 1 where a page did not add up."""
    folders = [Path(word) for word in words] or [folder for folder in FOLDERS if folder.exists()]
    start, total = time.perf_counter(), Counter[str]()
    print("| leaflet | sizes that add up | pages that add up | no page, by finding |")
    print("|---|---|---|---|")
    for file in [file for folder in folders for file in sorted(folder.glob("*.txt"))]:
        reading = knit.read(file.read_text(encoding="utf-8"))
        found = outcomes(reading)
        if not found:
            continue
        total += found
        rest = ", ".join(f"{kind} {count}" for kind, count in found.items() if kind != "adds up")
        print(f"| {file.stem} | {found.total() // len(GAUGES)} | {found['adds up']} of {found.total()} | {rest} |")
    print(f"\n{total['adds up']} of {total.total()} pages add up; {time.perf_counter() - start:.0f} s in all")
    return 1 if total["page-unproven"] else 0
