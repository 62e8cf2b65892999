"""A size of a leaflet with another neck, or opened or closed in front: the rest of it as it is printed."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from lastlook.finding import Certainty, Finding
from lastlook.knit.compose.alter.front.halves import ARM, Front, Half, front_of, open_front, whole_front
from lastlook.knit.compose.alter.front.neck import ROUND_DEPTH_MM, necked
from lastlook.knit.compose.alter.front.opening import Grid, band_pieces, joined, opened
from lastlook.knit.compose.alter.shape.band import is_picked_up
from lastlook.knit.compose.alter.shape.divided import set_out
from lastlook.knit.compose.alter.shape.profile import signed, underarm_row
from lastlook.knit.reading import SizeReading
from lastlook.knit.worked import Shaping, WorkedPiece
from lastlook.quantity import Gauge, Spread

BEYOND = 12
"""Rows after the last shaping at the arm's edge that are no shoulder any more."""


@dataclass(frozen=True)
class Style:
    """What the front is to be; None leaves it as it is."""

    neck: str | None = None
    """'round' or 'v'."""
    neck_depth_mm: float | None = None
    opening: str | None = None
    """'pullover' or 'cardigan'."""

    @property
    def is_nothing(self) -> bool:
        """Whether nothing is asked."""
        return self.neck is None and self.neck_depth_mm is None and self.opening is None


def restyled(size: SizeReading, style: Style, gauge: Gauge | None) -> SizeReading | Finding:
    """Return the size with its front made another; a finding where it can't be."""
    if style.is_nothing:
        return size
    bands = [piece for piece in size.pieces if is_picked_up(piece)]
    pieces = set_out([piece for piece in size.pieces if piece not in bands])
    front = front_of(pieces)
    back = next((piece for piece in pieces if piece.name.lower() == "back"), None)
    if front is None or back is None or gauge is None or not isinstance(gauge.rows, Spread):
        return _no_front(size)
    if any(_goes_on(half) for half in front.halves):
        return _no_front(size)
    grid = Grid(gauge.stitches.best / 100.0, gauge.rows.best / 100.0)
    neck = style.neck or _neck_of(front)
    depth = _depth(front, neck, style, grid)
    made = _made(front, back, (neck, depth), style, grid)
    if isinstance(made, Finding):
        return made
    old = {id(piece) for piece in front.pieces}
    longer = _neck_mm(made, grid) - _neck_mm(front.pieces, grid)
    rest = [piece for piece in pieces if id(piece) not in old]
    spot = rest.index(back) + 1
    around = _bands(bands, style, front, longer, grid)
    extra = band_pieces(made, grid) if style.opening == "cardigan" and not front.is_open else ()
    return replace(size, pieces=(*rest[:spot], *made, *rest[spot:], *around, *extra))


def _goes_on(half: Half) -> bool:
    """Whether a front goes on beyond its shoulder, as a band round the back of the neck."""
    last = max((spot for spot, row in enumerate(half.rows) if row.arm), default=0)
    return len(half.rows) - last > BEYOND and bool(half.arm_takes)


def _made(
    front: Front, back: WorkedPiece, neck: tuple[str, int], style: Style, grid: Grid
) -> tuple[WorkedPiece, ...] | Finding:
    kind, depth = neck
    if style.opening == "cardigan" and not front.is_open:
        return opened(front, kind, depth, grid)
    if style.opening == "pullover" and front.is_open:
        return joined(front, back, kind, depth)
    changed = necked(front, kind, depth)
    if isinstance(changed, Finding):
        return changed
    if not front.is_open:
        return whole_front(front.pieces[0], changed.halves, changed.center)
    return tuple(
        open_front(piece, half, piece.name, piece.rows[: underarm_row(piece)])
        for piece, half in zip(front.pieces, changed.halves, strict=True)
    )


def _neck_of(front: Front) -> str:
    """Return the neck that a front has: a V takes few stitches at once."""
    half = front.halves[0]
    at_once = front.center / 2 + max((one.stitches for row in half.rows for one in row.neck), default=0)
    return "v" if at_once <= 3 else "round"


def _depth(front: Front, neck: str, style: Style, grid: Grid) -> int:
    """Return the depth in rows: as asked, else as it was where the neck is of the same kind, else the usual."""
    half = front.halves[0]
    if style.neck_depth_mm is not None:
        return grid.even(style.neck_depth_mm)
    first = next((spot for spot, row in enumerate(half.rows) if row.neck), len(half.rows))
    if neck == _neck_of(front):
        return len(half.rows) - first
    return grid.even(ROUND_DEPTH_MM) if neck == "round" else len(half.rows)


def _neck_mm(pieces: Sequence[WorkedPiece], grid: Grid) -> float:
    """Return the length of the neck's edge along the fronts."""
    sides = [piece for piece in pieces if piece.part_of is not None]
    if sides:
        center = pieces[0].end_stitches - sum(side.rows[0].before for side in sides)
        along = (_edge_mm(side, edge, grid) for side, edge in zip(sides, ("left", "right"), strict=True))
        return center / grid.across + sum(along)
    halves = [(piece, ARM[ARM[piece.name.lower().split()[0]]]) for piece in pieces]
    return sum(_edge_mm(piece, edge, grid) for piece, edge in halves)


def _edge_mm(piece: WorkedPiece, edge: str, grid: Grid) -> float:
    first = next((spot for spot, row in enumerate(piece.rows) if _at(row.shapings, edge)), len(piece.rows))
    return sum(
        math.hypot(sum(signed(one) for one in _at(row.shapings, edge)) / grid.across, 1 / grid.up)
        for row in piece.rows[first:]
    )


def _at(shapings: tuple[Shaping, ...], edge: str) -> list[Shaping]:
    return [one for one in shapings if one.edge == edge]


def _bands(bands: Sequence[WorkedPiece], style: Style, front: Front, longer_mm: float, grid: Grid) -> list[WorkedPiece]:
    """Return the bands: the neck's picked up over its new length, those of a front that was closed left away."""
    closed = style.opening == "pullover" and front.is_open
    kept = [piece for piece in bands if not (closed and "front" in piece.name.lower())]
    return [_picked(piece, longer_mm, grid) if "neck" in piece.name.lower() else piece for piece in kept]


def _picked(piece: WorkedPiece, longer_mm: float, grid: Grid) -> WorkedPiece:
    count = max(2, 2 * round((piece.rows[0].after + longer_mm * grid.across) / 2))
    change = count - piece.rows[0].after
    first = replace(piece.rows[0].shapings[0], stitches=count)
    rows = [replace(piece.rows[0], shapings=(first,), gives=count, after=count)]
    for row in piece.rows[1:]:
        moved = {name: getattr(row, name) + change for name in ("before", "used", "gives", "after")}
        rows.append(replace(row, **moved))
    return replace(piece, rows=tuple(rows), end_stitches=piece.end_stitches + change)


def _no_front(size: SizeReading) -> Finding:
    names = ", ".join(piece.name for piece in size.pieces if piece.part_of is None)
    return Finding(
        "front-not-found",
        Certainty.PROVEN,
        "The front can't be given another neck or opening.",
        f"That takes a back, and one front that divides or a left and a right one; there are: {names}.",
        "Have the garment composed from measures with `lastlook design`.",
    )
