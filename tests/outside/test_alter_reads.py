"""Leaflets that add up, altered and read again as a stranger would: every page adds up, count for count.

A sample of what `python -m benchmarks alter` does in full; shared leaflets are tried where their folder is there.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from lastlook import knit
from lastlook.knit.compose import alter
from lastlook.quantity import Missing, Origin, gauge_of

ROOT = Path(__file__).resolve().parent.parent.parent
SHARED = Path(os.environ.get("LASTLOOK_SHARED", ROOT.parent / "shared")) / "examples" / "leaflets"
FOLDERS = [folder for folder in (ROOT / "examples" / "leaflets", SHARED) if folder.exists()]
FILES = [file for folder in FOLDERS for file in sorted(folder.glob("*.txt"))]
WAYS = (
    alter.Changes(),
    alter.Changes(longer_mm={"body": 20.0, "sleeve": -10.0}),
    alter.Changes(longer_mm={"armhole": 15.0}),
    alter.Changes(wider_mm={"upper-arm": 20.0, "bust": 40.0}),
)
REASONS = {"piece-not-altered", "gauge-missing", "constraints-clash"}
NOT_YET = {"family-raglan-1962"}
"""Leaflets whose front is worked in two sides at once from a row that holds the centre: no page is given yet."""


@pytest.mark.parametrize("number", range(len(FILES)), ids=lambda number: FILES[number].stem)
def test_an_altered_page_adds_up(number: int) -> None:
    reading = knit.read(FILES[number].read_text(encoding="utf-8"))
    size = next((one for one in reading.by_size.values() if one.verdict == "adds up"), None)
    if size is None or reading.gauge is None or isinstance(reading.gauge.rows, Missing):
        return
    share = (0.8, 1.0, 1.2)[number % 3]
    gauge = gauge_of(
        round(reading.gauge.stitches.best * share, 1), round(reading.gauge.rows.best * share, 1), Origin.MEASURED
    )
    for way in (WAYS[0], WAYS[1 + number % 3]):
        made = alter.sure(alter.alter(reading, size, alter.Changes(gauge, way.longer_mm, way.wider_mm)), size)
        if made.leaflet:
            again = knit.read(made.leaflet)
            assert {one.verdict for one in again.by_size.values()} == {"adds up"}
        else:
            reasons = REASONS | ({"page-unproven"} if FILES[number].stem in NOT_YET else set())
            assert [one.kind for one in made.findings if one.kind in reasons], made.findings
