"""One search: how many passes it has had, whether it may go on, and the best lay so far, which the judge has seen."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from lastlook.lay.cloth import Cloth, Fold
from lastlook.lay.judge import judge, judge_placed
from lastlook.lay.measure import lay_of, used_length_mm
from lastlook.lay.placement import Lay, Placement, Progress
from lastlook.lay.wanted import Problem

GoOn = Callable[[Progress], bool]


@dataclass
class Hunt:
    """What one search knows of itself."""

    problem: Problem
    seed: int
    most_passes: int | None
    may_go_on: GoOn
    locked: tuple[Placement, ...] = ()
    made: tuple[Placement, ...] = ()
    chance: random.Random = field(default_factory=random.Random)
    passes: int = 0
    best: Lay | None = None
    part: Lay | None = None
    """The most that could be laid, while not everything fits."""
    overlapping: int = 0
    stopped: bool = False

    def __post_init__(self) -> None:
        self.chance = random.Random(self.seed)

    @property
    def cloth(self) -> Cloth:
        """Return the cloth that is laid on."""
        return self.problem.cloth

    def go(self, overlapping: int = 0) -> bool:
        """Count one pass; return whether there may be another."""
        self.passes += 1
        self.overlapping = overlapping
        if (self.most_passes is not None and self.passes >= self.most_passes) or not self.may_go_on(
            Progress(self.passes, self.best or self.part, overlapping)
        ):
            self.stopped = True
        return not self.stopped

    def may_still(self) -> bool:
        """Return whether there is time left, without counting a pass; for long constructions."""
        if not self.may_go_on(Progress(self.passes, self.best or self.part, self.overlapping)):
            self.stopped = True
        return not self.stopped

    def offer(self, placements: Sequence[Placement]) -> bool:
        """Take a whole arrangement if the judge proves it and it is the shortest so far; return if proven."""
        whole = (*self.locked, *placements)
        judgement = judge(self.problem, whole, self.made)
        if not judgement.proven:
            return False
        length = used_length_mm(self.problem, whole)
        if self.best is None or length < self.best.used_length_mm - 1e-9:
            self.best = lay_of(self.problem, whole, self.seed, self.passes)
        return True

    def offer_part(self, placements: Sequence[Placement]) -> None:
        """Take an arrangement of some copies if it is proven and covers more than the one before."""
        whole = (*self.locked, *placements)
        lay = lay_of(self.problem, whole, self.seed, self.passes)
        if self.part is not None and lay.used_share <= self.part.used_share:
            return
        if judge_placed(self.problem, whole, self.made).proven:
            self.part = lay


def is_endless(cloth: Cloth) -> bool:
    """Whether the length is what is looked for."""
    return cloth.length_mm is None and cloth.outline is None


def may_shorten(cloth: Cloth) -> bool:
    """Whether pushing everything to x = 0 makes sense: not where a crosswise fold lies across the middle."""
    return cloth.fold is not Fold.CROSSWISE
