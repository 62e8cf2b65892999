"""Casting on, structures, and working on to a length, a number of rows or the length of another piece."""

from __future__ import annotations

import math

from lastlook.finding import Span
from lastlook.knit.needle.counting import compare
from lastlook.knit.needle.live import Event
from lastlook.knit.needle.parts.divide import merge, split_rest
from lastlook.knit.needle.parts.edge import edges
from lastlook.knit.needle.parts.island import middle, set_apart
from lastlook.knit.needle.parts.twin import find_piece, landmark
from lastlook.knit.needle.solve import Solved, is_soft, solve
from lastlook.knit.needle.state import Hands, Recent
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Ending, Goal, Group, Step

ASSUMED_ROWS_PER_MM = 8 / 25.4
"""Only to have rows to go on with where no row gauge is known; the piece then says that its lengths are not known."""
MOST = 2000
MOST_AGAIN = 60
"""'Repeat the last … rows' never goes further back than so many plain rows."""


def cast_on(hands: Hands, step: Step) -> None:
    """Cast on at the start, or at the edges of rows."""
    if not isinstance(step, say.CastOn):
        return
    hands.done(step)
    n = hands.at(step.n)
    if not hands.parts:
        hands.cast_on = n
        hands.begin(n)
        hands.span = step.span
        return
    if step.until is not None:
        _until(hands, step, n)
        return
    if len(hands.lives) > 1:
        merge(hands)
    rows = hands.at(step.rows, 1)
    for _ in range(min(rows, 60)):
        edge = hands.live.start_edge() if step.edge in ("beg", "") else hands.live.end_edge()
        if not step.edge and not step.rows:
            edge = "inside"
        hands.add(
            hands.live.n, hands.live.n + n, (Event("cast on", edge, n),), step.span, words=hands.words_of(step.span)
        )


def _until(hands: Hands, step: say.CastOn, n: int) -> None:
    goal = hands.at(step.until)
    while hands.live.n < goal and n > 0 and hands.live.number < MOST:
        event = Event("cast on", hands.live.end_edge(), n)
        hands.add(hands.live.n, hands.live.n + n, (event,), step.span, words=hands.words_of(step.span))
    if hands.live.n != goal:
        hands.trouble("goal-unreachable", step.span, hands.live.n, goal)


def rounds(hands: Hands, step: Step) -> None:
    """From here on in rounds, or back in rows."""
    hands.done(step)
    for live in hands.lives:
        live.rounds = step.joined if isinstance(step, say.Rounds) else True


def structure(hands: Hands, step: Step) -> None:
    """Take up a structure."""
    if isinstance(step, say.Structure):
        hands.done(step)
        take_up(hands, step.name, step.run)


def take_up(hands: Hands, name: str, run: say.Run) -> None:
    """Set what plain rows are worked in; 'pattern' without a run is the leaflet's own pattern."""
    if not name:
        return
    if name == "pattern" and not run and hands.cycle:
        return
    hands.fabric, hands.fabric_run = name, run
    hands.cycle, hands.cycle_spans, hands.cycle_spot = [], [], 0
    if name == "pattern" and not run and hands.world.patterns:
        first = next(iter(hands.world.patterns))
        hands.cycle = hands.world.patterns[first]
        hands.cycle_spans = hands.world.pattern_spans[first]
        _multiple(hands)


def _multiple(hands: Hands) -> None:
    """Lay the pattern over the stitches once: its rows must use them up, and come back to as many."""
    laid = _laid(hands)
    if laid is not None:
        if laid[-1] != hands.live.n and not hands.blind:
            _drifts(hands, laid)
        return
    if hands.world.pattern_unsure:
        return
    for _, repeat, over in hands.world.multiples[:1]:
        spare = (hands.live.n - over) % repeat
        if spare and hands.live.n:
            hands.trouble("repeat-does-not-fit", hands.span, hands.live.n, hands.live.n - spare, f"{repeat}+{over}")


def _laid(hands: Hands) -> list[int] | None:
    """Return the stitches after each row of the pattern; None where its rows do not fit.

    One row that does not fit, while the others do, is told.
    """
    live, out, odd, fit = hands.live, [], [], 0
    n, start = live.n, live.start_edge()
    if hands.world.pattern_unsure:
        return None
    for spot, run in enumerate(hands.cycle):
        solved = solve(run, n, hands.world.size, start) if run else Solved()
        if run and (solved.left or solved.spare or len(solved.parts) > 1):
            odd.append((spot, solved, n))
        else:
            fit += any(isinstance(item, Group) for item in run)
            n += solved.gives - solved.used
        start = start if live.rounds else "left" if start == "right" else "right"
        out.append(n)
    if len(odd) == 1 and fit and len(odd[0][1].parts) < 2 and not is_soft(hands.cycle[odd[0][0]]):
        spot, solved, there = odd[0]
        kind = "repeat-does-not-fit" if solved.spare else "row-short" if solved.left > 0 else "row-long"
        worked = there - (solved.spare or solved.left)
        hands.trouble(kind, hands.cycle_spans[spot], worked, there, "pattern")
    return out if out and (not odd or fit) else None


def _drifts(hands: Hands, laid: list[int]) -> None:
    """The rows of a pattern do not come back to the count they began with."""
    before = [hands.live.n, *laid]
    odd = [spot for spot in range(len(laid)) if before[spot + 1] != before[spot]]
    where = hands.cycle_spans[odd[0] if len(odd) == 1 else odd[-1]]
    hands.trouble("pattern-drifts", where, laid[-1], hands.live.n)
    hands.cycle, hands.cycle_spans = [], []


def work_on(hands: Hands, step: Step) -> None:
    """Work on without shaping, up to the goal."""
    if not isinstance(step, say.WorkOn) or not hands.parts:
        return
    hands.done(step)
    goal = step.goal
    one = goal.rows is not None and hands.at(goal.rows) <= 4
    before = (hands.fabric, hands.fabric_run, hands.cycle, hands.cycle_spans, hands.cycle_spot)
    take_up(hands, step.structure, step.run)
    if step.on is not None:
        check_on(hands, step.on, step.span)
    rows = rows_to(hands, goal, step.ending, step.span)
    plain(hands, rows, step.span)
    if goal.rows is not None:
        hands.recent += [Recent((), step.span, structure=hands.fabric)] * min(rows, MOST_AGAIN)
    if one and step.structure in ("plain", "purl", "rib", ""):
        hands.fabric, hands.fabric_run, hands.cycle, hands.cycle_spans, hands.cycle_spot = before
        hands.cycle_spot += rows


def check_on(hands: Hands, figure: say.Figure, span: Span) -> None:
    """Compare 'work on 50 sts' with what there is."""
    between = middle(hands.live)
    if between and hands.at(figure) != hands.live.n:
        set_apart(hands)
    elif hands.live.behind and hands.at(figure) == hands.live.n - hands.live.behind:
        split_rest(hands, None, span)
    if hands.at(figure) > 2:
        compare(hands, span, hands.at(figure), hands.live.n, "on")


def rows_to(hands: Hands, goal: Goal, ending: Ending, span: Span) -> int:
    """Return how many rows lead to a goal from here."""
    live = hands.live
    if goal.rows is not None:
        return _with_ending(hands, min(hands.at(goal.rows), MOST), ending)
    if goal.like:
        return _as_long(hands, goal, ending)
    if goal.mm is None:
        return _with_ending(hands, 0, ending) if ending.row or ending.edge else 0
    per_mm = hands.world.rows_per_mm
    if per_mm is None:
        hands.lengths_unknown = True
        per_mm = ASSUMED_ROWS_PER_MM
    exact = goal.mm.at(hands.world.size) * per_mm
    start = _measured_from(hands, goal.place)
    wanted = start + exact - live.number
    rows = _nearest(hands, wanted, ending, start)
    if rows < 0 or (wanted < -1.5):
        if goal.optional or hands.lengths_unknown:
            return 0
        if live.number - start - exact > max(2.0, 0.02 * exact):
            hands.trouble("length-too-short", span, live.number - start, exact, goal.place)
        return 0
    return min(rows, MOST)


def _measured_from(hands: Hands, place: str) -> int:
    if place == "here":
        return hands.live.number
    if place in ("armhole", "underarm", "raglan"):
        return hands.armhole_row if hands.armhole_row is not None else hands.live.number
    if place == "rib":
        return hands.sections.get("after rib", hands.live.number)
    if place == "heel":
        return hands.sections.get("foot", hands.live.number) - 1 - 0
    if place == "marker" and hands.marker_row is not None:
        return hands.marker_row
    if place in ("neck", "shoulder", "bo", "division"):
        return hands.sections.get(place, hands.live.base + 1) - 1
    return 0


def _nearest(hands: Hands, wanted: float, ending: Ending, start: int) -> int:
    """Return the nearest number of rows after which the side is the one that is asked for; even by default."""
    live = hands.live
    if live.rounds:
        return math.floor(wanted + 0.5)
    right_next = _next_side(hands, ending)
    if right_next is None:
        right_next = True
        if hands.lives and live.next_right and start == live.number and not ending.row:
            right_next = live.next_right
    odd = 0 if right_next == live.next_right else 1
    return 2 * math.floor((wanted - odd) / 2 + 0.5) + odd


def _next_side(hands: Hands, ending: Ending) -> bool | None:
    """Return whether the next row is a right-side row after such an ending; None where it does not say."""
    if ending.row in ("p", "ws"):
        return True
    if ending.row in ("k", "rs"):
        return False
    if ending.edge:
        found = edges(hands, ending.edge)
        if len(found) == 1 and found[0] in ("left", "right"):
            return found[0] == "right"
    return None


def _with_ending(hands: Hands, rows: int, ending: Ending) -> int:
    side = _next_side(hands, ending)
    if side is None or hands.live.rounds:
        return rows
    lands = hands.live.next_right if rows % 2 == 0 else not hands.live.next_right
    return rows if lands == side else rows + 1


def _as_long(hands: Hands, goal: Goal, ending: Ending) -> int:
    """Return the rows that make this as long as another piece, or as the other side."""
    other = find_piece(hands, "back" if goal.like in ("?", "of back", "on back", "that of back") else goal.like)
    if other is None or not other.parts:
        return _with_ending(hands, 0, ending)
    place = goal.to or ("shoulder" if goal.place == "armhole" else "")
    mark = landmark(other, place)
    if mark is None:
        mark = other.parts[0].number
    mine = hands.live.number
    if goal.place == "armhole" and other.armhole_row is not None and hands.armhole_row is not None:
        mark, mine = mark - other.armhole_row, mine - hands.armhole_row
    hands.lengths_unknown = hands.lengths_unknown or other.lengths_unknown
    rows = _nearest(hands, mark - mine, ending, hands.live.number)
    if not ending.row and not ending.edge:
        rows = max(0, mark - mine)
    return max(0, min(rows, MOST))


def plain(hands: Hands, rows: int, span: Span) -> None:
    """Work so many rows without shaping in the structure that is in force."""
    for _ in range(min(rows, MOST)):
        fabric_row(hands, (), span)


def fabric_row(hands: Hands, events: tuple[Event, ...], span: Span) -> None:
    """Work one row of the structure in force, with whatever shapings fall on it."""
    live = hands.live
    used = gives = live.n
    words = ""
    if hands.cycle and not events:
        spot = hands.cycle_spot % len(hands.cycle)
        solved = solve(hands.cycle[spot], live.n, hands.world.size, live.start_edge())
        where = hands.cycle_spans[spot]
        words = hands.words_of(where)
        if _multiple_fits(hands) and solved.left and not hands.parts_shaped:
            _short_pattern_row(hands, where, solved.used)
            used = min(solved.used, live.n)
            gives = used
        elif solved.left == 0 and not solved.spare:
            used, gives = solved.used, solved.gives
    hands.cycle_spot += 1
    for event in events:
        if event.act in ("dec", "bind off", "hold"):
            gives -= event.n
        else:
            gives += event.n
    hands.add(used, max(0, gives), events, span, words=words)


def _multiple_fits(hands: Hands) -> bool:
    """Whether the count is one that the pattern is meant for, so that its rows must use it up."""
    if not hands.world.multiples:
        return False
    _, repeat, over = hands.world.multiples[0]
    return (hands.live.n - over) % repeat == 0


def _short_pattern_row(hands: Hands, where: Span, used: int) -> None:
    known = {(one.kind, one.span) for one in hands.troubles}
    if ("row-short", where) not in known and ("row-long", where) not in known:
        kind = "row-short" if used < hands.live.n else "row-long"
        hands.trouble(kind, where, used, hands.live.n, "pattern")
