"""The judge: proves a lay, or says what is wrong with it.

It shares no code with the search, not even the geometry; what it says of crossing and touching is worked in
whole numbers. Overlap of up to 0.01 mm, which printing the numbers may bring, passes; more never does.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np

from lastlook.finding import Certainty, Finding
from lastlook.lay.cloth import Cloth
from lastlook.lay.judge import manner
from lastlook.lay.judge.exact import FARTHEST_MM, Whole, apart_mm, drawn_in, is_inside, lines_meet, meet
from lastlook.lay.judge.laid import Copy, copies
from lastlook.lay.judge.manner import PRINTED_MM, trouble
from lastlook.lay.placement import BOTH, ONE, Judgement, Placement
from lastlook.lay.wanted import Problem

__all__ = ["judge", "judge_one", "judge_placed"]


STRANGE = "The lay was made for other pieces."
ONE_PLACE = "A copy has one place."


def judge(problem: Problem, placements: Sequence[Placement], made: Sequence[Placement] = ()) -> Judgement:
    """Return whether the placements are a whole lay of the problem, proven.

    Those in `made` are cut already: how they lie is a fact that isn't judged, only what comes near them.
    """
    found = [*judge_placed(problem, placements, made).findings, *_count(problem, placements)]
    return Judgement(not found, tuple(found))


def judge_placed(problem: Problem, placements: Sequence[Placement], made: Sequence[Placement] = ()) -> Judgement:
    """Return whether what is laid so far may lie so, whatever is still missing."""
    laid, found = _laid(problem, placements)
    if laid is None:
        return Judgement(False, tuple(found))
    facts = set(made)
    found += [one for copy in laid if copy.placement not in facts for one in _alone(problem, copy)]
    for a, b in _close_pairs(problem.cloth, laid):
        if a.placement not in facts or b.placement not in facts:
            found += _apart(problem.cloth, a, b)
    found += _together(problem, laid)
    return Judgement(not found, tuple(found))


def judge_one(problem: Problem, placements: Sequence[Placement], spot: int) -> Judgement:
    """Return whether one placement may lie where it is among the others: quick enough to ask while dragging."""
    laid, found = _laid(problem, placements)
    if laid is None:
        return Judgement(False, tuple(found))
    chosen = placements[spot]
    mine = [copy for copy in laid if copy.placement is chosen]
    found += [one for copy in mine for one in _alone(problem, copy)]
    for a, b in _close_pairs(problem.cloth, laid):
        if a.placement is chosen or b.placement is chosen:
            found += _apart(problem.cloth, a, b)
    found += [one for one in manner.stripes(laid, problem.cloth) if one.where.piece == chosen.id]
    return Judgement(not found, tuple(found))


def _laid(problem: Problem, placements: Sequence[Placement]) -> tuple[list[Copy] | None, list[Finding]]:
    """Return every copy as it lies; None with the finding where a placement can't be followed at all."""
    laid: list[Copy] = []
    length = problem.cloth.length_mm or 0.0
    for one in placements:
        piece = problem.piece(one.id)
        if piece is None:
            return None, [trouble("piece-unknown", one.id, f"No piece is called {one.id}.", STRANGE, "Lay it again.")]
        numbers = (one.x, one.y, one.angle_deg, *(v for spot in one.outline or () for v in spot))
        if not all(math.isfinite(v) and abs(v) <= FARTHEST_MM for v in numbers) or one.layer not in (ONE, BOTH):
            say = f"{one.id} lies nowhere that can be measured."
            return None, [trouble("piece-off-cloth", one.id, say, "Its place is no number.", "Lay it again.")]
        laid += copies(piece, one, problem.cloth, length)
    return laid, []


def _alone(problem: Problem, copy: Copy) -> list[Finding]:
    """Return what is wrong with one copy, whatever else lies there."""
    cloth = problem.cloth
    out = manner.grain_and_nap(copy, cloth)
    out += manner.on_its_fold(copy, cloth, cloth.length_mm or 0.0)
    beyond = _beyond_mm(copy, cloth)
    if beyond > PRINTED_MM / 2:
        say = f"{copy.wanted.id} reaches {beyond:.2f} mm beyond the cloth that can be used."
        out.append(trouble("piece-off-cloth", copy.wanted.id, say, _edges(cloth), "Move it inside."))
    elif cloth.outline is not None and not _inside(copy, cloth):
        say = f"{copy.wanted.id} crosses the edge of the cloth."
        out.append(trouble("piece-off-cloth", copy.wanted.id, say, "The cloth ends there.", "Move it inside."))
    for number, flaw in enumerate(cloth.flaws, 1):
        spoilt = _shrunk(np.array(flaw, float))
        if any(meet(_shrunk(one), spoilt) for one in copy.guarded):
            say = f"{copy.wanted.id} lies on flaw {number} of the cloth."
            why = "A flaw would show there, or not hold."
            out.append(trouble("piece-on-flaw", copy.wanted.id, say, why, "Move it off the flaw."))
    return out


def _shrunk(corners: np.typing.NDArray[np.float64]) -> Whole:
    return drawn_in(corners)


def _beyond_mm(copy: Copy, cloth: Cloth) -> float:
    """Return how far a copy reaches over the selvedges or the ends of a rectangle."""
    spots = np.concatenate(copy.outlines)
    low, high = spots.min(0), spots.max(0)
    across = max(cloth.selvedge_mm - low[1], high[1] - (cloth.width_mm - cloth.selvedge_mm))
    along = -math.inf
    if cloth.outline is None:
        along = max(-low[0], high[0] - (cloth.length_mm if cloth.length_mm is not None else FARTHEST_MM))
    return float(max(across, along))


def _edges(cloth: Cloth) -> str:
    long = f"{cloth.length_mm:g} mm long" if cloth.length_mm else "endless"
    return f"The cloth is {cloth.width_mm:g} mm wide with {cloth.selvedge_mm:g} mm of selvedge, and {long}."


def _inside(copy: Copy, cloth: Cloth) -> bool:
    edge = np.rint(np.array(cloth.outline, float) / 0.0001).astype(np.int64)
    for one in copy.outlines:
        shape = drawn_in(one)
        if lines_meet(shape, edge) or not is_inside(edge, shape[0]):
            return False
    return True


def _close_pairs(cloth: Cloth, laid: list[Copy]) -> Iterator[tuple[Copy, Copy]]:
    """Yield the pairs of copies whose boxes come within the gap of each other, sweeping along the cloth."""
    boxes = []
    for copy in laid:
        spots = np.concatenate((*copy.outlines, *copy.waste))
        boxes.append((spots.min(0) - cloth.gap_mm, spots.max(0) + cloth.gap_mm))
    order = sorted(range(len(laid)), key=lambda spot: float(boxes[spot][0][0]))
    active: list[int] = []
    for spot in order:
        low, high = boxes[spot]
        active = [other for other in active if boxes[other][1][0] >= low[0]]
        for other in active:
            if boxes[other][1][1] >= low[1] and boxes[other][0][1] <= high[1]:
                yield laid[min(spot, other)], laid[max(spot, other)]
        active.append(spot)


def _apart(cloth: Cloth, a: Copy, b: Copy) -> list[Finding]:
    """Return what is wrong between two copies: they overlap, or leave too little between them."""
    names = f"{a.wanted.id} and {b.wanted.id}"
    own = a.placement is b.placement
    shapes_a = a.outlines if own else (*a.outlines, *a.waste)
    shapes_b = b.outlines if own else (*b.outlines, *b.waste)
    if any(meet(drawn_in(p), drawn_in(q)) for p in shapes_a for q in shapes_b):
        why = "Their cutting lines cross, or one lies inside the other."
        return [trouble("pieces-overlap", b.wanted.id, f"{names} overlap.", why, "Move one of them.")]
    if cloth.gap_mm:
        apart = min(apart_mm(p, q) for p in shapes_a for q in shapes_b)
        if apart < cloth.gap_mm - PRINTED_MM:
            say = f"{names} lie {apart:.2f} mm apart; {cloth.gap_mm:g} mm are wanted."
            return [trouble("gap-short", b.wanted.id, say, "Shears need that room.", "Move one of them.")]
    return []


def _together(problem: Problem, laid: list[Copy]) -> list[Finding]:
    return [
        *manner.right_side(laid, problem.cloth),
        *manner.stripes(laid, problem.cloth),
        *manner.parts(laid),
        *_twice(laid),
    ]


def _twice(laid: list[Copy]) -> list[Finding]:
    """Return which copies are laid twice, or beyond the number wanted."""
    keys = sorted((one.wanted.id, one.copy, one.placement.part) for one in laid)
    twice = [a for a, b in pairwise(keys) if a == b]
    most = {one.wanted.id: one.wanted.quantity for one in laid}
    over = [key for key in keys if not 1 <= key[1] <= most[key[0]]]
    return [
        trouble(
            "copies-differ", name, f"{name}, copy {number}, is laid more often than wanted.", ONE_PLACE, "Take it off."
        )
        for name, number, _ in (*twice, *over)
    ]


def _count(problem: Problem, placements: Sequence[Placement]) -> list[Finding]:
    """Return which copies are missing."""
    found = []
    length = problem.cloth.length_mm or 0.0
    for piece in problem.pieces:
        mine = [one for one in placements if one.id == piece.id]
        have = {c.copy for one in mine for c in copies(piece, one, problem.cloth, length)}
        lack = piece.quantity - len(have)
        if lack > 0:
            laid = f"is laid {_times(len(have))}" if have else "is not laid"
            say = f"{piece.id} {laid}; it is wanted {_times(piece.quantity)}."
            why = "A lay is whole when every copy has its place."
            found.append(Finding("copies-differ", Certainty.PROVEN, say, why, "Lay the rest."))
    return found


def _times(many: int) -> str:
    return {1: "once", 2: "twice"}.get(many, f"{many} times")
