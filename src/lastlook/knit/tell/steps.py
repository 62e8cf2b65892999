"""A figure that breaks the progression of the other sizes, where no printed count bears it out."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from lastlook.finding import Certainty, Finding, Where
from lastlook.knit.choose import Outcome
from lastlook.knit.needle import Hands
from lastlook.leaflet import Leaflet
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Figure, Step

LEAST_SIZES = 3
LEAST_LISTS = 4
"""With fewer lists than these there is no habit to break."""


def of_steps(leaflet: Leaflet, outcomes: list[Outcome]) -> list[Finding]:
    """Return a doubt where one list of figures has one value out of step and all other lists go one way."""
    sizes = len(leaflet.sizes)
    if sizes < LEAST_SIZES:
        return []
    lists = [
        (step, figure)
        for part in leaflet.parts
        for step in part.steps
        for figure in _figures(step)
        if len(figure.values) == sizes
    ]
    broken = [(step, figure) for step, figure in lists if not _one_way(figure.values)]
    if len(lists) < LEAST_LISTS or len(broken) != 1:
        return []
    step, figure = broken[0]
    odd = _odd(figure.values)
    if odd is None or _borne_out(step, odd, outcomes):
        return []
    return [_finding(leaflet, step, odd)]


def _figures(step: Step) -> Iterator[Figure]:
    if isinstance(step, say.CastOn | say.Printed | say.BindOffs):
        yield step.n
    elif isinstance(step, say.WorkOn):
        for one in (step.goal.mm, step.on):
            if one is not None:
                yield one
    elif isinstance(step, say.Shape):
        for cadence in step.cadences:
            if cadence.goal.until is not None:
                yield cadence.goal.until
    elif isinstance(step, say.Finish | say.Hold) and step.n is not None:
        yield step.n


def _one_way(values: tuple[float, ...]) -> bool:
    pairs = list(pairwise(values))
    return all(a <= b for a, b in pairs) or all(a >= b for a, b in pairs)


def _odd(values: tuple[float, ...]) -> int | None:
    """Return the one place without which the values rise; None where it may be more than one."""
    without = [spot for spot in range(len(values)) if _rises((*values[:spot], *values[spot + 1 :]))]
    if len(without) == 1:
        return without[0]
    inner = [spot for spot in without if 0 < spot < len(values) - 1]
    return inner[0] if len(inner) == 1 else None


def _rises(values: tuple[float, ...]) -> bool:
    return all(a <= b for a, b in pairwise(values)) and values[0] < values[-1]


def _borne_out(step: Step, size: int, outcomes: list[Outcome]) -> bool:
    """Whether a printed count of the same piece comes out in that size, and nothing of it is in trouble."""
    if size >= len(outcomes) or isinstance(step, say.WorkOn):
        return False
    holds = [hands for hands in outcomes[size].pieces.values() if step.span in hands.worked]
    return any(_sound(hands) for hands in holds)


def _sound(hands: Hands) -> bool:
    return not hands.troubles and any(one.stated == one.worked for one in hands.counts)


def _finding(leaflet: Leaflet, step: Step, size: int) -> Finding:
    words = " ".join(leaflet.source.words(step.span).split())
    name = leaflet.sizes[size]
    return Finding(
        kind="size-out-of-step",
        certainty=Certainty.DOUBTFUL,
        say=f"The figure for size {name} is out of step with those of the other sizes: “{words}”.",
        why="From size to size all other figures of this leaflet go one way; only this one turns back. Some leaflets mean it so, and no printed count shows it either way.",
        attempt=f"Compare the figure for {name} with the paper and with its neighbours: a digit may have been misread.",
        where=Where(span=step.span),
        size=name,
    )  # fmt: skip
