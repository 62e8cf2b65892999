"""What gives back how much yarn when it does not suffice: small losses first, and whether each is enough.

A *concession* is one change to what is still to be knitted. Its *loss* orders them: what nobody sees comes before
what changes the garment.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from lastlook.knit.worked import WorkedPiece
from lastlook.knit.yarn.counts import structure_of
from lastlook.knit.yarn.forecast import Forecast
from lastlook.quantity import Gauge, Missing, Spread

SURE = 0.95
SHORTER_CM = ((2, 1.0), (4, 2.0))
"""How much shorter, and the loss of it; a body shows it more than a sleeve: our own order."""
BODY_WEIGHS = 1.5
OTHER_YARN_LOSS = 1.8
THREE_QUARTER_LOSS = 4.0
SHORT_LOSS = 6.0


@dataclass(frozen=True)
class Concession:
    """One change, what it gives back, and the chance that the yarn then suffices."""

    say: str
    gives_g: float
    chance: float
    loss: float

    @property
    def suffices(self) -> bool:
        """Whether the yarn is then as good as sure to suffice."""
        return self.chance >= SURE


def concessions(
    pieces: Sequence[WorkedPiece], gauge: Gauge, told: Forecast, stock_g: Spread, made: Iterable[str] = ()
) -> tuple[Concession, ...]:
    """Return what gives back how much, the least loss first; pieces already made give nothing."""
    done = {name.lower() for name in made}
    left = [piece for piece in pieces if piece.name.lower() not in done]
    sleeves = [piece for piece in left if "sleeve" in piece.name.lower()]
    body = [piece for piece in left if piece.name.lower().split(",")[0] in _BODY]
    found: list[tuple[str, float, float]] = []
    for cm, loss in SHORTER_CM:
        found.append((f"sleeves {cm} cm shorter", _shorter(sleeves, gauge, cm), loss))
        found.append((f"body {cm} cm shorter", _shorter(body, gauge, cm), loss * BODY_WEIGHS))
    found.append(("all ribbing in another yarn", _structure(left, "rib"), OTHER_YARN_LOSS))
    found.append(("three-quarter sleeves", _lower_part(sleeves, 0.34), THREE_QUARTER_LOSS))
    found.append(("short sleeves", _lower_part(sleeves, 0.72), SHORT_LOSS))
    out = [_priced(say, stitches, loss, told, stock_g) for say, stitches, loss in found if stitches > 0]
    return tuple(sorted(out, key=lambda one: (not one.suffices, one.loss)))


_BODY = frozenset({"back", "front", "left front", "right front", "body"})


def _priced(say: str, stitches: float, loss: float, told: Forecast, stock_g: Spread) -> Concession:
    grams = stitches * told.per_stitch_g.best
    return Concession(say, grams, told.chance_enough(stock_g + grams), loss)


def _shorter(pieces: Sequence[WorkedPiece], gauge: Gauge, cm: float) -> float:
    """Return the stitches in so many centimetres just below the underarm, where a piece is plain and widest."""
    rows = gauge.rows_for(cm * 10.0)
    if isinstance(rows, Missing):
        return 0.0
    return sum(_below_underarm(piece, round(rows)) * piece.make for piece in pieces)


def _below_underarm(piece: WorkedPiece, rows: int) -> int:
    underarm = dict(piece.landmarks).get("underarm", len(piece.rows))
    below = [row for row in piece.rows[:underarm] if "rib" not in row.structure]
    return sum(row.after for row in below[-rows:]) if len(below) > rows else 0


def _structure(pieces: Sequence[WorkedPiece], word: str) -> float:
    return sum(
        row.after * structure_of(row.structure).share * piece.make
        for piece in pieces
        for row in piece.rows
        if word in row.structure
    )


def _lower_part(sleeves: Sequence[WorkedPiece], share: float) -> float:
    """Return the stitches in the lower part of the sleeves, a rib of the same height put back higher up."""
    total = 0.0
    for piece in sleeves:
        underarm = dict(piece.landmarks).get("underarm", len(piece.rows))
        rows = piece.rows[: round(underarm * share)]
        total += sum(row.after for row in rows) * piece.make
    return total
