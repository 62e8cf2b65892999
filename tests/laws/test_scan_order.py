"""Reading order: no strip is lost or read twice, and columns are read one after the other."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from lastlook.scan.order import Lying, in_order

STRIP = st.builds(
    lambda left, width, middle, height: (float(left), float(left + width), float(middle), float(height)),
    st.integers(0, 1500),
    st.integers(10, 1500),
    st.integers(0, 2000),
    st.integers(8, 60),
)


@given(st.lists(STRIP, max_size=40))
def test_every_strip_is_read_once(strips: list[tuple[float, float, float, float]]) -> None:
    lying = [Lying(which, *one) for which, one in enumerate(strips)]
    read = [which for line in in_order(lying) for which in line.strips]
    assert sorted(read) == list(range(len(strips)))


@given(st.integers(1, 3), st.integers(6, 30), st.integers(40, 120), st.booleans(), st.randoms(use_true_random=False))
def test_columns_follow_each_other(columns: int, lines: int, gutter: int, heading: bool, chance) -> None:  # type: ignore[no-untyped-def]
    lying: list[Lying] = []
    if heading:
        lying.append(Lying(0, 0.0, columns * 500.0, 0.0, 30.0))
    for column in range(columns):
        for line in range(lines):
            left = column * (500.0 + gutter)
            width = 500.0 if line % 4 else float(chance.randint(330, 500))
            lying.append(Lying(len(lying), left, left + width, 60.0 + 40 * line, 30.0))
    order = list(range(len(lying)))
    mixed = lying[:]
    chance.shuffle(mixed)
    assert [which for line in in_order(mixed) for which in line.strips] == order
