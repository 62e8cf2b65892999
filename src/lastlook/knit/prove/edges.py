"""The named edges of a worked piece: how many rows, stitches and millimetres each has.

*Left* and *right* are seen from the right side. A raglan, armhole or cap is counted from the right-side row of the
pair of rows that binds off for the underarm to the last row before the final binding off.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from lastlook.knit.needle import Event, Hands, Live, Row
from lastlook.piece import Edge, EdgeName
from lastlook.quantity import Gauge, Missing

SIDES = ("left", "right")


@dataclass(frozen=True)
class Stretch:
    """What lies along one side of a piece."""

    side_rows: int
    underarm: int
    upper: str
    """'raglan', 'armhole', 'cap' or '' where nothing is shaped."""
    upper_rows: int
    upper_mm: float | None
    shoulder: int
    top: int


def group_at(hands: Hands, side: str) -> Live | None:
    """Return the group that has this side as its outer edge after the piece parted; None where it did not."""
    return next((live for live in hands.parts[1:] if live.outer == side and (live.rows or live.n)), None)


def rows_at(hands: Hands, side: str) -> list[Row]:
    """Return the rows along one side, from the first to the last."""
    group = group_at(hands, side)
    main = hands.parts[0].rows
    if group is None:
        return list(main)
    return [row for row in main if row.number <= group.base] + list(group.rows)


def stretch(hands: Hands, side: str, gauge: Gauge | None) -> Stretch:
    """Return what lies along one side."""
    rows = rows_at(hands, side)
    group = group_at(hands, side)
    start = hands.armhole_row
    low = hands.name.lower()
    if start is None:
        return _straight(hands, rows, side, group)
    after = [row for row in rows if row.number > start]
    events = [(row, event) for row in after for event in row.events if event.edge == side]
    under = sum(event.n for row, event in events if event.act == "bind off" and row.number <= start + 3)
    offs = [(row, event) for row, event in events if event.act == "bind off" and row.number > start + 3]
    extended = _extended(hands, group, offs)
    shoulder_offs = (extended or _top_offs(offs, after)) if "sleeve" not in low else []
    upper = _upper(hands, low, bool(shoulder_offs), events)
    first_off = min((row.number for row, _ in shoulder_offs), default=None)
    if first_off is not None:
        first_off -= 0 if (first_off - start) % 2 else 1
    last = (first_off - 1) if first_off is not None else (rows[-1].number if rows else start)
    ended = group.ended if group is not None else hands.parts[0].ended
    n = group.n if group is not None else hands.parts[0].n
    one_edge = group is not None or bool(hands.parts[0].inner)
    rest = n if one_edge and ended == "bound off" and upper == "armhole" and not extended else 0
    shoulder = sum(event.n for _, event in shoulder_offs) + rest
    top = n if group is None else 0
    until = [pair for pair in events if pair[0].number <= last]
    return Stretch(start, under, upper, last - start, _slant(until, start, last, gauge), shoulder, top)


def _straight(hands: Hands, rows: list[Row], side: str, group: Live | None) -> Stretch:
    offs = [(row, event) for row in rows for event in row.events if event.edge == side and event.act == "bind off"]
    top = _top_offs(offs, rows)
    first = min((row.number for row, _ in top), default=None)
    total = rows[-1].number if rows else 0
    if first is not None:
        total = first - 1 if first % 2 else first - 2
    shoulder = sum(event.n for _, event in top)
    inner = hands.parts[0].inner or (group is not None)
    live = group or hands.parts[0]
    if inner and live.ended == "bound off":
        shoulder += live.n
    return Stretch(total, 0, "", 0, None, shoulder, live.n)


def _top_offs(offs: list[tuple[Row, Event]], rows: list[Row]) -> list[tuple[Row, Event]]:
    """Return the bindings off that end this side: the last ones, no more than four rows from each other and the top."""
    top: list[tuple[Row, Event]] = []
    reach = rows[-1].number if rows else 0
    for row, event in reversed(offs):
        if reach - row.number > 4:
            break
        top.append((row, event))
        reach = row.number
    return top[::-1]


def _extended(hands: Hands, group: Live | None, offs: list[tuple[Row, Event]]) -> list[tuple[Row, Event]]:
    """Return the shoulder of a front whose border is knitted on behind the neck after it: a few stitches, many rows."""
    live = group or hands.parts[0]
    one_edge = group is not None or bool(live.inner)
    if not one_edge or not offs or not live.rows or live.n > 14 or offs[-1][1].n < 4:
        return []
    after = [row for row in live.rows if row.number > offs[-1][0].number]
    plain = not any(row.events for row in after)
    last = [row for row in live.rows if row.number <= offs[-1][0].number]
    return _top_offs(offs, last) if len(after) > 6 and plain else []


def _upper(hands: Hands, low: str, shoulders: bool, events: list[tuple[Row, Event]]) -> str:
    decs = [row.number for row, event in events if event.act == "dec"]
    if "raglan" in hands.sections and not shoulders:
        return "raglan"
    if "sleeve" in low:
        return "cap"
    if not shoulders and decs:
        last = max(row.number for live in hands.parts for row in live.rows)
        single = group_ends(hands)
        if last - max(decs) <= 4 and not single:
            return "raglan"
    return "armhole"


def group_ends(hands: Hands) -> bool:
    """Whether a side of the piece ends with a binding off of many stitches, as a shoulder does."""
    return any(live.ended == "bound off" and live.n > 4 for live in hands.parts[1:])


def _slant(events: list[tuple[Row, Event]], start: int, last: int, gauge: Gauge | None) -> float | None:
    """Return the length along the shaped edge: each shaping with the rows before it is a slope."""
    if gauge is None or isinstance(gauge.rows, Missing):
        return None
    per_stitch, per_row = 100 / gauge.stitches.best, 100 / gauge.rows.best
    total, at = 0.0, start
    for number, n in _by_row(events):
        gap = number - at
        total += (
            math.hypot(n * per_stitch, gap * per_row)
            if gap <= 4
            else math.hypot(n * per_stitch, 2 * per_row) + (gap - 2) * per_row
        )
        at = number
    return total + max(0, last - at) * per_row


def _by_row(events: list[tuple[Row, Event]]) -> list[tuple[int, int]]:
    rows: dict[int, int] = {}
    for row, event in events:
        rows[row.number] = rows.get(row.number, 0) + (event.n if event.act in ("dec", "bind off") else 0)
    return sorted((number, n) for number, n in rows.items() if n)


def edges_of(hands: Hands, gauge: Gauge | None) -> tuple[Edge, ...]:
    """Return the named edges of a piece."""
    if not hands.parts or hands.crochet:
        return ()
    out = [_edge(hands.name, "cast-on edge", stitches=hands.cast_on, gauge=gauge)]
    low = hands.name.lower()
    for side in SIDES:
        one = stretch(hands, side, gauge)
        main = hands.parts[0]
        if main.inner == side:
            out.append(_edge(hands.name, "front edge", rows=_front_rows(hands, side), gauge=gauge))
            continue
        out += _side(hands, side, one, gauge)
        if "sleeve" in low and not (hands.cast_on is None and hands.picked_up):
            out += _sleeve(side, one, gauge)
    out += _neck(hands, gauge)
    return tuple(out)


def _side(hands: Hands, side: str, one: Stretch, gauge: Gauge | None) -> list[Edge]:
    if hands.cast_on is None and hands.picked_up:
        # It went on from a holder: its sides and underarm lie in the piece before it.
        return [_edge(hands.name, f"{side} shoulder", stitches=one.shoulder, gauge=gauge)] if one.shoulder else []
    out = [_edge(hands.name, f"{side} side", rows=one.side_rows, gauge=gauge)]
    if one.underarm:
        out.append(_edge(hands.name, f"{side} underarm", stitches=one.underarm, gauge=gauge))
    if one.upper:
        out.append(_edge(hands.name, f"{side} {one.upper}", rows=one.upper_rows, mm=one.upper_mm, gauge=gauge))
    if one.shoulder:
        out.append(_edge(hands.name, f"{side} shoulder", stitches=one.shoulder, gauge=gauge))
    return out


def _sleeve(side: str, one: Stretch, gauge: Gauge | None) -> list[Edge]:
    """Name the sleeve's edges as they are worn: on the left sleeve the left edge lies to the front."""
    out = []
    for worn in ("Left sleeve", "Right sleeve"):
        to = "front" if (worn == "Left sleeve") == (side == "left") else "back"
        if one.underarm:
            out.append(_edge(worn, f"{to} underarm", stitches=one.underarm, gauge=gauge))
        if one.upper == "raglan":
            out.append(_edge(worn, f"{to} raglan", rows=one.upper_rows, mm=one.upper_mm, gauge=gauge))
    return out


def _front_rows(hands: Hands, side: str) -> int:
    """Rows up to the first shaping at the front edge."""
    for row in hands.parts[0].rows:
        if any(event.edge == side and event.act in ("bind off", "dec") for event in row.events):
            return row.number - 1
    return hands.parts[0].number


def _neck(hands: Hands, gauge: Gauge | None) -> list[Edge]:
    center = hands.kept.get("center")
    main = hands.parts[0]
    if len(hands.parts) == 1 and not main.inner and main.n and "front" not in hands.name.lower():
        name = "neck" if "back" in hands.name.lower() else "top"
        return [_edge(hands.name, name, stitches=main.n, gauge=gauge)]
    return [_edge(hands.name, "center neck", stitches=center, gauge=gauge)] if center else []


def _edge(
    piece: str,
    name: str,
    *,
    rows: int | None = None,
    stitches: int | None = None,
    mm: float | None = None,
    gauge: Gauge | None = None,
) -> Edge:
    if mm is None and gauge is not None:
        if rows is not None:
            length = gauge.length_mm(rows)
            mm = None if isinstance(length, Missing) else length.best
        elif stitches is not None:
            mm = gauge.width_mm(stitches).best
    return Edge(EdgeName(piece, name), rows, stitches, mm)
