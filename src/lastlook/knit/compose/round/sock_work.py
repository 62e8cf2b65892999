"""A sock worked: every round and every row of its heel, with what waits and what is picked up."""

from __future__ import annotations

from typing import Protocol

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.needle import Needle
from lastlook.knit.worked import Act, Ended, Shaping, Side, WorkedPiece
from lastlook.piece import Edge, EdgeName

PLAIN = "stockinette"


class Counts(Protocol):
    """What the hands need to know of a sock."""

    @property
    def around(self) -> int: ...
    @property
    def cuff_rounds(self) -> int: ...
    @property
    def leg_rounds(self) -> int: ...
    @property
    def heel(self) -> int: ...
    @property
    def picked(self) -> int: ...
    @property
    def purled(self) -> int: ...
    @property
    def between(self) -> int: ...
    @property
    def turn_rows(self) -> int: ...
    @property
    def heel_left(self) -> int: ...
    @property
    def gusset_decreases(self) -> int: ...
    @property
    def foot_rounds(self) -> int: ...
    @property
    def toe_decreases(self) -> int: ...
    @property
    def toe_left(self) -> int: ...


def sock_piece(counts: Counts, asked: Asked) -> WorkedPiece:
    """Return the sock, row by row."""
    needle = Needle(counts.around, Side.ROUND)
    needle.even(asked.edging.structure, counts.cuff_rounds)
    needle.mark("edging")
    needle.even(PLAIN, counts.leg_rounds - 1)
    needle.row(PLAIN, (Shaping(Act.HOLD, "inside", counts.heel),))
    needle.mark("heel")
    needle.turned()
    needle.even("heel stitch", counts.heel)
    for _ in range(counts.turn_rows):
        needle.row(PLAIN, (Shaping(Act.DECREASE, "inside", 1),))
    needle.mark("gusset")
    needle.joined()
    needle.row(PLAIN, (Shaping(Act.PICK_UP, "inside", 2 * counts.picked + counts.heel),))
    for _ in range(counts.gusset_decreases):
        needle.row(PLAIN, (Shaping(Act.DECREASE, "inside", 2),))
        needle.row(PLAIN)
    needle.even(PLAIN, counts.foot_rounds)
    needle.mark("toe")
    for _ in range(counts.toe_decreases):
        needle.row(PLAIN, (Shaping(Act.DECREASE, "inside", 4),))
        needle.row(PLAIN)
    half = counts.toe_left // 2
    edges = [Edge(EdgeName("Socks", f"toe, {side}"), stitches=half) for side in ("sole", "instep")]
    return needle.off("Socks", Ended.JOINED, edges, make=2)
