"""What holds of every proof: words that are not understood prove nothing, heels close, islands keep their stitches."""

from __future__ import annotations

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from lastlook import knit
from tests import corpus

GOOD = [one for one in corpus.leaflets() if one.truth["verdict"] and set(one.truth["verdict"]) == {corpus.GOOD}]
STOPS = re.compile(r"(?<=[a-z]{2})\.\s+(?=[A-Z])")
STRANGE = ("Wimple the grommet.", "Zigzag the stitches over the grommet.", "Gargle 7 sts each row of the mimble.")


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(GOOD), st.integers(0, 10_000), st.sampled_from(STRANGE))
def test_strange_words_never_make_a_good_leaflet_wrong(leaflet: corpus.Leaflet, spot: int, words: str) -> None:
    stops = [found.start() + 1 for found in STOPS.finditer(leaflet.text)]
    at = stops[spot % len(stops)] if stops else len(leaflet.text)
    with corpus.without_remedies():
        before = {one.verdict for one in knit.read(leaflet.text).by_size.values()}
        after = {one.verdict for one in knit.read(f"{leaflet.text[:at]} {words}{leaflet.text[at:]}").by_size.values()}
    if corpus.BAD not in before:
        assert corpus.BAD not in after, f"{leaflet.name} at {at}: {words}"


@settings(max_examples=40, deadline=None)
@given(st.integers(2, 16), st.integers(1, 14))
def test_a_heel_closes_on_its_middle(rest: int, middle: int) -> None:
    heel = 2 * rest + middle + 4
    text = (
        f"SOCK\nCast on {heel} sts. K 2 rows. Knit {heel - 2 - rest}, knit 2 together, turn; slip 1, purl {middle}, "
        f"purl 2 together, turn; slip 1, knit {middle}, knit 2 together, turn; continue in this way until all sts are "
        f"worked. Bind off {middle + 2} sts."
    )
    one = knit.read(text).by_size["one size"]
    assert one.verdict == "adds up"
    assert one.pieces[0].end_stitches == middle + 2


@settings(max_examples=40, deadline=None)
@given(st.integers(6, 20), st.integers(6, 16), st.integers(4, 14))
def test_an_island_keeps_its_stitches(flank: int, island: int, picked: int) -> None:
    whole = 2 * flank + island
    text = (
        f"BOOTEE\nCast on {whole} sts. K 4 rows. Next row: K {flank + island}, turn; P {island}, turn. "
        f"On these {island} sts. work 10 rows in st.st. Break off wool. Rejoin wool, pick up and "
        f"K. {picked} sts. along side of instep, K. {island} instep sts., pick up and K. {picked} sts. along other "
        f"side, K. remaining {flank} sts. ({whole + 2 * picked} sts.) Cast off."
    )
    one = knit.read(text).by_size["one size"]
    assert one.verdict == "adds up"
    assert [piece.end_stitches for piece in one.pieces] == [whole, island, whole + 2 * picked]
