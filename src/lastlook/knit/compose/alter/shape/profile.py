"""A worked piece taken apart: stretches of plain shaping between the rows that can't move, and how far each
edge has come in.

A *hard* row binds off, casts on, holds or picks up; it stays one row. A *soft* stretch is a run of rows of one
structure between hard rows, whose increases and decreases may be spread anew.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.knit.compose.alter.shape.holes import is_eyelet
from lastlook.knit.worked import Act, Ended, Shaping, WorkedPiece, WorkedRow

HARD = frozenset({Act.BIND_OFF, Act.CAST_ON, Act.HOLD, Act.PICK_UP})
EDGES = ("left", "right", "inside")
TAKING = frozenset({Act.DECREASE, Act.BIND_OFF, Act.HOLD})


@dataclass(frozen=True)
class Stretch:
    """Some rows of a piece."""

    rows: tuple[WorkedRow, ...]
    hard: bool
    above: bool
    """Whether it lies above the underarm."""

    @property
    def structure(self) -> str:
        """Return what it is knitted in."""
        return self.rows[0].structure

    def takes(self, edge: str) -> int:
        """Return what an edge loses in it; less than nothing where it grows."""
        return sum(signed(one) for row in self.rows for one in row.shapings if one.edge == edge)

    def events(self, edge: str) -> tuple[int, ...]:
        """Return the row, from 0, of every stitch that an edge loses or gains."""
        out = []
        for spot, row in enumerate(self.rows):
            for one in row.shapings:
                if one.edge == edge:
                    out += [spot] * one.stitches
        return tuple(out)

    def like(self, edge: str) -> Shaping | None:
        """Return the first shaping at an edge, as the manner of all."""
        return next((one for row in self.rows for one in row.shapings if one.edge == edge), None)


def signed(one: Shaping) -> int:
    """Return what a shaping takes; less than nothing where it gives."""
    return one.stitches if one.act in TAKING else -one.stitches


def stretches(piece: WorkedPiece) -> tuple[Stretch, ...]:
    """Return the piece in order, every row in one stretch."""
    underarm = underarm_row(piece)
    out: list[list[WorkedRow]] = []
    kinds: list[tuple[bool, bool, str]] = []
    for spot, row in enumerate(piece.rows):
        hard = is_hard(row) or (spot == len(piece.rows) - 1 and piece.ended is Ended.FASTENED_OFF)
        kind = (hard, spot >= underarm, row.structure)
        if out and not hard and kinds[-1] == kind:
            out[-1].append(row)
        else:
            out.append([row])
            kinds.append(kind)
    return tuple(Stretch(tuple(rows), *kind[:2]) for rows, kind in zip(out, kinds, strict=True))


def is_hard(row: WorkedRow) -> bool:
    """Whether a row can't move."""
    return any(one.act in HARD for one in row.shapings) or is_eyelet(row)


def underarm_row(piece: WorkedPiece) -> int:
    """Return the rows below the underarm: as marked, else up to the first bind-off at an edge, else all."""
    if piece.part_of is not None:
        return 0
    marked = dict(piece.landmarks).get("underarm")
    if marked is not None and marked <= len(piece.rows):
        return marked
    for spot, row in enumerate(piece.rows):
        if any(one.act is Act.BIND_OFF and one.edge != "inside" for one in row.shapings):
            return spot - 1 if spot and spot % 2 else spot
    return len(piece.rows)


def rows_to_spare(piece: WorkedPiece) -> int:
    """Return how many rows of its longest stretch below the underarm a piece can do without."""
    soft = [part for part in stretches(piece) if not part.hard and not part.above]
    longest = max(soft, key=lambda part: len(part.rows), default=None)
    if longest is None:
        return 0
    shaped = sum(1 for row in longest.rows if row.shapings)
    return max(0, len(longest.rows) - 2 * shaped - 2)
