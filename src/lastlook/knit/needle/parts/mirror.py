"""Rows worked mirrored: edges change places, a binding off moves to the row that begins at its edge."""

from __future__ import annotations

from lastlook.finding import Span
from lastlook.knit.needle.live import Event, Live, Row
from lastlook.knit.needle.state import Hands

OTHER = {"left": "right", "right": "left"}


def mirror_rows(hands: Hands, source: Live, target: Live, span: Span) -> None:
    """Work the rows of a group mirrored: edges change places, a binding off moves to the row that begins there."""
    have = target.number
    moved: dict[int, list[Event]] = {}
    last: dict[str, int] = {}
    rows = [row for row in source.rows if row.number > have]
    for row in rows:
        for event in row.events:
            _move(row, event, moved, last, target)
    stop = max([row.number for row in rows] + list(moved), default=have)
    for number in range(have + 1, stop + 1):
        model = next((row for row in rows[number - have - 1 : number - have]), rows[-1] if rows else None)
        events = tuple(moved.get(number, ()))
        change = sum(event.n if event.act in ("inc", "cast on", "pick up") else -event.n for event in events)
        side = "round" if target.rounds else "right" if target.next_right else "wrong"
        before = target.n
        base = model.after - model.before if model else 0
        plain = base - sum(
            event.n if event.act in ("inc", "cast on", "pick up") else -event.n
            for event in (model.events if model else ())
        )
        after = max(0, before + change + plain)
        words = model.words if model else ""
        target.rows.append(
            Row(
                number,
                side,
                before,
                before,
                after,
                after,
                events,
                model.span if model else span,
                model.structure if model else "",
                words,
                model.section if model else "",
            )
        )
        target.n = after
        if not target.rounds:
            target.next_right = not target.next_right
    hands.world.rows_made += max(0, stop - have)


def _move(row: Row, event: Event, moved: dict[int, list[Event]], last: dict[str, int], target: Live) -> None:
    edge = OTHER.get(event.edge, event.edge)
    lean = OTHER.get(event.lean, event.lean)
    number = row.number
    if event.act in ("bind off", "cast on") and edge in ("left", "right") and not target.rounds:
        begins = {"right": "right", "wrong": "left"}.get(row.side, edge)
        if begins == event.edge:
            number += 1
    while number <= last.get(edge, -1):
        number += 2
    if edge in ("left", "right"):
        last[edge] = number
    moved.setdefault(number, []).append(Event(event.act, edge, event.n, event.inset, lean))
