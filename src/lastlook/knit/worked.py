"""What a reading gives: every row of a piece, with what it used and what it gave.

*Left* and *right* are those of the fabric seen from its right side, as it lies. A row *uses* the stitches on the
needle and *gives* those of the next row; always `after == before - used + gives`, and `used == before`
where the row adds up.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from lastlook.finding import Span
from lastlook.piece import Edge


class Side(Enum):
    """Which side of the fabric faces the worker."""

    RIGHT = "right side"
    WRONG = "wrong side"
    ROUND = "round"


class Act(Enum):
    """What a shaping does."""

    DECREASE = "decrease"
    INCREASE = "increase"
    BIND_OFF = "bind off"
    CAST_ON = "cast on"
    HOLD = "hold"
    PICK_UP = "pick up"


@dataclass(frozen=True)
class Shaping:
    """One shaping in one row."""

    act: Act
    edge: str
    """'left', 'right' or 'inside', seen from the right side of the fabric."""
    stitches: int
    """How many stitches it takes or gives, always positive."""
    inset: int = 0
    """How many stitches lie between it and the edge."""
    lean: str | None = None
    """'left' or 'right' seen from the right side, where the leaflet says how it is worked."""


@dataclass(frozen=True)
class WorkedRow:
    """One row or round."""

    number: int
    """From 1, the first row after casting on."""
    side: Side
    before: int
    used: int
    gives: int
    after: int
    shapings: tuple[Shaping, ...]
    span: Span
    """The words of the leaflet that this row was worked from."""
    structure: str
    """'stockinette', 'rib 1x1', 'garter', or the leaflet's own name of a pattern."""
    words: str
    """The row as it would be written out for one size."""


class Ended(Enum):
    """How a piece ends."""

    BOUND_OFF = "bound off"
    FASTENED_OFF = "fastened off"
    DRAWN_UP = "drawn up"
    ON_HOLDER = "on holder"
    JOINED = "joined"
    OPEN = "open"


@dataclass(frozen=True)
class Stated:
    """A count that is printed, beside the one that was worked."""

    span: Span
    stated: int
    worked: int


@dataclass(frozen=True)
class WorkedPiece:
    """One piece in one size and one reading."""

    name: str
    part_of: str | None
    """The piece that this one is a part of, where a piece divides."""
    make: int
    cast_on: int | None
    rows: tuple[WorkedRow, ...]
    end_stitches: int
    ended: Ended
    stated: tuple[Stated, ...]
    edges: tuple[Edge, ...]
    landmarks: tuple[tuple[str, int], ...] = ()
    """Names of heights with their row: ('underarm', 108), ('neck', 152)."""
