"""A front taken apart into its two halves, as worn, and put together again: whole with a neck, or open all the way.

A *half* goes from the underarm up: at its *arm edge* what the armhole and the shoulder take, at its *neck edge* what
the neck takes. The left half as worn lies at the right edge of the fabric seen from its right side.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from lastlook.knit.compose.alter.shape.profile import signed, underarm_row
from lastlook.knit.compose.craft.needle import Needle
from lastlook.knit.worked import Ended, Shaping, Side, WorkedPiece, WorkedRow
from lastlook.piece import EdgeName

ARM = {"left": "right", "right": "left"}
"""The arm edge of a half as worn, seen from the right side of the fabric."""


@dataclass(frozen=True)
class HalfRow:
    """One row above the underarm."""

    structure: str
    side: Side
    arm: tuple[Shaping, ...] = ()
    neck: tuple[Shaping, ...] = ()


@dataclass(frozen=True)
class Half:
    """One half of a front, from the underarm up."""

    worn: str
    start: int
    rows: tuple[HalfRow, ...]
    ended: Ended

    @property
    def arm_takes(self) -> int:
        """Return what the armhole and the shoulder take."""
        return sum(signed(one) for row in self.rows for one in row.arm)

    @property
    def neck_takes(self) -> int:
        """Return what the neck takes."""
        return sum(signed(one) for row in self.rows for one in row.neck)

    @property
    def end(self) -> int:
        """Return the stitches that are left at the top."""
        return self.start - self.arm_takes - self.neck_takes


@dataclass(frozen=True)
class Front:
    """Both halves, and what lies below the underarm, by piece."""

    pieces: tuple[WorkedPiece, ...]
    """What it was taken from: one that divides and its sides, or left and right."""
    halves: tuple[Half, Half]
    """Left as worn, right as worn."""
    center: int
    """Stitches of a whole front that neither half takes."""

    @property
    def is_open(self) -> bool:
        """Whether it is a left and a right front."""
        return len(self.pieces) == 2


def front_of(pieces: Sequence[WorkedPiece]) -> Front | None:
    """Return the front of a garment that is set out; None where it is of another build."""
    named = {piece.name.lower(): piece for piece in pieces if piece.part_of is None}
    left, right, whole = (named.get(name) for name in ("left front", "right front", "front"))
    if left is not None and right is not None:
        return Front((left, right), (_half(left, "left"), _half(right, "right")), 0)
    if whole is None:
        return None
    sides = [piece for piece in pieces if piece.part_of == whole.name]
    if len(sides) != 2 or sides[0].rows[0].side is not sides[1].rows[0].side:
        return None
    turned = sides[0].rows[0].side is Side.WRONG
    ordered = sides[::-1] if turned else sides
    halves = (_joined(whole, ordered[0], "left"), _joined(whole, ordered[1], "right"))
    return Front((whole, *sides), halves, whole.end_stitches - sum(side.rows[0].before for side in sides))


def _half(piece: WorkedPiece, worn: str) -> Half:
    foot = underarm_row(piece)
    rows = tuple(_row(row, worn) for row in piece.rows[foot:])
    start = piece.rows[foot].before if foot < len(piece.rows) else piece.end_stitches
    return Half(worn, start, rows, piece.ended)


def _joined(whole: WorkedPiece, side: WorkedPiece, worn: str) -> Half:
    foot = underarm_row(whole)
    below = [replace(_row(row, worn), neck=()) for row in whole.rows[foot:]]
    half = [_row(row, worn) for row in side.rows]
    taken = sum(signed(one) for row in below for one in row.arm)
    return Half(worn, side.rows[0].before + taken, (*below, *half), side.ended)


def _row(row: WorkedRow, worn: str) -> HalfRow:
    arm = tuple(one for one in row.shapings if one.edge == ARM[worn])
    neck = tuple(one for one in row.shapings if one.edge == ARM[ARM[worn]])
    return HalfRow(row.structure, row.side, arm, neck)


def whole_front(like: WorkedPiece, halves: tuple[Half, Half], center: int) -> tuple[WorkedPiece, ...]:
    """Return a front that divides where its neck begins, and both sides; `like` lends name and lower part."""
    foot = underarm_row(like)
    divide = neck_row(halves[0], center)
    needle = Needle(halves[0].start + halves[1].start + center)
    below = like.rows[:foot]
    for left, right in zip(halves[0].rows[:divide], halves[1].rows[:divide], strict=True):
        needle.row(left.structure, (*left.arm, *right.arm))
    rows = tuple(replace(row, number=foot + number, side=left.side) for number, (row, left) in enumerate(
        zip(needle.rows, halves[0].rows, strict=False), 1))  # fmt: skip
    whole = replace(
        like, rows=(*below, *rows), end_stitches=needle.stitches, ended=Ended.OPEN, stated=(),
        edges=tuple(edge for edge in like.edges if "neck" not in edge.name.edge and "front edge" not in edge.name.edge),
        landmarks=tuple((name, row) for name, row in like.landmarks if row <= foot + divide),
    )  # fmt: skip
    names = (f"{like.name}, first side", f"{like.name}, second side")
    return (whole, *(_side(half, divide, like.name, name) for half, name in zip(halves, names, strict=True)))


def neck_row(half: Half, center: int) -> int:
    """Return the rows above the underarm before the neck begins: an even number, so that a right-side row divides."""
    first = next((spot for spot, row in enumerate(half.rows) if row.neck), len(half.rows))
    return first - first % 2 if first else 0


def _side(half: Half, divide: int, whole: str, name: str) -> WorkedPiece:
    before = half.start - sum(signed(one) for row in half.rows[:divide] for one in row.arm)
    rows = rows_of(half.rows[divide:], before)
    return WorkedPiece(name, whole, 1, None, rows, half.end, half.ended, (), (), ())


def rows_of(rows: Sequence[HalfRow], before: int) -> tuple[WorkedRow, ...]:
    """Return the rows of a half worked on so many stitches."""
    needle = Needle(before, rows[0].side if rows else Side.RIGHT)
    for row in rows:
        needle.row(row.structure, (*row.arm, *row.neck))
    return tuple(needle.rows)


def open_front(like: WorkedPiece, half: Half, name: str, below: Sequence[WorkedRow]) -> WorkedPiece:
    """Return one front of a cardigan: the rows below the underarm as given, its half above."""
    upper = rows_of(half.rows, half.start)
    rows = tuple(replace(row, number=number) for number, row in enumerate((*below, *upper), 1))
    cast_on = below[0].before if below else half.start
    marks = tuple((mark, row) for mark, row in like.landmarks if mark in ("underarm", "armhole", "raglan", "shoulder"))
    edges = tuple(
        replace(edge, name=EdgeName(name, edge.name.edge), mm=None)
        for edge in like.edges
        if edge.name.edge.startswith(f"{ARM[half.worn]} ")
    )
    return WorkedPiece(name, None, 1, cast_on, rows, half.end, half.ended, (), edges, marks)
