"""A pullover's front opened down the middle, and a cardigan's fronts joined into one.

A band of 3 cm lies over the opening, so each front is narrower than half the pullover's by half a band; a joined front
is as wide as the back. Armholes, shoulders and the depth of the neck stay as they are.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.knit.compose.alter.front.halves import ARM, Front, Half, open_front, whole_front
from lastlook.knit.compose.alter.front.neck import necked
from lastlook.knit.compose.alter.shape.profile import underarm_row
from lastlook.knit.compose.composed import cant_hold
from lastlook.knit.compose.craft.needle import Needle
from lastlook.knit.worked import Act, Ended, Shaping, WorkedPiece, WorkedRow
from lastlook.piece import EdgeName

OPENINGS = ("pullover", "cardigan")
BAND_MM = 30.0
"""A band for buttons of 15 to 20 mm: common practice, no source."""


@dataclass(frozen=True)
class Grid:
    """Stitches and rows in a mm."""

    across: float
    up: float

    def even(self, mm: float) -> int:
        """Return an even number of rows."""
        return 2 * max(1, round(mm * self.up / 2))


def opened(front: Front, style: str, depth_rows: int, grid: Grid) -> tuple[WorkedPiece, ...] | Finding:
    """Return left and right front of what was one, each half a band narrower at the middle."""
    whole = front.pieces[0]
    band = round(BAND_MM * grid.across)
    takes = front.halves[0].neck_takes * 2 + front.center
    less = (band + takes % 2) // 2 if (band + takes) % 2 else band // 2
    neck = takes // 2 - less
    if neck < 1:
        return cant_hold(
            f"The neck has {takes} stitches, no more than the bands take.",
            f"A band of {BAND_MM / 10:.0f} cm is {band} stitches wide.",
            "Keep it a pullover, or choose a wider neck first.",
        )
    width = (sum(one.start for one in front.halves) + front.center) // 2 - less
    given = [_with_neck(half, width, neck) for half in front.halves]
    open_now = Front((whole, whole), (given[0], given[1]), 0)
    changed = necked(open_now, style, depth_rows)
    if isinstance(changed, Finding):
        return changed
    below = whole.rows[: underarm_row(whole)]
    names = {"left": "Left front", "right": "Right front"}
    return tuple(
        open_front(whole, half, names[half.worn], _narrowed(below, half.worn, width)) for half in changed.halves
    )


def joined(front: Front, back: WorkedPiece, style: str, depth_rows: int) -> tuple[WorkedPiece, ...] | Finding:
    """Return one front of two, as wide as the back."""
    foot = underarm_row(back)
    wide = back.rows[foot].before if foot < len(back.rows) else back.end_stitches
    neck = wide - sum(half.arm_takes + half.end for half in front.halves)
    if neck < 2:
        return cant_hold(
            f"A front as wide as the back would have a neck of {neck} stitches.",
            "Its armholes and shoulders take all the rest.",
            "Keep it a cardigan.",
        )
    like = replace(
        back,
        name="Front",
        landmarks=tuple((name, row) for name, row in back.landmarks if name in ("underarm", "armhole", "raglan")),
        edges=tuple(replace(edge, name=EdgeName("Front", edge.name.edge), mm=None) for edge in back.edges),
    )
    center = neck % 2
    halves = [_with_neck(half, wide // 2 if not center else (wide - 1) // 2, neck // 2) for half in front.halves]
    changed = necked(Front((like, like, like), (halves[0], halves[1]), center), style, depth_rows)
    if isinstance(changed, Finding):
        return changed
    return whole_front(like, changed.halves, changed.center)


def band_pieces(fronts: Sequence[WorkedPiece], grid: Grid) -> tuple[WorkedPiece, ...]:
    """Return the bands that are picked up along both fronts."""
    out = []
    for piece in fronts:
        rows = next((spot for spot, row in enumerate(piece.rows) if _is_neck(row, piece)), len(piece.rows))
        count = 2 * round(rows / grid.up * grid.across / 2)
        needle = Needle(0)
        needle.row("rib 1x1", (Shaping(Act.PICK_UP, "inside", count),))
        needle.even("rib 1x1", grid.even(BAND_MM))
        band = needle.off(f"{piece.name} band", Ended.BOUND_OFF)
        out.append(replace(band, cast_on=None))
    return tuple(out)


def _is_neck(row: WorkedRow, piece: WorkedPiece) -> bool:
    worn = piece.name.lower().split()[0]
    return worn in ARM and any(one.edge == ARM[ARM[worn]] for one in row.shapings)


def _with_neck(half: Half, start: int, neck: int) -> Half:
    """Return a half of that many stitches whose neck takes `neck`, all at its first row: to be spread by a style."""
    edge = ARM[ARM[half.worn]]
    rows = [replace(row, neck=()) for row in half.rows]
    rows[-1] = replace(rows[-1], neck=(Shaping(Act.DECREASE, edge, neck),) if neck else ())
    return replace(half, start=start, rows=tuple(rows))


def _narrowed(below: Sequence[WorkedRow], worn: str, width: int) -> tuple[WorkedRow, ...]:
    """Return the lower part of one front: its side as it was, its front edge straight, what is spread halved."""
    arm, rows, after = ARM[worn], list(below), width
    out: list[WorkedRow] = []
    for row in reversed(rows):
        shapings = _of_half(row, arm)
        gains = sum(_gain(one) for one in shapings)
        before = after - gains
        out.append(replace(row, before=before, used=before, gives=after, after=after, shapings=shapings))
        after = before
    return tuple(reversed(out))


def _of_half(row: WorkedRow, arm: str) -> tuple[Shaping, ...]:
    out = []
    for one in row.shapings:
        if one.edge == arm:
            out.append(one)
        elif one.edge == "inside" and one.act in (Act.INCREASE, Act.DECREASE) and one.stitches > 1:
            out.append(replace(one, stitches=one.stitches // 2))
    return tuple(out)


def _gain(one: Shaping) -> int:
    return one.stitches if one.act is Act.INCREASE else -one.stitches
