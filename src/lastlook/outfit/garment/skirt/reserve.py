"""The reserve of a skirt: what its seams can give later, and spare cloth turned into wider side allowances.

How much wider goes is solved with the lay: the stored one is judged with the wider pieces, and only where it breaks is
another searched.
"""

from __future__ import annotations

from collections.abc import Callable

from lastlook import lay, paper
from lastlook.finding import Certainty, Edit, Finding, Where
from lastlook.outfit.answer import Answer, Part
from lastlook.outfit.garment.problem import problem
from lastlook.outfit.garment.sewn import Sewn
from lastlook.outfit.garment.would_fit import WouldFit
from lastlook.outfit.names import title
from lastlook.paper import Drafted, make
from lastlook.quantity import Missing, Units, write_length

SEED = 1
PASSES = 40
"""How long a wider set is searched for; what lies easily lies soon."""
LEAST_MM = 2.0
"""A wider allowance than this is worth another lay; our own bound."""


def kept(one: Sewn, units: Units) -> Part | None:
    """Return what can be let out later, seam by seam; None where no seam keeps a reserve."""
    found = make.reserves(one.drafted)
    if not found:
        return None
    seams = ", ".join(
        f"{each.piece} {write_length(each.each_edge_mm, units)} at each edge of its {each.edge}" for each in found
    )
    most = write_length(sum(each.all_round_mm for each in found if each.edge.endswith("side")), units)
    subject = f"{title(one.plan.name)} reserve"
    say = f"{subject}: it can be let out later by {most} at the sides."
    finding = Finding(
        "reserve-kept",
        Certainty.NOTE,
        say,
        f"{seams}; at least {write_length(make.LEFT_MM, units)} of every allowance stay.",
        "Before letting out look for fading and needle holes at the old seam.",
        where=Where(piece=one.plan.name, edge="side"),
    )
    return Part(subject, Answer.YES, say, (finding,))


def wider_sides(one: Sewn, units: Units, may_go_on: Callable[[lay.Progress], bool]) -> WouldFit | None:
    """Return how much more allowance the cloth allows at every side, with its edits and its lay; None where none."""
    cloth = one.cloth
    if cloth is None or not one.drafted.pieces or isinstance(one.placements, Missing):
        return None
    found: dict[int, lay.Lay] = {}
    stored = one.placements

    def lays(drafted: Drafted) -> bool:
        asked = problem(cloth, drafted.pieces, one.plan.fold)
        if lay.judge(asked, stored).proven:
            found[id(drafted)] = lay.Lay(True, True, stored, left_over=lay.left_over(asked, stored))
            return True
        fresh = lay.search(asked, seed=SEED, passes=PASSES, may_go_on=may_go_on)
        found[id(drafted)] = fresh
        return fresh.proven

    by = float(int(make.widest_sides_mm(one.drafted, lays)))
    wider = make.with_wider_sides(one.drafted, by)
    if by < LEAST_MM or not lays(wider):
        return None
    say = f"The cloth has room for {write_length(by, units)} more allowance at every side edge, to be let out later."
    return WouldFit(say, tuple(_edit(one, step) for step in make.wider_steps(one.drafted, by)), found[id(wider)])


def _edit(one: Sewn, step: paper.Alteration) -> Edit:
    return paper.edit(step, f"sewing.{one.plan.name}.")
