"""Another neck: round or V, as deep as is wanted, as wide as the leaflet's, so that shoulders and back stay as they
are.

A round neck takes up to half of its stitches at the center, then one at the neck edge in every row, then in every other
row; a V takes them one by one over its whole depth (proportions: common practice, no source).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lastlook.finding import Finding
from lastlook.knit.compose.alter.front.halves import ARM, Front, Half, HalfRow
from lastlook.knit.compose.composed import cant_hold
from lastlook.knit.compose.craft.needle import dec
from lastlook.knit.worked import Act, Shaping, Side

NECKS = ("round", "v")
ROUND_DEPTH_MM = 70.0
"""A crew neck lies 6 to 8 cm below the shoulder: common practice, no source."""
CENTER_SHARE = 0.45
STEEP_SHARE = 0.3


def necked(front: Front, style: str, depth_rows: int) -> Front | Finding:
    """Return the front with another neck, `depth_rows` deep from its top."""
    whole = sum(half.start for half in front.halves) + front.center
    stitches = whole - sum(half.arm_takes + half.end for half in front.halves)
    free = len(front.halves[0].rows) - underarm_rows(front.halves[0])
    depth = min(depth_rows, free) // 2 * 2
    center = _center(stitches, style)
    singles = (stitches - center) // 2
    takes = _takes(singles, depth, style)
    if takes is None:
        return cant_hold(
            f"A {'V' if style == 'v' else 'round'} neck of {stitches} stitches finds no room in {depth} rows.",
            f"{singles} stitches have to go at each neck edge, one in a row.",
            "Make the neck deeper.",
        )
    first = len(front.halves[0].rows) - depth
    left, right = (_half(one, takes, first, center // 2 if front.is_open else 0) for one in front.halves)
    if front.is_open:
        return replace(front, halves=(left, right))
    ends = [half.arm_takes + half.end + singles for half in front.halves]
    return replace(front, halves=(replace(left, start=ends[0]), replace(right, start=ends[1])), center=center)


def underarm_rows(half: Half) -> int:
    """Return the rows at the underarm that bind off, which no neck divides."""
    return 2 if any(one.act is Act.BIND_OFF for row in half.rows[:2] for one in row.arm) else 0


def _center(stitches: int, style: str) -> int:
    """Return what lies at the center, of the neck's own parity."""
    wanted = 0 if style == "v" else int(stitches * CENTER_SHARE)
    return wanted + (stitches - wanted) % 2


def _takes(singles: int, rows: int, style: str) -> tuple[int, ...] | None:
    """Return what a neck edge loses in each row from the first of the neck on; None where it finds no room."""
    free = rows // 2 - 1
    if style == "v" and singles <= free:
        spots = {2 + 2 * (number * free // singles) for number in range(singles)}
        return tuple(int(row in spots) for row in range(rows))
    least = round(singles * STEEP_SHARE) if style == "round" else 0
    for steep in range(min(least, singles), singles + 1):
        first = [0] + [1] * steep
        told = first + [0] * (len(first) % 2) + [1, 0] * (singles - steep)
        if len(told) <= rows:
            return tuple(told + [0] * (rows - len(told)))
    return None


def _half(half: Half, takes: Sequence[int], first: int, held: int) -> Half:
    """Return a half whose neck edge takes that from a row on, `held` of it bound off at once in an open front."""
    edge = ARM[ARM[half.worn]]
    rows = [replace(row, neck=()) for row in half.rows]
    spots = [spot for spot, count in enumerate(takes) if count]
    for spot in spots:
        rows[first + spot] = replace(rows[first + spot], neck=(dec(edge, inset=0),))
    if not held:
        return replace(half, rows=tuple(rows))
    at = first if _begins_at(rows[first], edge) else first + 1
    rows[at] = replace(rows[at], neck=(Shaping(Act.BIND_OFF, edge, held),))
    lost = sum(1 for spot in spots if first + spot == at)
    out = replace(half, rows=tuple(rows))
    return out if not lost else _again(out, edge, at, lost)


def _again(half: Half, edge: str, after: int, count: int) -> Half:
    """Return a half with decreases that gave way to a bind-off put into the next free rows."""
    rows = list(half.rows)
    for spot in range(after + 1, len(rows)):
        if count and not rows[spot].neck:
            rows[spot] = replace(rows[spot], neck=(dec(edge, inset=0),))
            count -= 1
    return replace(half, rows=tuple(rows))


def _begins_at(row: HalfRow, edge: str) -> bool:
    return edge == ("left" if row.side is Side.WRONG else "right")
