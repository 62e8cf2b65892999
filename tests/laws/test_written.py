"""A size written out and read again gives the same rows; the printed words are never altered."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from lastlook import knit


def _leaflet(stitches: int, rib_rows: int, decs: int) -> str:
    top = stitches - 8 - 2 * decs
    return (
        "GAUGE: 6 sts = 1 inch; 8 rows = 1 inch.\n\n"
        f"BACK\nCast on {stitches} sts. Work in k 1, p 1 ribbing for {rib_rows} rows. "
        "Work in stockinette st for 20 rows.\nSHAPE RAGLAN: Bind off 4 sts at beg of next 2 rows.\n"
        "Row 1: K 2, sl 1, k 1, psso, k to last 4 sts, k 2 tog, k 2.\n"
        f"Row 2: Purl.\nRepeat last 2 rows until {top} sts remain. Bind off.\n"
    )


@settings(max_examples=12, deadline=None)
@given(st.integers(40, 90), st.integers(2, 10), st.integers(2, 12))
def test_written_out_and_read_again_gives_the_same_rows(half: int, ribs: int, decs: int) -> None:
    text = _leaflet(2 * half, 2 * ribs, decs)
    reading = knit.read(text)
    (size, one), *_ = reading.by_size.items()
    assert one.verdict == "adds up"
    again = knit.read(knit.write(reading, size))
    twin = next(iter(again.by_size.values())).piece("Back")
    assert twin is not None
    assert [row.after for row in twin.rows] == [row.after for row in one.pieces[0].rows]


@settings(max_examples=12, deadline=None)
@given(st.integers(40, 90), st.integers(2, 10), st.integers(2, 12))
def test_stitches_are_conserved_in_every_row(half: int, ribs: int, decs: int) -> None:
    reading = knit.read(_leaflet(2 * half, 2 * ribs, decs))
    for one in reading.by_size.values():
        for piece in one.pieces:
            before = piece.cast_on
            for row in piece.rows:
                assert row.before == before and row.after == row.before - row.used + row.gives
                before = row.after


def test_words_follow_the_maker() -> None:
    reading = knit.read(_leaflet(60, 6, 4))
    size = reading.sizes[0]
    british = knit.write(reading, size, knit.Manner(english=knit.English.BRITISH))
    assert "cast off" in british and "bind off" not in british.lower()
    assert size in british.splitlines()[1]
