"""Socks from the cuff down: leg, heel flap, turned heel, gussets, instep, a wedge toe that is grafted.

A heel is worked on half the stitches, as many rows high as it has stitches, with a slipped stitch at each row's
beginning, so that one stitch is picked up for every two rows. Where no source is named: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from lastlook import wearer
from lastlook.finding import Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.body import Body
from lastlook.knit.compose.composed import (
    Composed,
    FinishedMeasure,
    cant_hold,
    edging_too_wide,
    not_composed,
    off_target,
    rows_unknown,
)
from lastlook.knit.compose.craft.evenly import even, to_repeat
from lastlook.knit.compose.raglan.measures import across_by, down_by
from lastlook.knit.compose.round.sock_words import sock_page
from lastlook.knit.compose.round.sock_work import sock_piece
from lastlook.piece import EdgeName, Mate, Unit
from lastlook.quantity import Missing, Units, write_length

STRETCH = 0.9
"""A sock is a tenth smaller round than the foot, so that it stays up."""
SHORTER_MM = 10.0
"""And about a centimetre shorter."""
LEG_MM = 180.0
CUFF_MM = 60.0
TOE_SHARE = 0.36
"""Of the foot's stitches, left to be grafted."""
LEAST_TOE = 12


@dataclass(frozen=True)
class SockCounts:
    """Every count of a sock."""

    around: int
    cuff_rounds: int
    leg_rounds: int
    """Above the heel, the cuff not counted."""
    purled: int
    """Stitches of the turned heel's first row before its decrease."""
    between: int
    """Stitches of its second row between the slipped one and the decrease."""
    turn_rows: int
    heel_left: int
    gusset_decreases: int
    foot_rounds: int
    """Worked even between gussets and toe."""
    toe_decreases: int

    @property
    def heel(self) -> int:
        """Return the stitches of the heel, and the rows of its flap."""
        return self.around // 2

    @property
    def picked(self) -> int:
        """Return the stitches picked up along each side of the flap."""
        return self.heel // 2

    @property
    def toe_left(self) -> int:
        """Return the stitches that are grafted, sole and instep together."""
        return self.around - 4 * self.toe_decreases

    @property
    def foot_length_rounds(self) -> int:
        """Return the rounds from the back of the heel to the tip: the turned heel, gussets, foot and toe."""
        return self.turn_rows + 1 + 2 * self.gusset_decreases + self.foot_rounds + 2 * self.toe_decreases


def design_socks(who: wearer.Wearer, asked: Asked) -> Composed:
    """Return socks for a foot."""
    body = Body(who)
    girth, length = body.measured("ball_girth"), body.measured("foot_length")
    taken = who.taken("foot_length")
    size = f"{write_length(taken.mm.best, Units.CM)} foot" if taken else "hers"
    if isinstance(asked.gauge.rows, Missing):
        return not_composed("Socks", size, [rows_unknown(asked.gauge.rows)])
    if girth is None or length is None:
        return not_composed("Socks", size, body.all_findings())
    ankle = who.taken("ankle_girth")
    round_mm = STRETCH * max(girth, ankle.mm.best if ankle else 0.0)
    leg_mm = asked.lengths_mm.get("leg", LEG_MM)
    if asked.edging.repeat > round_mm * asked.stitches_per_mm:
        need = edging_too_wide(asked.edging.repeat, "the leg", round_mm * asked.stitches_per_mm)
        return not_composed("Socks", size, [need])
    counts = _counts(round_mm, length - SHORTER_MM, leg_mm, asked)
    if counts.foot_rounds < 2 or counts.leg_rounds < 2:
        return not_composed("Socks", size, [_too_short("foot" if counts.foot_rounds < 2 else "leg")])
    across, down = across_by(asked), down_by(asked)
    measures: tuple[FinishedMeasure, ...] = (
        across("girth of foot and leg", round_mm, counts.around, 0.0),
        down("foot, heel to tip", length - SHORTER_MM, counts.foot_length_rounds),
        down("leg, to the heel", leg_mm, counts.cuff_rounds + counts.leg_rounds),
        down("heel flap", counts.heel / asked.rows_per_mm, counts.heel),
    )
    piece = sock_piece(counts, asked)
    sole, instep = EdgeName("Socks", "toe, sole"), EdgeName("Socks", "toe, instep")
    findings = (*body.all_findings(), *off_target(measures, 10.0))
    page = sock_page(counts, asked, size)
    mates = (Mate(sole, instep, Unit.STITCHES),)
    return Composed("Socks", size, page, (piece,), mates, measures, (), findings, _notes(counts, asked))


def around_for(stitches: float, repeat: int) -> int:
    """Return what a sock casts on: as many on each of four quarters, and whole repeats of its rib.

    >>> around_for(145.0, 2)
    144
    """
    return to_repeat(stitches, math.lcm(4, repeat))


def _counts(round_mm: float, foot_mm: float, leg_mm: float, asked: Asked) -> SockCounts:
    r = asked.rows_per_mm
    around = around_for(round_mm * asked.stitches_per_mm, asked.edging.repeat)
    heel = around // 2
    spare = 1 if heel // 2 % 2 == 0 else 2
    each = (heel // 2 - spare - 3) // 2
    left = heel // 2 + spare + 1
    gusset = (left // 2 + heel // 2) - around // 4
    toe_left = max(LEAST_TOE, to_repeat(around * TOE_SHARE, 4))
    toe = (around - toe_left) // 4
    turn = 2 * (1 + max(0, each))
    cuff = max(4, even(min(CUFF_MM, leg_mm / 3) * r))
    foot = round(foot_mm * r) - turn - 1 - 2 * gusset - 2 * toe
    return SockCounts(
        around, cuff, round(leg_mm * r) - cuff, heel // 2 + spare, 2 * spare + 1, turn, left, gusset, foot, toe
    )


def _notes(counts: SockCounts, asked: Asked) -> tuple[str, ...]:
    tip = 2 * counts.toe_decreases / asked.rows_per_mm / 10.0
    width = asked.gauge.width_mm(counts.toe_left // 2).best / 10.0
    return (
        f"Start the toe {tip:.1f} cm before the foot is as long as it should be; try it on before you do.",
        f"Graft the toe with a tail of {4 * width + 10:.0f} cm, one stitch of the sole to one of the instep.",
        "Cast on loosely, over two needles held together if you cast on tight: the cuff has to pass over the heel.",
        "Heel and toe wear first: run a strand of sewing silk or nylon along with the wool there.",
    )


def _too_short(part: str) -> Finding:
    if part == "foot":
        return cant_hold(
            "Heel, gussets and toe alone are longer than the foot.",
            "They take rounds by their stitches, and so many stitches go round this foot.",
            "Measure the foot's length and girth again, or work at a gauge with more rounds.",
        )
    return cant_hold(
        "The cuff alone is longer than the leg.",
        "A leg has at least a few rounds between its cuff and the heel.",
        "Ask for a longer leg.",
    )
