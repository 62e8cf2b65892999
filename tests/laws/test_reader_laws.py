"""What holds for every text: it reads, it comes back whole, stitches are conserved, mirrors mirror."""

from __future__ import annotations

import json
import time
from itertools import pairwise
from typing import Any

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from lastlook import knit
from lastlook.leaflet.trade.tokens import tokens
from tests import corpus

QUICK = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
SLOWEST_S = 10.0
LEAFLETS = corpus.leaflets()

VOCABULARY = """k p K.2 P.2 k2tog p2tog psso p.s.s.o. sl yo wl.fwd. narrow over seam pearl cast on off bind until
rem sts. st. stitches row rows round 1st 2nd Row NEXT ROW: repeat rep. from * ** to end across ending with ( ) [ ] , ;
. : -- dec. inc. 1 2 3 7 34 (36-38) [36, 38] 4½ 1/2 1-1/2 inches ins. cm every other alt. 6th 8th each both ends at beg.
of the next same time turn holder pick up and k markers BACK FRONT SLEEVES LEFT RIGHT work even measures
gauge: = Sizes times twice once more ✕ † 0 l O K-O reversing shaping correspond purl knit ch sc dc hook thread
four twenty-one hundred all sizes remaining fasten draw weave sew"""
WORDS = st.sampled_from(VOCABULARY.split())
TRADE = st.lists(WORDS, max_size=120).map(" ".join)
PASSAGES = st.lists(
    st.sampled_from([part for leaflet in LEAFLETS for part in leaflet.text.split(". ")]), max_size=12
).map(". ".join)
COUNTS = st.integers(min_value=20, max_value=90)
ANY = st.text(max_size=400) | TRADE | PASSAGES


@QUICK
@given(ANY)
@example("")
@example("\x00\ufeff\r\n\t½½½ 1/0 9999999999 sts")
@example("(" * 300 + "k1" + ")" * 300)
@example("* " * 200 + "k 1, repeat from * 999999 times")
@example("cast on 999999999 sts. Repeat last 2 rows 999999999 times.")
def test_any_text_reads_within_bounds(text: str) -> None:
    began = time.monotonic()
    reading = knit.as_json(knit.read(text))
    assert time.monotonic() - began < SLOWEST_S
    json.dumps(reading)
    words = reading["read"]
    assert 0 <= words["understood"] <= words["phrases"]
    last = text.count("\n") + 1
    spots = [*words["not_understood"], *reading["findings"]]
    assert all(0 <= spot["line"] <= last and spot["column"] >= 0 for spot in spots)


@QUICK
@given(ANY)
def test_tokens_joined_give_the_text_back(text: str) -> None:
    assert "".join(token.text for token in tokens(text)) == text


@QUICK
@given(TRADE | PASSAGES)
def test_stitches_are_conserved(text: str) -> None:
    _conserved(text)


def test_stitches_are_conserved_in_every_leaflet() -> None:
    with corpus.without_remedies():
        for leaflet in LEAFLETS:
            _conserved(leaflet.text)


def _conserved(text: str) -> None:
    for one in knit.read(text).by_size.values():
        for piece in one.pieces:
            for row in piece.rows:
                where = f"{piece.name}, row {row.number}: {row.words}"
                assert row.after == row.before - row.used + row.gives, where
                assert min(row.before, row.used, row.gives, row.after) >= 0, where


@QUICK
@given(COUNTS, st.integers(1, 6), st.integers(1, 5), st.integers(2, 6))
def test_a_mirrored_front_is_the_mirror(cast_on: int, underarm: int, decreases: int, neck: int) -> None:
    left = _piece(_fronts(cast_on, underarm, decreases, neck), "left front")
    right = _piece(_fronts(cast_on, underarm, decreases, neck), "right front")
    assert right["end"] == left["end"]
    assert _changes(right) == _changes(left)
    assert abs(right["rows"] - left["rows"]) <= 1


def _fronts(cast_on: int, underarm: int, decreases: int, neck: int) -> str:
    return f"""GAUGE: 5 sts = 1 inch; 7 rows = 1 inch
LEFT FRONT: Cast on {cast_on} sts. Work in stockinette st for 8 inches, ending with a P row.
Bind off {underarm} sts at beg of next row. P 1 row. Dec 1 st at arm edge every other row {decreases} times.
Work even until armhole measures 4 inches, ending at front edge. Bind off {neck} sts at beg of next row.
Work 6 rows. Bind off remaining sts.
RIGHT FRONT: Work to correspond to left front, reversing all shaping.
"""


def _piece(text: str, name: str) -> dict[str, Any]:
    (one,) = knit.as_json(knit.read(text))["by_size"].values()
    found = [piece for piece in one["pieces"] if piece["name"].lower() == name]
    assert found, f"{name} is not among {[piece['name'] for piece in one['pieces']]}"
    return dict(found[0])


def _changes(piece: dict[str, Any]) -> list[int]:
    """Return by how many stitches each shaping row changes the count, in order."""
    counts = [piece["cast_on"], *piece["stitches_after_row"]]
    return [after - before for before, after in pairwise(counts) if after != before]


def test_knowing_more_never_turns_proven_into_unknown() -> None:
    """A leaflet read in one size proves nothing that the whole leaflet would take back."""
    with corpus.without_remedies():
        for leaflet in LEAFLETS:
            whole = knit.as_json(knit.read(leaflet.text))
            kept = {(one["kind"], one["line"]) for one in whole["findings"] if one["certainty"] == "proven"}
            for size in whole["sizes"]:
                alone = knit.as_json(knit.read(leaflet.text, size=size))
                proven = {(one["kind"], one["line"]) for one in alone["findings"] if one["certainty"] == "proven"}
                assert proven <= kept, (leaflet.name, size, proven - kept)


@QUICK
@given(st.sampled_from(LEAFLETS), st.integers(0, 10_000))
def test_a_leaflet_cut_anywhere_reads(leaflet: corpus.Leaflet, spot: int) -> None:
    text = leaflet.text[: spot % (len(leaflet.text) + 1)]
    reading = knit.as_json(knit.read(text))
    assert reading["read"]["understood"] <= reading["read"]["phrases"]
