"""What holds of every outline: it is as wide as its row at every row, as long as its rows, and walked to the left."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from lastlook import knit
from lastlook.finding import Span
from lastlook.geometry import at, crossings
from lastlook.knit import Act, Ended, Shaping, Side, WorkedPiece, WorkedRow
from lastlook.quantity import Origin, gauge_of

EDGES = st.sampled_from(["left", "right", "inside"])
SHAPINGS = st.lists(st.tuples(st.sampled_from(list(Act)), EDGES, st.integers(1, 4)), max_size=2)
LESS = (Act.DECREASE, Act.BIND_OFF, Act.HOLD)


def _piece(cast_on: int, plan: list[list[tuple[Act, str, int]]], side: Side | None = None) -> WorkedPiece:
    rows: list[WorkedRow] = []
    before = cast_on
    for number, row in enumerate(plan, 1):
        shapings = tuple(Shaping(act, edge, count) for act, edge, count in row)
        after = before + sum(-one.stitches if one.act in LESS else one.stitches for one in shapings)
        if after < 4:
            after, shapings = before, ()
        facing = side or (Side.RIGHT if number % 2 else Side.WRONG)
        rows.append(WorkedRow(number, facing, before, before, after, after, shapings, Span(0, 0), "stockinette", "K."))
        before = after
    return WorkedPiece("Piece", None, 1, cast_on, tuple(rows), before, Ended.BOUND_OFF, (), ())


@given(st.integers(20, 150), st.lists(SHAPINGS, min_size=2, max_size=40), st.floats(10, 40), st.floats(12, 50))
@settings(deadline=None)
def test_an_outline_is_as_wide_as_its_rows(
    cast_on: int, plan: list[list[tuple[Act, str, int]]], stitches: float, rows: float
) -> None:
    piece, gauge = _piece(cast_on, plan), gauge_of(stitches, rows, Origin.DERIVED)
    outline = knit.outline(piece, gauge)
    assert outline is not None
    assert outline.is_closed()
    assert outline.area_mm2() > 0
    up = 100 / rows
    for row in piece.rows[:-1]:
        if row.number < len(piece.rows) and piece.rows[row.number].before == piece.rows[row.number].after:
            spots = [at(outline, spot)[0] for spot in crossings(outline, (0.0, (row.number + 0.5) * up), (1.0, 0.0))]
            assert abs(max(spots) - min(spots) - row.after * 100 / stitches) < 1e-3 or piece.rows[row.number].shapings
    top = max(y for _, y in outline.points())
    assert abs(top - len(piece.rows) * up) < 1e-6


@given(st.integers(20, 150), st.integers(2, 30))
@settings(deadline=None)
def test_rounds_lie_flat(cast_on: int, rounds: int) -> None:
    piece = _piece(cast_on, [[]] * rounds, Side.ROUND)
    outline = knit.outline(piece, gauge_of(20, 30, Origin.DERIVED))
    assert outline is not None
    width = max(x for x, _ in outline.points()) - min(x for x, _ in outline.points())
    assert abs(width - cast_on * 100 / 20 / 2) < 1e-6


def test_without_rows_or_row_gauge_there_is_none() -> None:
    assert knit.outline(_piece(20, []), gauge_of(20, 30, Origin.DERIVED)) is None
    assert knit.outline(_piece(20, [[]]), gauge_of(20, None, Origin.DERIVED)) is None
