"""Observations of one toile that can't both be right."""

from __future__ import annotations

import itertools

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.toile.observed import Observation, Seen, Toile, counts

LARGE = {Seen.PINCHED}
SMALL = {Seen.SHORT_OF, Seen.PULLS, Seen.RIDES_UP}
OPPOSITES = (
    (LARGE, SMALL),
    ({Seen.SWINGS_FORWARD}, {Seen.SWINGS_BACK}),
    ({Seen.FITS}, LARGE | SMALL),
    ({Seen.LENGTH_RIGHT}, {Seen.DIPS}),
)


def contradictions(toile: Toile) -> tuple[Finding, ...]:
    """Return a finding for every pair that excludes each other, at the same place and part."""
    said = [one for one in toile.observations if counts(toile, one)]
    out = []
    for a, b in itertools.combinations(said, 2):
        if a.at == b.at and _overlap(a, b) and any(_apart(a, b, pair) for pair in OPPOSITES):
            out.append(_contradiction(toile, a, b))
    return tuple(out)


def _overlap(a: Observation, b: Observation) -> bool:
    return a.part == b.part or "all round" in (a.part, b.part)


def _apart(a: Observation, b: Observation, pair: tuple[set[Seen], set[Seen]]) -> bool:
    return (a.seen in pair[0] and b.seen in pair[1]) or (b.seen in pair[0] and a.seen in pair[1])


def _contradiction(toile: Toile, a: Observation, b: Observation) -> Finding:
    return Finding(
        "toile-contradicts",
        Certainty.PROVEN,
        f"Of the {a.at} of toile {toile.number}, “{a.seen.value}” and “{b.seen.value}” exclude each other.",
        f"The first was said of {a.part}, the second of {b.part}.",
        "Put the toile on once more and look at that place alone.",
        asks=True,
        where=Where(edge=a.at),
    )
