"""What would make it fit, the least loss first; and how much shorter it must, or how much longer it could be.

A *concession* is one thing the maker would accept, with the problem it leads to; a *choice* is a concession that
was proven by a lay of its own.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from lastlook import geometry
from lastlook.lay.cloth import Fold
from lastlook.lay.placement import Lay, Progress
from lastlook.lay.search import Goal, search
from lastlook.lay.search.hunt import GoOn, may_shorten
from lastlook.lay.wanted import Pieced, Problem

PASSES = 500
FINEST_MM = 5.0
SEAM_MM = 15.0
"""Seam allowance of a joint, R69 of the trade's rules: 1.5 cm each side."""


@dataclass(frozen=True)
class Concession:
    """Something the maker would accept: in words, the problem it leads to, and how much it hurts."""

    say: str
    problem: Problem
    loss: float
    """Only for order: 0 is nothing lost; 1 is a joint, or a decimetre of length."""


@dataclass(frozen=True)
class Choice:
    """A concession with which everything fits, and its proven lay."""

    concession: Concession
    lay: Lay


@dataclass(frozen=True)
class Fitted:
    """The amount that was found, its problem and its proven lay."""

    amount_mm: float
    problem: Problem
    lay: Lay


def choices(
    accept: Sequence[Concession], *, seed: int = 1, passes: int = PASSES, may_go_on: GoOn | None = None, most: int = 5
) -> tuple[Choice, ...]:
    """Return which concessions make it fit, the least loss first, each with a lay that the judge has proven."""
    out: list[Choice] = []
    for one in sorted(accept, key=lambda one: one.loss):
        if len(out) >= most or (may_go_on is not None and not may_go_on(Progress(0, None))):
            break
        lay = search(one.problem, seed=seed, passes=passes, may_go_on=may_go_on, goal=Goal.FIT)
        if lay.fits:
            out.append(Choice(one, lay))
    return tuple(out)


def usual(problem: Problem) -> tuple[Concession, ...]:
    """Return the concessions that can be read off a problem itself: its folds, joints, and its smaller pieces."""
    out = []
    if problem.cloth.fold is not Fold.NONE:
        single = replace(problem, cloth=replace(problem.cloth, fold=Fold.NONE, partial_mm=0.0))
        out.append(Concession("Lay the cloth single instead of folded.", single, 0.2))
    if problem.cloth.length_mm is not None and problem.cloth.outline is None and may_shorten(problem.cloth):
        endless = replace(problem, cloth=replace(problem.cloth, length_mm=None))
        out.append(Concession("Take a longer piece of the same cloth, if there is one.", endless, 1000.0))
    sizes = sorted(problem.pieces, key=lambda piece: geometry.signed_area_mm2(piece.outline) * piece.quantity)
    for spot, piece in enumerate(sizes[: max(1, len(sizes) // 2)] if len(sizes) > 1 else []):
        rest = tuple(one for one in problem.pieces if one.id != piece.id)
        say = f"Cut {piece.id} from another cloth."
        out.append(Concession(say, replace(problem, pieces=rest), 2.0 + spot))
    return tuple(out)


def with_joint(problem: Problem, name: str, parts: int = 2, seam_mm: float = SEAM_MM) -> Concession:
    """Return the concession that one piece may be pieced."""
    pieces = tuple(replace(one, pieced=Pieced(parts, seam_mm)) if one.id == name else one for one in problem.pieces)
    say = f"Piece {name} from {parts} parts, each joint with {seam_mm:g} mm of seam on either side."
    return Concession(say, replace(problem, pieces=pieces), 1.0 * (parts - 1))


def shorter(
    at: Callable[[float], Problem],
    *,
    most_mm: float,
    seed: int = 1,
    passes: int = PASSES,
    may_go_on: GoOn | None = None,
) -> Fitted | None:
    """Return the least amount found by which `at` must shorten for everything to fit; None where none up to most.

    `at(amount_mm)` gives the problem with that much taken off; as it is, nothing was found. Between an amount that
    fits and one that was not found to fit, the middle is tried, down to 5 mm; so the true least may be a little less.
    """
    return _between(at, 0.0, most_mm, _Try(seed, passes, may_go_on))


def longer(
    at: Callable[[float], Problem],
    *,
    most_mm: float,
    seed: int = 1,
    passes: int = PASSES,
    may_go_on: GoOn | None = None,
) -> Fitted | None:
    """Return the largest amount found that `at` could be longer by; None where not even zero was found to fit."""
    attempt = _Try(seed, passes, may_go_on)
    lay = attempt.lay(at(most_mm))
    return Fitted(most_mm, at(most_mm), lay) if lay.fits else _between(at, most_mm, 0.0, attempt)


@dataclass(frozen=True)
class _Try:
    seed: int
    passes: int
    may_go_on: GoOn | None

    def lay(self, problem: Problem) -> Lay:
        """Return what a search of the usual size finds."""
        return search(problem, seed=self.seed, passes=self.passes, may_go_on=self.may_go_on, goal=Goal.FIT)


def _between(at: Callable[[float], Problem], wished: float, easy: float, attempt: _Try) -> Fitted | None:
    """Return what fits nearest to the wished amount, which was not found to fit, between it and the easy one."""
    lay = attempt.lay(at(easy))
    if not lay.fits:
        return None
    best = Fitted(easy, at(easy), lay)
    while abs(wished - best.amount_mm) > FINEST_MM:
        middle = (wished + best.amount_mm) / 2
        lay = attempt.lay(at(middle))
        if lay.fits:
            best = Fitted(middle, at(middle), lay)
        else:
            wished = middle
    return best
