"""A piece worked as another: its rows taken over, up to a point or mirrored; sections of it worked again here."""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Span
from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.fabric import fabric_row, plain, rows_to
from lastlook.knit.needle.live import Event, Live, Row
from lastlook.knit.needle.parts.mirror import OTHER, mirror_rows
from lastlook.knit.needle.parts.twin import SYNONYMS, find_piece, landmark
from lastlook.knit.needle.state import Count, Hands, Recent
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step


def copy(hands: Hands, step: Step) -> None:
    """Take over the rows of another piece, or of a part of one."""
    if not isinstance(step, say.Copy):
        return
    source = find_piece(hands, step.piece)
    if step.section:
        _section(hands, step, source)
        return
    if source is None or not source.parts or source is hands:
        return
    hands.done(step)
    hands.copied = source.name.lower()
    if hands.parts and step.mirrored and not hands.live.rows and source.parts[0].rows:
        compare(hands, step.span, source.parts[0].rows[0].before, hands.live.n, "twin")
        hands.mirrored = True
        _state(hands, source)
        _mirrored_piece(hands, source, step.span)
        return
    if hands.parts:
        _go_on(hands, source, step)
        return
    hands.cast_on = source.cast_on
    hands.begin(source.cast_on or 0)
    hands.span = step.span
    _state(hands, source)
    if step.mirrored:
        hands.mirrored = True
        _mirrored_piece(hands, source, step.span)
        return
    stop = _stop(hands, source, step)
    _rows(hands, source.parts[0].rows[:stop], step.span)
    if step.goal.mm is not None and stop == _undivided(source):
        # The other piece parts before this length is reached: this one goes on whole.
        plain(hands, rows_to(hands, step.goal, step.ending, step.span), step.span)
    whole = stop >= len(source.parts[0].rows)
    if whole and step.goal == say.Goal() and not step.until_section:
        _parts(hands, source)
    _sections(hands, source, hands.live.number)


def _state(hands: Hands, source: Hands) -> None:
    hands.fabric, hands.fabric_run = source.fabric, source.fabric_run
    hands.cycle, hands.cycle_spans = source.cycle, source.cycle_spans
    hands.book, hands.recent = dict(source.book), list(source.recent)
    hands.cadences = dict(source.cadences)
    hands.lengths_unknown = source.lengths_unknown
    hands.dark += [span for span in source.dark if span not in hands.dark]
    hands.unread = hands.unread or source.unread
    hands.hidden = hands.hidden or source.hidden
    hands.parts_shaped = source.parts_shaped
    hands.live.rounds = source.parts[0].rounds


def _sections(hands: Hands, source: Hands, upto: int) -> None:
    for name, row in source.sections.items():
        if row <= upto:
            hands.sections[name] = row
    if source.armhole_row is not None and source.armhole_row <= upto:
        hands.armhole_row = source.armhole_row
    inside = [name for name, row in sorted(hands.sections.items(), key=lambda pair: pair[1])]
    hands.section = inside[-1] if inside else ""


def _rows(hands: Hands, rows: list[Row], span: Span) -> None:
    live = hands.live
    for row in rows:
        live.rows.append(
            Row(
                row.number,
                row.side,
                row.before,
                row.used,
                row.gives,
                row.after,
                row.events,
                row.span,
                row.structure,
                row.words,
                row.section,
            )
        )
    hands.world.rows_made += len(rows)
    if rows:
        live.n = rows[-1].after
        live.next_right = rows[-1].side != "right"


def _parts(hands: Hands, source: Hands) -> None:
    for one in source.parts[1:]:
        twin = replace(one, rows=list(one.rows), behind=0, beyond=0, name=hands.name)
        hands.parts.append(twin)
    hands.parts[0].ended = source.parts[0].ended
    hands.ended = source.ended
    hands.kept = dict(source.kept)
    hands.lives = [hands.parts[-1]]
    hands.live = hands.parts[-1]


def _stop(hands: Hands, source: Hands, step: say.Copy) -> int:
    """Return how many rows are taken over."""
    rows = source.parts[0].rows
    if step.until_section:
        place = landmark(source, step.until_section)
        return place if place is not None else len(rows)
    goal = step.goal
    if goal.until is not None:
        return _until(hands, source, step, hands.at(goal.until))
    if goal.mm is not None or goal.like or goal.rows is not None:
        return _to_length(hands, source, step)
    return len(rows)


def _until(hands: Hands, source: Hands, step: say.Copy, goal: int) -> int:
    rows = source.parts[0].rows
    first = source.armhole_row or 0
    spot = next((number for number, row in enumerate(rows) if row.number > first and row.after == goal), None)
    if spot is None:
        spot = next((number for number, row in enumerate(rows) if row.number > first and row.after < goal), None)
        hands.counts.append(
            Count(step.span, goal, rows[spot].after if spot is not None else source.parts[0].n, 0, "until")
        )
        hands.live.n = rows[spot].after if spot is not None else source.parts[0].n
        hands.trouble("goal-unreachable", step.span, hands.live.n, goal)
        return (spot + 1) if spot is not None else len(rows)
    hands.counts.append(Count(step.span, goal, goal, rows[spot].number, "until"))
    stop = spot + 1
    wanted = {"p": "wrong", "ws": "wrong", "k": "right", "rs": "right"}.get(step.ending.row)
    while wanted and stop < len(rows) and rows[stop - 1].side != wanted and rows[stop].after == goal:
        stop += 1
    return stop


def _undivided(source: Hands) -> int:
    """Return how many rows a piece has before it parts."""
    return len(source.parts[0].rows) - (1 if len(source.parts) > 1 else 0)


def _to_length(hands: Hands, source: Hands, step: say.Copy) -> int:
    """Work the length out on the source's own rows."""
    total = _undivided(source)
    hands.armhole_row = source.armhole_row
    rows = rows_to(hands, step.goal, step.ending, step.span)
    return max(0, min(rows, total))


def _go_on(hands: Hands, source: Hands, step: say.Copy) -> None:
    """'Finish as back': the rest of the other piece's rows, from the same height."""
    live = hands.live
    mirrored = step.mirrored
    rest = [row for row in source.parts[0].rows if row.number > live.number]
    change = live.n - next((row.before for row in rest[:1]), live.n)
    if change == 0 and not mirrored:
        _rows(hands, rest, step.span)
        hands.ended = source.ended
        live.ended = source.parts[0].ended


def _mirrored_piece(hands: Hands, source: Hands, span: Span) -> None:
    main = source.parts[0]
    twin = hands.parts[0]
    twin.outer, twin.inner = OTHER.get(main.outer, ""), OTHER.get(main.inner, "")
    hands.sections = dict(source.sections)
    if source.armhole_row is not None:
        hands.armhole_row = source.armhole_row
    mirror_rows(hands, main, twin, span)
    hands.ended = source.ended
    twin.ended, twin.n = main.ended, main.n
    hands.kept = dict(source.kept)
    for one in source.parts[1:]:
        other = Live(
            one.n + sum(_net(row) for row in one.rows),
            base=one.base,
            next_right=True,
            name=hands.name,
            outer=OTHER.get(one.outer, ""),
            inner=OTHER.get(one.inner, ""),
        )
        other.n = one.rows[0].before if one.rows else one.n
        hands.parts.append(other)
        mirror_rows(hands, one, other, span)
        other.ended = one.ended
    hands.lives = [hands.parts[-1]]
    hands.live = hands.parts[-1]
    hands.counts = [Count(one.span, one.stated, one.worked, one.row, one.what) for one in source.counts]
    hands.mirrored_counts = True


def _net(row: Row) -> int:
    return row.before - row.after


def _section(hands: Hands, step: say.Copy, source: Hands | None) -> None:
    """'Shape armhole as on back': the shapings of that part at this group's edge, row for row."""
    if source is None or not source.parts or not hands.parts:
        return
    hands.done(step)
    name = SYNONYMS.get(step.section, step.section)
    start = landmark(source, name)
    if start is None:
        return
    hands.open_section(name)
    rows = [row for row in source.parts[0].rows if row.number > start]
    later = [number for other, number in source.sections.items() if other != name and number > start + 1]
    if later:
        rows = [row for row in rows if row.number < min(later)]
    while rows and not rows[-1].events:
        rows.pop()
    live = hands.live
    for row in rows:
        events = []
        for event in row.events:
            edge = event.edge
            if live.outer and edge in ("left", "right") and edge != live.outer:
                continue
            events.append(Event(event.act, edge, event.n, event.inset, event.lean))
        if sum(event.n for event in events) > live.n:
            return
        if hands.armhole_row is None and events:
            hands.armhole_row = live.number
        fabric_row(hands, tuple(events), step.span)


def other_side(hands: Hands, step: Step) -> None:
    """The second side is the first one mirrored, from the row after those it has."""
    if not isinstance(step, say.OtherSide) or not hands.parts:
        return
    hands.done(step)
    if hands.held:
        new = hands.held.pop(0)
        hands.lives, hands.live = [new], new
    second = hands.live
    first = next((one for one in hands.parts[1:] if one is not second), None)
    if first is not None:
        mirror_rows(hands, first, second, step.span)
        second.ended = first.ended


def rows_of(hands: Hands, step: say.RepeatRows) -> list[Recent]:
    """Return the rows that 'the 2 raglan rows of back' means."""
    source = find_piece(hands, step.piece)
    if source is None or not hands.parts:
        return []
    return [entry for entry in source.recent if entry.run][-max(1, hands.at(step.last, 2)) :]
