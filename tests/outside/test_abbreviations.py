"""Standard abbreviations use and give what published lists say.

Source of the meanings: abbreviation lists of cvetulka, trantor, sweaterbabe, dummies.com, nancy-queen, herrschners,
cloudpurpleknits and knittingmagic, read in two or more of the eight; the counts follow from the meanings. Entries
marked 'memory' are trade usage, from memory.
"""

from __future__ import annotations

import pytest

from lastlook import leaflet
from lastlook.knit.needle.solve import fixed_gives, fixed_uses
from lastlook.leaflet.parse import Cursor
from lastlook.leaflet.parse.stitch.runs import run

TABLE = (
    ("k 1", 1, 1), ("p 1", 1, 1), ("sl 1", 1, 1), ("k2tog", 2, 1), ("K 2 tog.", 2, 1), ("k. 2 tog", 2, 1),
    ("p2tog", 2, 1),
    ("k3tog", 3, 1), ("p3tog", 3, 1), ("k2tog tbl", 2, 1), ("p2tog tbl", 2, 1), ("ssk", 2, 1), ("ssp", 2, 1),
    ("skp", 2, 1), ("skpo", 2, 1), ("sl 1, k 1, psso", 2, 1), ("sl.1, K.1, p.s.s.o.", 2, 1), ("sk2p", 3, 1),
    ("sl 1, k2tog, psso", 3, 1), ("s2kp", 3, 1), ("yo", 0, 1), ("y o", 0, 1), ("wl. fwd.", 0, 1), ("yrn", 0, 1),
    ("yon", 0, 1), ("yfrn", 0, 1), ("m1", 0, 1), ("make 1", 0, 1), ("kfb", 1, 2), ("pfb", 1, 2),
    ("inc in next st", 1, 2), ("k in front and back of next st", 1, 2), ("narrow", 2, 1),
    ("knit two together", 2, 1), ("C4F", 4, 4), ("C6F", 6, 6), ("C6B", 6, 6), ("drop 1 st", 1, 0),
    ("kfbf", 1, 3), ("over twice", 0, 2), ("(k 1, yo, k 1) in next st", 1, 3),
)  # fmt: skip
"""Wording, stitches used, stitches given; C4F to the end from memory."""


@pytest.mark.parametrize(("words", "uses", "gives"), TABLE, ids=[one[0] for one in TABLE])
def test_net_change(words: str, uses: int, gives: int) -> None:
    cursor = Cursor(leaflet.canon(words, 0, len(words), leaflet.vocabulary(), 1))
    items = run(cursor)
    assert items, f"{words} was not read"
    assert (fixed_uses(items, 0), fixed_gives(items, 0)) == (uses, gives)
