"""A size written out and read again gives the same rows, in any English, for any tape and either hand."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lastlook import knit, outfit
from lastlook.knit.hand import mirrored
from lastlook.quantity import Units
from tests import corpus, shared_truth

MANNERS = [knit.Manner(*way) for way in product(knit.English, (Units.INCHES, Units.CM), knit.Hand)]
DEMO = (outfit.demo().text("leaflets/harbour-lights.txt") or "").replace("inc 6 sts", "inc 8 sts")
TEXTS = {one.name: one.text for one in [*corpus.leaflets(), *shared_truth.leaflets()]} | {"harbour-lights": DEMO}


@pytest.mark.parametrize("name", sorted(TEXTS))
def test_every_leaflet_that_adds_up_is_written_so_that_it_reads_the_same(name: str) -> None:
    with corpus.without_remedies():
        reading = knit.read(TEXTS[name])
        for number, (size, one) in enumerate(reading.by_size.items()):
            if one.verdict == corpus.GOOD:
                for manner in {MANNERS[0], MANNERS[7]} if number == 0 else {MANNERS[number % 8]}:
                    _same(reading, size, manner)


def _same(reading: knit.LeafletReading, size: str, manner: knit.Manner) -> None:
    text = knit.write(reading, size, manner)
    again = next(iter(knit.read(text).by_size.values()))
    left = manner.hand is knit.Hand.LEFT
    british = manner.english is knit.English.BRITISH
    expected = [
        (
            _named(piece.name, left).replace("Center", "Centre" if british else "Center"),
            _named(piece.part_of, left),
            *_counts(piece),
        )
        for piece in reading.by_size[size].pieces
    ]
    came = [(piece.name, piece.part_of or "", *_counts(piece)) for piece in again.pieces]
    assert came == expected, f"{size}, {manner}\n{text}"
    assert again.verdict == corpus.GOOD, f"{size}, {manner}\n{text}"
    if len(reading.sizes) > 1:
        assert list(knit.read(text).by_size) == [size]


def _named(name: str | None, left: bool) -> str:
    return mirrored(name or "") if left else name or ""


def _counts(piece: knit.WorkedPiece) -> list[int]:
    """Return the stitches after every row; none for a crochet border whose stitches the leaflet does not count."""
    return [row.after for row in piece.rows] if any(row.after for row in piece.rows) else []


@settings(max_examples=8, deadline=None)
@given(st.sampled_from(MANNERS), st.integers(0, 3))
def test_in_every_manner(manner: knit.Manner, number: int) -> None:
    reading = knit.read(DEMO)
    _same(reading, reading.sizes[number], manner)


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
    assert "cast off" in british.lower() and "bind off" not in british.lower()
    assert size in british.splitlines()[1]
