"""What would make a garment fit on its cloth, as changes of the outfit: each proven by a lay, the least loss first.

What the outfit can hold is offered with its edits: the cloth laid single, a narrower hem allowance, a shorter
garment. What it can't hold yet (a band pieced from two parts, a piece out of another cloth) is told all the same.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from lastlook import lay, paper
from lastlook.finding import Edit, Finding
from lastlook.outfit.garment.problem import problem
from lastlook.outfit.garment.sewn import Sewn

HEMS_MM = (10.0, 20.0, 30.0)
"""By how much a hem allowance is tried narrower; what stays is told by the paper (common practice, no source)."""
MOST_SHORTER_MM = 120.0
"""A skirt that loses more is another skirt (common practice, no source)."""
NARROW_LOSS, PIECED_LOSS = 0.5, 0.8
SEED = 1


@dataclass(frozen=True)
class WouldFit:
    """One change with which everything comes out of the cloth."""

    say: str
    edits: tuple[Edit, ...]
    """Empty where the outfit's document can't hold it."""
    lay: lay.Lay


def would_fit(one: Sewn, may_go_on: Callable[[lay.Progress], bool]) -> tuple[WouldFit, ...]:
    """Return the changes that a search found to make it fit; none where it was stopped before it found one."""
    if one.problem is None or one.cloth is None:
        return ()
    hems = [_narrower(one, mm) for mm in HEMS_MM]
    edits = {concession.say: changes for concession, changes in hems}
    accept = [concession for concession, _ in hems] + _usual(one)
    found = list(lay.choices(accept, seed=SEED, may_go_on=may_go_on, most=4))
    out = [
        WouldFit(choice.concession.say, edits.get(choice.concession.say, _folded(one, choice)), choice.lay)
        for choice in found
    ]
    short = _shorter(one, may_go_on)
    return tuple([*out, short] if short else out)


def _usual(one: Sewn) -> list[lay.Concession]:
    assert one.problem is not None
    bands = [piece.name for piece in one.drafted.pieces if piece.role == "band"]
    joints = [lay.with_joint(one.problem, name) for name in bands]
    return [*lay.usual(one.problem), *joints]


def _folded(one: Sewn, choice: lay.Choice) -> tuple[Edit, ...]:
    """Return the edit that lays the cloth single, where that is what was conceded."""
    assert one.problem is not None
    single = choice.concession.problem.cloth.fold is lay.Fold.NONE and one.problem.cloth.fold is not lay.Fold.NONE
    return (Edit(f"sewing.{one.plan.name}.fold", "none"),) if single else ()


def _narrower(one: Sewn, mm: float) -> tuple[lay.Concession, tuple[Edit, ...]]:
    """Return a hem allowance narrower by so much on every piece that has a hem."""
    names = [piece.name for piece in one.drafted.pieces if piece.side("hem") is not None]
    changes = [paper.read_alteration(_hem(name, mm)) for name in names]
    asked = _problem(one, [change for change in changes if not isinstance(change, Finding)])
    edits = tuple(Edit(_list(one), tuple(_hem(name, mm).items())) for name in names)
    return lay.Concession(f"Make the hem allowance {mm:.0f} mm narrower.", asked, NARROW_LOSS + mm / 100), edits


def _hem(name: str, mm: float) -> dict[str, str | float]:
    return {"kind": "allowance", "piece": name, "by_mm": -mm, "edge": "hem"}


def _shorter(one: Sewn, may_go_on: Callable[[lay.Progress], bool]) -> WouldFit | None:
    def at(mm: float) -> lay.Problem:
        change = paper.read_alteration(_short(mm))
        return _problem(one, [] if isinstance(change, Finding) else [change])

    found = lay.shorter(at, most_mm=MOST_SHORTER_MM, seed=SEED, may_go_on=may_go_on)
    if found is None or found.amount_mm <= 0:
        return None
    mm = math.ceil(found.amount_mm)
    return WouldFit(
        f"Make it {mm / 10:.1f} cm shorter at the hem.", (Edit(_list(one), tuple(_short(mm).items())),), found.lay
    )


def _short(mm: float) -> dict[str, str | float]:
    return {"kind": "lengthen", "piece": "all", "by_mm": -mm}


def _list(one: Sewn) -> str:
    return f"sewing.{one.plan.name}.alterations.+"


def _problem(one: Sewn, changes: Sequence[paper.Alteration]) -> lay.Problem:
    assert one.cloth is not None
    return problem(one.cloth, paper.alter(one.drafted, changes).pieces, one.plan.fold)
