"""What holds for every lay: the judge proves what the search shows, chance is in the seed, nothing overlaps unseen."""

from __future__ import annotations

import json
import random

import hypothesis.strategies as st
import pytest
from hypothesis import given, settings

from benchmarks import lay_cuts, lay_judge
from lastlook import lay

SIZES = st.integers(60, 500).map(float)
FOLDS = st.sampled_from([lay.Fold.NONE, lay.Fold.LENGTHWISE, lay.Fold.BOTH_TO_MIDDLE])


@st.composite
def wanted(draw: st.DrawFn, name: str) -> lay.Wanted:
    """A garment-like piece: a rectangle with one slanted end, perhaps a pair, perhaps on the fold."""
    long, high = draw(SIZES), draw(SIZES)
    slant = draw(st.floats(0, 0.4)) * long
    outline = ((0.0, 0.0), (long, 0.0), (long - slant, high), (0.0, high))
    kind = draw(st.integers(0, 2))
    fold = ((0.0, 0.0), (long, 0.0)) if kind == 2 else None
    quantity = 2 if kind == 1 else 1
    turn = draw(st.booleans())
    return lay.Wanted(name, outline, quantity, kind == 1, fold, may_turn=turn)


@st.composite
def problems(draw: st.DrawFn) -> lay.Problem:
    """An endless cloth wide enough for the pieces, with or without fold, gap, selvedge, nap and stripes."""
    pieces = tuple(draw(wanted(name)) for name in "abc"[: draw(st.integers(1, 3))])
    repeat = draw(st.sampled_from([None, lay.Repeat(None, 37.0), lay.Repeat(50.0, None)]))
    cloth = lay.Cloth(
        draw(st.sampled_from([1200.0, 2300.0])), None, fold=draw(FOLDS), one_way=draw(st.booleans()),
        selvedge_mm=draw(st.sampled_from([0.0, 10.0])), gap_mm=draw(st.sampled_from([0.0, 4.0])), repeat=repeat,
    )  # fmt: skip
    return lay.Problem(cloth, pieces)


@settings(max_examples=30, deadline=None)
@given(problems(), st.integers(1, 9))
def test_what_the_search_shows_is_proven(problem: lay.Problem, seed: int) -> None:
    found = lay.search(problem, seed=seed, passes=12)
    if found.fits:
        assert found.proven
        printed = lay.read_placements(json.loads(json.dumps(lay.as_json(found)))["placements"])
        assert printed == found.placements
        assert lay.judge(problem, found.placements).proven
    else:
        assert found.findings


@settings(max_examples=8, deadline=None)
@given(problems(), st.integers(1, 9))
def test_the_same_seed_and_passes_give_the_same_lay(problem: lay.Problem, seed: int) -> None:
    first, again = (json.dumps(lay.as_json(lay.search(problem, seed=seed, passes=20))) for _ in range(2))
    assert first == again


@pytest.mark.parametrize("seed", range(4))
def test_no_hostile_overlap_passes(seed: int) -> None:
    chance = random.Random(seed)
    for _ in range(150):
        problem, placed = lay_judge.hostile(chance)
        proven, oracle = lay.judge(problem, placed).proven, lay_judge.verdict(problem, placed)
        assert (oracle, proven) not in {("overlap", True), ("clear", False)}, placed


@pytest.mark.parametrize("kind", [*lay_cuts.KINDS, *lay_cuts.RARE])
@pytest.mark.parametrize("way", ["both", "along"])
def test_a_jigsaw_with_ample_spare_is_solved(kind: str, way: str) -> None:
    made = lay_cuts.jigsaw(kind, 1, 1.0, way)
    assert lay.judge(made.problem, made.answer).proven
    found = lay.search(made.problem, seed=1, passes=1500, goal=lay.Goal.FIT)
    assert found.fits
    assert found.proven


@settings(max_examples=10, deadline=None)
@given(st.integers(0, 50))
def test_locked_pieces_stay_and_made_cuts_are_facts(seed: int) -> None:
    square = ((0.0, 0.0), (200.0, 0.0), (200.0, 150.0), (0.0, 150.0))
    pieces = tuple(lay.Wanted(name, square, grain_deg=0.0) for name in "abcd")
    problem = lay.Problem(lay.Cloth(500.0, 700.0), pieces)
    chance = random.Random(seed)
    locked = lay.Placement("a", 1, round(chance.uniform(0, 500), 3), round(chance.uniform(0, 350), 3))
    found = lay.search(problem, seed=1, passes=200, locked=(locked,), goal=lay.Goal.FIT)
    assert not found.fits or locked in found.placements
    crooked = lay.Placement("a", 1, 10.0, 10.0, 7.0)
    after = lay.search(problem, seed=1, passes=200, made=(crooked,), goal=lay.Goal.FIT)
    assert after.fits
    assert crooked in after.placements
    assert not lay.judge(problem, after.placements).proven
    assert lay.judge(problem, after.placements, (crooked,)).proven


def test_one_placement_is_judged_as_the_whole_lay_would_be() -> None:
    square = ((0.0, 0.0), (200.0, 0.0), (200.0, 150.0), (0.0, 150.0))
    problem = lay.Problem(lay.Cloth(500.0, 700.0), (lay.Wanted("a", square), lay.Wanted("b", square)))
    chance = random.Random(1)
    for _ in range(200):
        placed = tuple(lay.Placement(name, 1, chance.uniform(-50, 520), chance.uniform(-50, 380)) for name in "ab")
        each = [lay.judge_one(problem, placed, spot).proven for spot in (0, 1)]
        assert all(each) == lay.judge_placed(problem, placed).proven
