"""Readings: every unclear place is worked each way; what is printed and what is sewn together decide.

Readings are chosen for the whole leaflet at once, over all sizes, since one text is meant in one way. The search is
bounded; where the bound is met, it says so.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from lastlook.knit.assemble import Plan
from lastlook.knit.needle import Chooser, Hands, Live, Point, Trouble, settle_in, work_piece
from lastlook.knit.needle.hands import Task
from lastlook.knit.needle.state import World
from lastlook.knit.prove import seams
from lastlook.knit.scope import for_size
from lastlook.leaflet import Leaflet
from lastlook.leaflet import instruction as say
from lastlook.piece import Meets, Seam, Unit
from lastlook.quantity import Gauge, Missing

MOST_TRIES = 160
"""How many ways of reading the whole leaflet are tried at most."""
MOST_ROWS = 80_000
"""How many rows are worked for that at most."""


def _most(live: Live) -> int:
    return max((row.after for row in live.rows), default=live.n)


@dataclass
class Outcome:
    """The leaflet worked in one size, one way."""

    pieces: dict[str, Hands]
    seams: tuple[Seam, ...]

    def score(self) -> float:
        """Return how much does not add up; a seam that does not meet counts like a printed count."""
        told = sum(
            0.3 if one.doubted else 1.0 for hands in self.pieces.values() for one in hands.troubles if not one.follows
        )
        differ = sum(0.02 for hands in self.pieces.values() for one in hands.counts if one.stated != one.worked)
        follows = differ + sum(0.01 for hands in self.pieces.values() for one in hands.troubles if one.follows)
        eased = sum(0.5 for seam in self.seams if seam.meets is Meets.BY_EASING and seam.mate.unit is Unit.ROWS)
        return told + follows + eased + sum(1.0 for seam in self.seams if seam.meets is Meets.NO)

    def shape(self) -> tuple[object, ...]:
        """Return what a maker would notice: counts, rows, seams."""
        pieces = tuple(
            (name, tuple((len(live.rows), live.n) for live in hands.parts)) for name, hands in self.pieces.items()
        )
        seams = tuple((seam.a_length, seam.b_length) for seam in self.seams)
        return pieces, seams, tuple(_most(live) for hands in self.pieces.values() for live in hands.parts)


def _stitches(shapes: tuple[object, ...]) -> tuple[object, ...]:
    """Return what of some shapes are stitches; rows alone are no question."""
    out = []
    for shape in shapes:
        pieces, most = shape[0], shape[2]  # type: ignore[index]
        out.append((most, tuple((name, tuple(n for _, n in parts)) for name, parts in pieces)))
    return tuple(out)


@dataclass
class Reader:
    """Works the leaflet in all sizes, remembering what it worked before."""

    leaflet: Leaflet
    plan: Plan
    gauge: Gauge | None
    points: dict[str, Point] = field(default_factory=dict)
    made: dict[tuple[object, ...], tuple[Hands, dict[str, Point]]] = field(default_factory=dict)
    rows: int = 0
    tries: int = 0

    @property
    def spent(self) -> bool:
        """Whether the bound is met."""
        return self.tries >= MOST_TRIES or self.rows >= MOST_ROWS

    def work(self, chosen: Mapping[str, int]) -> list[Outcome]:
        """Work every size with these readings."""
        self.tries += 1
        return [self.work_size(size, chosen) for size in range(len(self.leaflet.sizes))]

    def work_size(self, size: int, chosen: Mapping[str, int]) -> Outcome:
        """Work one size with these readings."""
        gauge = self.gauge
        rows = None if gauge is None or isinstance(gauge.rows, Missing) else gauge.rows.best / 100
        world = World(
            size, len(self.leaflet.sizes), rows, patterns=self.plan.patterns, pattern_spans=self.plan.spans,
            pattern_unsure=self.plan.unsure, multiples=self.leaflet.multiples, words=self.leaflet.source.text,
        )  # fmt: skip
        before: tuple[object, ...] = ()
        for number, task in enumerate(self.plan.tasks):
            own = tuple(
                sorted((key, value) for key, value in chosen.items() if key.startswith(task.name.lower() + ": "))
            )
            before = (*before, own)
            key = (size, number, before if refers(task) else own)
            hit = self.made.get(key)
            if hit is None:
                chooser = Chooser(chosen)
                hands = work_piece(for_size(task, self.leaflet, size), world, chooser)
                hit = (hands, chooser.points)
                self.made[key] = hit
                self.rows += sum(len(live.rows) for live in hands.parts)
            hands, points = hit
            for name, point in points.items():
                self.points.setdefault(name, point)
            settle_in(hands, world)
        return Outcome(world.pieces, seams(world.pieces, gauge, self.leaflet.source.text))


def refers(task: Task) -> bool:
    """Whether a piece depends on pieces made before it."""
    for step in task.steps:
        if isinstance(step, say.Copy) or (isinstance(step, say.RepeatRows) and step.piece):
            return True
        if isinstance(step, say.WorkOn) and step.goal.like:
            return True
        if isinstance(step, say.RowOf) and any(isinstance(item, say.Taken) for item in step.run):
            return True
    return False


@dataclass(frozen=True)
class Choice:
    """What was decided about one unclear place."""

    point: Point
    taken: int
    """The reading that was taken, counted from 1."""
    scores: tuple[float, ...]
    matters: bool
    asked: bool
    by_maker: bool
    shapes: tuple[object, ...] = ()


def decide(reader: Reader, given: Mapping[str, int]) -> tuple[list[Outcome], list[Choice]]:
    """Return the leaflet worked with the readings that agree best, and what was decided where."""
    chosen = dict(given)
    best = reader.work(chosen)
    score = total(best)
    if score:
        chosen, best, score = _improve(reader, chosen, given, best, score)
    decided = _choices(reader, chosen, given, best, score)
    bear_out(best)
    return best, decided


def bear_out(outcomes: list[Outcome]) -> None:
    """A wide gap in one size is no misreading where the same words come out right in another."""
    for number, outcome in enumerate(outcomes):
        others = [one for place, one in enumerate(outcomes) if place != number]
        for name, hands in outcome.pieces.items():
            hands.troubles = [
                replace(one, far=False) if one.far and any(_is_right(other, name, one) for other in others) else one
                for one in hands.troubles
            ]


def _is_right(outcome: Outcome, name: str, trouble: Trouble) -> bool:
    hands = outcome.pieces.get(name)
    return hands is not None and not any(one.span == trouble.span for one in hands.troubles) and not hands.blind


def total(outcomes: list[Outcome]) -> float:
    return round(sum(one.score() for one in outcomes), 4)


def _improve(
    reader: Reader, chosen: dict[str, int], given: Mapping[str, int], best: list[Outcome], score: float
) -> tuple[dict[str, int], list[Outcome], float]:
    better = True
    while better and score and not reader.spent:
        better = False
        for key, point in list(reader.points.items()):
            if key in given:
                continue
            for number in range(1, len(point.options) + 1):
                if number == chosen.get(key, 1) or reader.spent:
                    continue
                trial = {**chosen, key: number}
                outcomes = reader.work(trial)
                after = total(outcomes)
                if after < score:
                    chosen, best, score, better = trial, outcomes, after, True
    return chosen, best, score


def _choices(
    reader: Reader, chosen: dict[str, int], given: Mapping[str, int], best: list[Outcome], score: float
) -> list[Choice]:
    out = []
    shape = tuple(one.shape() for one in best)
    for key, point in list(reader.points.items()):
        taken = chosen.get(key, 1)
        scores, shapes = [], []
        for number in range(1, len(point.options) + 1):
            if number == taken:
                scores.append(score)
                shapes.append(shape)
                continue
            if reader.spent:
                scores.append(float("nan"))
                shapes.append(())
                continue
            outcomes = reader.work({**chosen, key: number})
            scores.append(total(outcomes))
            shapes.append(tuple(one.shape() for one in outcomes))
        equal = [number for number, one in enumerate(scores) if one <= score]
        differ = any(shapes[number] != shape for number in equal)
        counts = any(_stitches(shapes[number]) != _stitches(shape) for number in equal if shapes[number])
        asks = len(equal) > 1 and counts and key not in given and point.matters == "counts"
        out.append(Choice(point, taken, tuple(scores), differ, asks, key in given, tuple(shapes)))
    return out
