"""Stitches that are live together on a needle, with the rows worked on them.

*Left* and *right* are those of the fabric seen from its right side; a right-side row begins at the right edge.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from lastlook.finding import Span


@dataclass(slots=True)
class Event:
    """A shaping in a row."""

    act: str
    edge: str
    n: int
    inset: int = 0
    lean: str = ""


@dataclass(slots=True)
class Row:
    """One row as it was worked."""

    number: int
    side: str
    before: int
    used: int
    gives: int
    after: int
    events: tuple[Event, ...]
    span: Span
    structure: str
    words: str
    section: str


@dataclass
class Live:
    """A group of live stitches."""

    n: int
    rows: list[Row] = field(default_factory=list)
    next_right: bool = True
    rounds: bool = False
    outer: str = ""
    """The edge that becomes the side seam or armhole; '' where both do."""
    inner: str = ""
    """The edge at the neck or front opening; '' where there is none."""
    behind: int = 0
    """Stitches left unworked behind where the row starts, after a turn."""
    beyond: int = 0
    """Stitches left unworked at the end the next row goes towards, after the turn before."""
    across: int = 0
    """How many stitches a row of a heel goes across the turn before; 0 until that is told."""
    base: int = 0
    """The number of the row before its first."""
    offset: float = 0.0
    """Where its right edge lies, in stitches from the right edge of the piece it parted from."""
    ended: str = "open"
    marks: tuple[int, ...] = ()
    """Where markers hang, in stitches from the start of a right-side row or round."""
    name: str = ""

    @property
    def number(self) -> int:
        """Return the number of the row that was worked last."""
        return self.rows[-1].number if self.rows else self.base

    def start_edge(self) -> str:
        """Return the edge at which the next row begins."""
        return "right" if self.next_right or self.rounds else "left"

    def end_edge(self) -> str:
        """Return the edge at which the next row ends."""
        return "left" if self.start_edge() == "right" else "right"

    def add(self, used: int, gives: int, events: tuple[Event, ...], how: tuple[Span, str, str, str]) -> Row:
        """Work a row; `how` is its span, structure, words and section."""
        side = "round" if self.rounds else "right" if self.next_right else "wrong"
        after = max(0, self.n - used + gives)
        row = Row(self.number + 1, side, self.n, used, gives, after, events, how[0], how[1], how[2], how[3])
        self.rows.append(row)
        self.n = after
        if not self.rounds:
            self.next_right = not self.next_right
        return row
