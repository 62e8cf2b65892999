"""How long it takes: the maker's own pace from the sittings she noted, and what is left of each piece.

A *sitting* is some rows of a piece and the minutes they took, as she tells it. Rows differ in length, so the pace
is kept in minutes a stitch.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.knit import WorkedPiece
from lastlook.outfit.garment.knitted import Knitted
from lastlook.outfit.outfit import made_of
from lastlook.quantity import Missing, Spread

PER_STITCHES = 100
LEAST_GIVE, ONE_SITTING = 0.10, 0.30
"""How far a later evening is from the earlier ones, as a share: at least a tenth, nearly a third after a single
sitting (common practice, no source)."""


@dataclass(frozen=True)
class Pace:
    """Minutes a stitch, from so many sittings."""

    minutes_a_stitch: Spread
    sittings: int

    @property
    def per_100(self) -> float:
        """Return the minutes for 100 stitches."""
        return self.minutes_a_stitch.best * PER_STITCHES

    def minutes(self, stitches: int) -> Spread:
        """Return how long so many stitches take."""
        return self.minutes_a_stitch * stitches


@dataclass(frozen=True)
class Left:
    """What is left of one piece."""

    piece: str
    rows: int
    stitches: int
    minutes: Spread | Missing


def pace(one: Knitted) -> Pace | Missing:
    """Return the pace at which a garment is knitted; Missing until a sitting was noted."""
    told = [(sitting.minutes, _stitches(one, sitting.piece, sitting.first, sitting.last)) for sitting in one.plan.log]
    told = [(minutes, stitches) for minutes, stitches in told if stitches and minutes > 0]
    if not told:
        return Missing("her pace", "Note how long some rows took.")
    best = sum(minutes for minutes, _ in told) / sum(stitches for _, stitches in told)
    each = [minutes / stitches for minutes, stitches in told]
    give = ONE_SITTING * best if len(each) == 1 else LEAST_GIVE * best
    return Pace(Spread(best, min(best - give, *each), max(best + give, *each)), len(each))


def left(one: Knitted) -> tuple[Left, ...]:
    """Return what is left of each piece that is not made yet, with the hours it takes at her own pace."""
    found = pace(one)
    out = []
    for piece in one.pieces:
        rows = () if made_of(one.made, piece.name) else piece.rows[one.plan.rows_done(piece.name) :]
        stitches = sum(row.after for row in rows)
        again = (piece.make - 1) * sum(row.after for row in piece.rows) if rows else 0
        minutes = found if isinstance(found, Missing) else found.minutes(stitches + again)
        if rows:
            out.append(Left(piece.name, len(rows) + (piece.make - 1) * len(piece.rows), stitches + again, minutes))
    return tuple(out)


def _stitches(one: Knitted, name: str, first: int, last: int) -> int:
    piece: WorkedPiece | None = next((each for each in one.pieces if each.name == name), None)
    return sum(row.after for row in piece.rows[first - 1 : last]) if piece else 0
