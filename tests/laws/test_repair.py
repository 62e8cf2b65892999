"""Repairs of text from pictures: figures stay, spans fit, and a repaired text needs no more repair."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from lastlook.leaflet import repair

SEEN = """K KI pl l I 12 1O4 86. sts.Join slipamarker, mds hern 4½ (6-8) knitacross rnds; edge-52 r0w
Zephyrine k2tog *"""
WORDS = st.sampled_from(SEEN.split())
TEXTS = st.one_of(st.text(max_size=80), st.lists(WORDS, max_size=12).map(" ".join))


@given(TEXTS)
def test_a_number_that_was_read_as_figures_stays(text: str) -> None:
    mended = repair(text)
    kept = re.findall(r"(?<!\S)\d+(?!\S)", text, re.ASCII)
    left = re.findall(r"\d+", mended.text)
    for number in set(kept):
        assert left.count(number) >= kept.count(number)


@given(TEXTS)
def test_repairs_are_the_whole_difference(text: str) -> None:
    mended = repair(text)
    out, spot = "", 0
    for one in mended.repairs:
        assert text[one.span.start : one.span.end] == one.was and one.why
        out += text[spot : one.span.start] + one.now
        spot = one.span.end
    assert out + text[spot:] == mended.text
    for one in mended.in_place():
        assert mended.text[one.span.start : one.span.end] == one.now


@given(st.lists(WORDS, max_size=12).map(" ".join))
def test_repairing_again_changes_nothing(text: str) -> None:
    once = repair(text).text
    assert repair(once).text == once
