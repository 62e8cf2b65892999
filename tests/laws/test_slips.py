"""Leaflets made of sums: those that hold add up, a harmless change is never called wrong, a slip is noticed."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from benchmarks import slips_made
from benchmarks.slips import noticed
from tests import corpus

MADE = slips_made.leaflets(2)
CHANGES = list(slips_made.changes(MADE))


def test_made_leaflets_add_up() -> None:
    for one in MADE:
        assert one.judge(one.figures) == (True, False)
        read = corpus.read(one.text(one.figures))
        assert {size["verdict"] for size in read["by_size"].values()} == {corpus.GOOD}, one.name


@settings(max_examples=40, deadline=None)
@given(st.sampled_from([one for one in CHANGES if not one.bound]))
def test_a_harmless_change_is_not_called_wrong(change: slips_made.Changed) -> None:
    with corpus.without_remedies():
        assert noticed(change.text) != "found", f"{change.leaflet}: {change.what}"


@settings(max_examples=40, deadline=None)
@given(st.sampled_from([one for one in CHANGES if one.bound and one.sort in ("sizes", "cadences", "neighbours")]))
def test_what_no_longer_adds_up_is_noticed(change: slips_made.Changed) -> None:
    """Found, or doubted where the gap is too wide for one wrong figure ('60' printed as '6'); never passed over."""
    with corpus.without_remedies():
        assert noticed(change.text) in ("found", "doubted"), f"{change.leaflet}: {change.what}"
