"""What a maker would accept if it does not fit, and would like if it does, as written beside the problem.

`docs/lay.md` is the description of the keys. Each concession is the problem as written with some of its keys changed,
read again like any problem.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from lastlook.finding import Certainty, Finding, Where
from lastlook.lay.ask import read_problem
from lastlook.lay.choices import Choice, Concession, Fitted, choices, longer, shorter, usual
from lastlook.lay.cloth import Outline, Point
from lastlook.lay.search.hunt import GoOn
from lastlook.lay.wanted import Problem, Wanted

_KEYS = frozenset(("say", "loss", "cloth", "pieces", "without", "shorter"))
_BAND_KEYS = frozenset(("pieces", "at_mm", "most_mm"))
MOST_LOSS = 1000.0
SHORTER_LOSS = 0.01
"""What a millimetre shorter loses: a decimetre hurts like a joint."""


@dataclass(frozen=True)
class Band:
    """Pieces that may be made shorter or longer: at which height along their grain, and by how much at most."""

    names: tuple[str, ...]
    at_mm: float
    most_mm: float

    def shortened(self, problem: Problem, mm: float) -> Problem:
        """Return the problem with a band of that width taken out of the pieces; put in where it is negative."""
        pieces = [_shortened(one, self.at_mm, mm) if one.id in self.names else one for one in problem.pieces]
        return replace(problem, pieces=tuple(pieces))


@dataclass(frozen=True)
class Accepted:
    """All that was written beside a problem."""

    concessions: tuple[Concession, ...] = ()
    shorter: tuple[Band, ...] = ()
    longer: Band | None = None


def read_accepted(value: Mapping[str, Any], problem: Problem) -> Accepted | tuple[Finding, ...]:
    """Return what stands beside a problem that could be read, or the finding that says why that can't be read."""
    written = value.get("accept", [])
    if not isinstance(written, list):
        return _unread("accept", "What may be accepted is not a list.", "Write [{…}, …].")
    concessions: list[Concession] = []
    bands: list[Band] = []
    for spot, one in enumerate(written):
        read = _concession(value, one, f"accept.{spot}", problem)
        if isinstance(read, tuple):
            return read
        if isinstance(read, Band):
            bands.append(read)
        else:
            concessions.append(read)
    wish = _band(value["longer"], "longer", problem) if value.get("longer") is not None else None
    return wish if isinstance(wish, tuple) else Accepted(tuple(concessions), tuple(bands), wish)


def _concession(
    whole: Mapping[str, Any], one: Any, fact: str, problem: Problem
) -> Concession | Band | tuple[Finding, ...]:
    if not isinstance(one, Mapping) or not set(one) <= _KEYS or not set(one) & (_KEYS - {"say", "loss"}):
        return _unread(fact, "This concession can't be followed.", f"The keys known here: {', '.join(sorted(_KEYS))}.")
    if "shorter" in one:
        return _band(one["shorter"], f"{fact}.shorter", problem)
    say, loss = one.get("say"), one.get("loss", 1.0)
    if not isinstance(say, str) or not say.strip():
        return _unread(f"{fact}.say", "This concession has no words.", "Write under “say” what the maker would accept.")
    if isinstance(loss, bool) or not isinstance(loss, int | float) or not 0 <= loss <= MOST_LOSS:
        return _unread(f"{fact}.loss", "How much this concession hurts is no number.", "Write 0 to 1000; 1 is a joint.")
    changed = _changed(whole, one)
    read = changed if isinstance(changed, str) else read_problem(changed)
    if isinstance(read, str):
        return _unread(fact, read, "Name pieces by their id, and their keys as under “pieces”.")
    return read if isinstance(read, tuple) else Concession(say.strip(), read, float(loss))


def _changed(whole: Mapping[str, Any], one: Mapping[str, Any]) -> dict[str, Any] | str:
    """Return the problem as written with the keys of a concession in place of its own, or what stands in the way."""
    cloth, pieces, without = one.get("cloth", {}), one.get("pieces", {}), one.get("without", [])
    if not (isinstance(cloth, Mapping) and isinstance(pieces, Mapping) and isinstance(without, list)):
        return "The changes of this concession are not written as keys and values."
    names = [piece["id"] for piece in whole["pieces"]]
    strange = [str(name)[:40] for name in (*pieces, *without) if name not in names]
    if strange or not all(isinstance(change, Mapping) for change in pieces.values()):
        return f"No piece is called “{strange[0]}”." if strange else "The changes of a piece are no keys and values."
    kept = [{**piece, **pieces.get(piece["id"], {})} for piece in whole["pieces"] if piece["id"] not in without]
    return {"cloth": {**whole["cloth"], **cloth}, "pieces": kept}


def _band(value: Any, fact: str, problem: Problem) -> Band | tuple[Finding, ...]:
    if not isinstance(value, Mapping) or set(value) != _BAND_KEYS:
        say = "What may be made shorter or longer is not described."
        return _unread(fact, say, "Write {“pieces”: [ids], “at_mm”: height along the grain, “most_mm”: at most}.")
    names, numbers = value["pieces"], (value["at_mm"], value["most_mm"])
    if not isinstance(names, list) or not names or any(problem.piece(str(name)) is None for name in names):
        return _unread(fact, "A piece that may be made shorter or longer is not there.", "Name pieces by their id.")
    good = all(isinstance(n, int | float) and not isinstance(n, bool) and math.isfinite(n) for n in numbers)
    if not good or not 0 < numbers[1] <= 5000 or abs(numbers[0]) > 90_000:
        return _unread(fact, "By how much, or where, is no length.", "Write millimetres.")
    return Band(tuple(map(str, names)), float(numbers[0]), float(numbers[1]))


def _unread(fact: str, say: str, attempt: str) -> tuple[Finding, ...]:
    why = "A lay can only be proven for a problem that can be read without guessing."
    return (Finding("lay-unreadable", Certainty.PROVEN, say, why, attempt, where=Where(fact=fact)),)


def _shortened(piece: Wanted, at_mm: float, mm: float) -> Wanted:
    turn = math.radians(piece.grain_deg or 0.0)
    way = (math.cos(turn), math.sin(turn))

    def spot(point: Point) -> Point:
        high = point[0] * way[0] + point[1] * way[1]
        down = min(mm, max(0.0, high - (at_mm - mm))) if mm > 0 else mm if high >= at_mm else 0.0
        return point[0] - way[0] * down, point[1] - way[1] * down

    def whole(outline: Outline) -> Outline:
        moved = [spot(one) for one in outline]
        return tuple(
            one for last, one in zip((moved[-1], *moved[:-1]), moved, strict=True) if math.dist(last, one) > 1e-6
        )

    return replace(
        piece, outline=whole(piece.outline),
        on_fold=piece.on_fold and (spot(piece.on_fold[0]), spot(piece.on_fold[1])),
        match=piece.match and replace(piece.match, point=spot(piece.match.point)),
        flaw_free=None if piece.flaw_free is None else tuple(map(whole, piece.flaw_free)),
    )  # fmt: skip


def would_fit(
    problem: Problem, accepted: Accepted, *, seed: int, passes: int, may_go_on: GoOn | None = None
) -> tuple[Choice, ...]:
    """Return what would make it fit of all that is accepted, the least loss first, each proven by its lay."""
    found: list[Choice] = []
    for band in accepted.shorter:
        fitted = shorter(
            _along(problem, band, 1.0), most_mm=band.most_mm, seed=seed, passes=passes, may_go_on=may_go_on
        )
        if fitted is not None and fitted.amount_mm > 0:
            say = f"Make {_listed(band.names)} {fitted.amount_mm / 10:.1f} cm shorter."
            found.append(Choice(Concession(say, fitted.problem, fitted.amount_mm * SHORTER_LOSS), fitted.lay))
    every = (*accepted.concessions, *usual(problem))
    found += choices(every, seed=seed, passes=passes, may_go_on=may_go_on)
    return tuple(sorted(found, key=lambda one: one.concession.loss))


def could_be_longer(
    problem: Problem, band: Band, *, seed: int, passes: int, may_go_on: GoOn | None = None
) -> Fitted | None:
    """Return by how much the pieces of a band could be longer, proven by its lay."""
    return longer(_along(problem, band, -1.0), most_mm=band.most_mm, seed=seed, passes=passes, may_go_on=may_go_on)


def _along(problem: Problem, band: Band, sign: float) -> Callable[[float], Problem]:
    return lambda mm: band.shortened(problem, sign * mm)


def _listed(names: tuple[str, ...]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
