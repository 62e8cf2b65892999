"""A needle that keeps count: rows are added one by one, and a worked piece comes off.

*Left* and *right* are those of the fabric from its right side, so a right-side row begins at the right edge.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from lastlook.finding import Span
from lastlook.knit.worked import Act, Ended, Shaping, Side, WorkedPiece, WorkedRow
from lastlook.piece import Edge

COMPOSED = Span(0, 0)
"""A composed row was worked from no words of a leaflet."""
GIVING = frozenset({Act.INCREASE, Act.CAST_ON, Act.PICK_UP})


class Needle:
    """The live stitches of one piece while it is composed."""

    def __init__(self, cast_on: int, first: Side = Side.RIGHT) -> None:
        self.cast_on = cast_on
        self.stitches = cast_on
        self.rows: list[WorkedRow] = []
        self.landmarks: list[tuple[str, int]] = []
        self._next = first

    @property
    def side(self) -> Side:
        """Return which side faces in the next row."""
        return self._next

    def row(self, structure: str, shapings: Sequence[Shaping] = ()) -> None:
        """Work one row."""
        change = sum(one.stitches if one.act in GIVING else -one.stitches for one in shapings)
        after = self.stitches + change
        if after < 0:
            raise ValueError(f"{self.stitches} stitches can't lose {-change}")
        self.rows.append(
            WorkedRow(
                len(self.rows) + 1,
                self._next,
                self.stitches,
                self.stitches,
                after,
                after,
                tuple(shapings),
                COMPOSED,
                structure,
                "",
            )
        )
        self.stitches = after
        if self._next is not Side.ROUND:
            self._next = Side.WRONG if self._next is Side.RIGHT else Side.RIGHT

    def even(self, structure: str, rows: int) -> None:
        """Work so many rows without shaping."""
        for _ in range(rows):
            self.row(structure)

    def joined(self) -> None:
        """Go on in rounds."""
        self._next = Side.ROUND

    def turned(self) -> None:
        """Go on in rows, the wrong side facing."""
        self._next = Side.WRONG

    def opened(self) -> None:
        """Go on in rows, the right side facing."""
        self._next = Side.RIGHT

    def mark(self, name: str) -> None:
        """Name the height reached."""
        self.landmarks.append((name, len(self.rows)))

    def off(self, name: str, ended: Ended, edges: Iterable[Edge] = (), make: int = 1) -> WorkedPiece:
        """Take the piece off."""
        return WorkedPiece(
            name,
            None,
            make,
            self.cast_on,
            tuple(self.rows),
            self.stitches,
            ended,
            (),
            tuple(edges),
            tuple(self.landmarks),
        )


def dec(edge: str, stitches: int = 1, inset: int = 2) -> Shaping:
    """Return a decrease at an edge that leans along it."""
    return Shaping(Act.DECREASE, edge, stitches, inset, "left" if edge == "right" else "right")


def inc(edge: str, stitches: int = 1) -> Shaping:
    """Return an increase at an edge."""
    return Shaping(Act.INCREASE, edge, stitches, 1)


def bind_off(edge: str, stitches: int) -> Shaping:
    """Return a bind-off at an edge."""
    return Shaping(Act.BIND_OFF, edge, stitches)


def begins(side: Side) -> str:
    """Return the edge at which a row of that side begins."""
    return "left" if side is Side.WRONG else "right"
