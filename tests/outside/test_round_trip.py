"""Leaflets read and composed again at their own gauge: the same cast-on and the same count after every row.

The shared leaflets are tried where their folder lies beside the checkout or LASTLOOK_SHARED names it.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from lastlook import knit
from lastlook.knit.compose import alter
from lastlook.knit.compose.alter.shape.band import is_crochet, is_picked_up, is_told_of_another
from lastlook.knit.compose.alter.shape.divided import set_out

ROOT = Path(__file__).resolve().parent.parent.parent
SHARED = Path(os.environ.get("LASTLOOK_SHARED", ROOT.parent / "shared")) / "examples" / "leaflets"
OURS = ROOT / "examples" / "leaflets"
FLAT = ("raglan", "cardigan", "pullover", "jacket", "slipover")
FILES = sorted(file for folder in (OURS, SHARED) if folder.exists() for file in folder.glob("*.txt"))
TRIED = [file for file in FILES if any(word in file.stem for word in FLAT)]


@pytest.mark.parametrize("file", TRIED, ids=lambda file: file.stem)
def test_own_gauge_gives_every_piece_back(file: Path) -> None:
    reading = knit.read(file.read_text(encoding="utf-8"))
    if reading.gauge is None:
        return
    for size in list(reading.by_size.values())[:2]:
        again = alter.alter(reading, size, alter.Changes())
        if not again.pieces:
            assert again.findings
            continue
        other = (is_picked_up, is_crochet, is_told_of_another)
        kept = [piece for piece in size.pieces if not any(is_so(piece) for is_so in other)]
        for old, new in zip(set_out(kept), again.pieces, strict=False):
            assert (old.name, old.cast_on, old.end_stitches) == (new.name, new.cast_on, new.end_stitches)
            assert [row.after for row in old.rows] == [row.after for row in new.rows], old.name
