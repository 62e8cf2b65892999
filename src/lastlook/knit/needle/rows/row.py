"""One row told stitch by stitch, laid over the stitches on the needle and entered."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook.finding import Span
from lastlook.knit.needle.parts import island
from lastlook.knit.needle.parts.divide import leave_rest, merge, part, split_rest
from lastlook.knit.needle.parts.edge import check_edge
from lastlook.knit.needle.parts.ending import finish
from lastlook.knit.needle.parts.heir import note_held
from lastlook.knit.needle.parts.holder import take
from lastlook.knit.needle.rows.ahead import (
    gather,
    keep_marks,
    marks_ahead,
    more_of,
    own_stitches,
    round_by_needle,
    short_row,
)
from lastlook.knit.needle.rows.proof import judge, show
from lastlook.knit.needle.sight import lose, regain
from lastlook.knit.needle.solve import Solved, fixed_uses, is_filling, solve
from lastlook.knit.needle.state import Hands, Recent
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Group, Item, RowOf, Run, Taken, Work

WIDEST_HOLE = 6
FARTHEST_HOLE = 14
"""A buttonhole takes no more, and lies no further from an edge or the next one (common practice, no source)."""
NEAR = 2
"""A row beside an island that is so many stitches out is told; more is rather words that were misread."""
AWAY = re.compile(r"\b(?:hold\w*|yarn|thread|spare|pin|back|front|sleeve)\b")


def row(hands: Hands, step: RowOf) -> None:
    """Work one row; a run without a label goes on with a row that is not full yet."""
    if step.label is None and hands.pending and step.run:
        hands.pending += step.run
        hands.done(step)
        begun = hands.pending_step
        attempt(hands, begun if begun is not None and begun.label else step, tuple(hands.pending))
        return
    close(hands)
    hands.row_begun = False
    if not hands.parts and not _starts(hands, step):
        return
    if island.goes_round(hands, step.run):
        island.rejoin(hands, step.run)
    elif island.is_own_row(hands, step.run):
        island.set_apart(hands)
    if step.needles:
        round_by_needle(hands, step, step.needles)
        _remember(hands, step, ())
        return
    if step.run and all(isinstance(item, say.Turn) for item in step.run):
        hands.done(step)
        return
    if step.label is not None and step.label.name == "buttonhole" and hands.fixed_rows:
        hands.shown = hands.live.n
        show(hands, step)
        hands.shown = 0
        return
    if hands.live.ended in ("bound off", "fastened off", "drawn up"):
        show(hands, step)
        return
    if step.run and _rest_waits(hands, step):
        step = replace(step, run=(*step.run, say.Turn()))
    if step.like:
        _by_reference(hands, step)
        return
    if not step.run:
        if step.label:
            hands.done(step)
            hands.row_begun = True
        return
    times = min(hands.at(step.label.rows, 1), 400) if step.label and step.label.rows else 1
    if step.label and step.label.side and not hands.live.rounds:
        _turn_to(hands, step)
    for _ in range(times):
        attempt(hands, step, step.run)


def _rest_waits(hands: Hands, step: RowOf) -> bool:
    """'K 16; place the remaining 36 sts on a holder': what follows says that the row ends here."""
    after = hands.following
    if (
        not isinstance(after, say.Hold)
        or after.which == "center"
        or any(isinstance(item, say.Turn | say.Held | say.BindOff) for item in step.run)
    ):
        return False
    if any(isinstance(item, Work | Group) and item.reach for item in step.run[-1:]):
        return False
    return 0 < fixed_uses(step.run, hands.world.size) < hands.live.n


def _starts(hands: Hands, step: RowOf) -> bool:
    """A piece may begin with stitches that are picked up or come from holders."""
    if any(isinstance(item, Taken) for item in step.run):
        hands.begin(0)
        hands.cast_on = 0
        return True
    uses = fixed_uses(step.run, hands.world.size)
    if step.label is None or uses <= 0 or any(is_filling(item) for item in step.run):
        return False
    # No cast-on is told: the row itself says how many stitches there are, and no more is known of them.
    hands.begin(uses)
    hands.dim.append(step.span)
    return True


def _turn_to(hands: Hands, step: RowOf) -> None:
    """A row that is said to be a right-side row is one, whatever was counted before."""
    wanted = step.label.side == "rs" if step.label else True
    if hands.live.rows or hands.live.base:
        if hands.live.next_right != wanted and step.label and 1 in step.label.numbers:
            hands.live.next_right = wanted
        return
    hands.live.next_right = wanted


def attempt(hands: Hands, step: RowOf, run: Run) -> None:
    if len(hands.lives) > 1 and any(isinstance(item, say.CastOnInRow) for item in run):
        merge(hands)
    if hands.cast_on != 0 and any(isinstance(item, Taken) for item in run) and not _holds(run):
        if not _fits_beside(hands, run):
            gather(hands, step, run)
            return
        run = island.plain(run)
    one = run[0] if len(run) == 1 else None
    if isinstance(one, say.BindOff) and one.n is not None and hands.at(one.n) >= hands.live.n > 0:
        finish(hands, say.Finish("bound off", one.n, span=step.span))
        hands.done(step)
        return
    live = hands.live
    ahead = live.n - live.behind
    if _is_last_stitch(hands, run, ahead):
        hands.done(step)
        return
    run = own_stitches(run, ahead, hands.world.size)
    solved = solve(run, ahead, hands.world.size, live.start_edge(), more_of(hands, run, step.span), marks_ahead(live))
    if solved.left < 0 and step.label is None:
        cut = _full_at(run, ahead, hands.world.size)
        if cut:
            attempt(hands, step, run[:cut])
            attempt(hands, step, run[cut:])
            return
    full = (
        solved.left <= 0
        or (solved.reached and not _goes_on(hands))
        or solved.turned
        or solved.parted
        or bool(solved.held)
    )
    if not full and (step.label is None or _goes_on(hands)) and hands.cast_on != 0:
        hands.pending, hands.pending_step = list(run), step
        hands.counted = solved.used if solved.used == solved.gives else 0
        if run == step.run:
            hands.pending = list(step.run)
        return
    hands.pending, hands.pending_step = [], None
    hands.done(step)
    commit(hands, step, run, solved)


def _goes_on(hands: Hands) -> bool:
    """Whether the next words go on with this row: they are stitches without a label of their own."""
    after = hands.following
    return isinstance(after, RowOf) and after.label is None and bool(after.run) and not after.like


def _rest_goes_on(hands: Hands, left: int) -> bool:
    """'K 22 and put them on a holder, bind off 22, begin the front on the remaining 22 sts'."""
    after = hands.following
    return isinstance(after, say.Resume) and after.n is not None and abs(hands.at(after.n) - left) <= NEAR


def _holds(run: Run) -> bool:
    return any(isinstance(item, say.Held) for item in run)


def _fits_beside(hands: Hands, run: Run) -> bool:
    """Whether a row that picks up beside live stitches uses just those that lie ahead of it."""
    ahead = hands.live.n - hands.live.behind
    picks = any(isinstance(item, Taken) and item.picked_up for item in run)
    if hands.held or not picks or not any(isinstance(item, Work | Group) or _is_at_hand(item) for item in run):
        return False
    uses = fixed_uses(island.plain(run), hands.world.size)
    if hands.live.behind > 0 and not hands.live.rows and abs(uses - ahead) <= NEAR:
        return True
    return uses == ahead or (hands.live.behind > 0 and uses <= ahead and any(is_filling(item) for item in run))


def _is_at_hand(item: Item) -> bool:
    """Whether stitches that are named by their place are on the needle already: 'the instep sts', 'on left needle'."""
    return isinstance(item, Taken) and not item.picked_up and not AWAY.search(item.source)


def _is_last_stitch(hands: Hands, run: Run, ahead: int) -> bool:
    """'K 2 tog and fasten off' over all that is left is the end of the piece, not a row of it."""
    ends = (
        isinstance(hands.following, say.Finish) and hands.following.how == "fastened off" and hands.following.n is None
    )
    one = run[0] if len(run) == 1 else None
    return ends and isinstance(one, Work) and one.n is not None and one.uses == ahead and one.gives == 1 and ahead > 1


def _full_at(run: Run, ahead: int, size: int) -> int:
    """Return after how many items an unlabelled run has used up the row exactly; 0 where it never does."""
    for spot in range(1, len(run)):
        if any(isinstance(item, Work) and item.reach for item in run[:spot]):
            return 0
        if fixed_uses(run[:spot], size) == ahead:
            return spot
    return 0


def close(hands: Hands) -> None:
    """End a row that was begun; what it leaves unworked is told where the row is labelled, and else set aside."""
    step, run = hands.pending_step, tuple(hands.pending)
    hands.pending, hands.pending_step = [], None
    if step is None or not run:
        return
    live = hands.live
    solved = solve(run, live.n - live.behind, hands.world.size, live.start_edge())
    if step.label is None and solved.used == solved.gives and (live.rounds or solved.used * 2 < live.n):
        hands.done(step)
        return
    if solved.used * 2 >= live.n > 0 or step.label is not None:
        commit(hands, step, run, solved)
        hands.done(step)
        return
    lose(hands, step.span)


def commit(hands: Hands, step: RowOf, run: Run, solved: Solved) -> None:
    """Enter a row that was laid over the stitches."""
    live = hands.live
    if solved.left > 0 and not solved.turned and _rest_goes_on(hands, solved.left):
        leave_rest(hands, solved, step.span)
    elif solved.turned and solved.left > 0:
        short_row(hands, step, solved)
    elif len(solved.parts) > 1 and not _is_hole(solved):
        judge(hands, step, solved)
        part(hands, solved, step.span)
    else:
        judge(hands, step, solved)
        if solved.left == 0 and not solved.reached:
            regain(hands, solved.used)
        used = min(solved.used, live.n)
        before = live.n
        hands.add(used, solved.gives, tuple(solved.events), step.span, words=hands.words_of(step.span))
        live.behind = live.beyond = 0
        keep_marks(live, solved)
        if solved.held and not solved.taken:
            hands.kept["held"] = hands.kept.get("held", 0) + sum(solved.held)
        if any(event.act == "bind off" for event in solved.events):
            _note_offs(hands, solved, before, step.span)
    hands.threads += solved.held
    if solved.held:
        note_held(hands, run, solved.held)
    for item, count in solved.taken:
        take(hands, item, count)
    if hands.cast_on == 0 and len(hands.live.rows) == 1:
        hands.picked_up = solved.gives
    _remember(hands, step, run)


def _is_hole(solved: Solved) -> bool:
    """A few stitches bound off within a row near its edge are a buttonhole: the row stays one."""
    inside = [event.n for event in solved.events if event.act == "bind off" and event.edge == "inside"]
    groups = sorted(solved.parts)
    if solved.parted or solved.turned or solved.held or not inside or max(inside) > WIDEST_HOLE:
        return False
    return all(0 < n <= FARTHEST_HOLE for n in groups[:-1]) and 2 * groups[-2] <= groups[-1]


def _note_offs(hands: Hands, solved: Solved, before: int, span: Span) -> None:
    for event in solved.events:
        if event.act == "bind off" and event.edge in ("left", "right"):
            check_edge(hands, event.edge, event.n, span)
            at_side = hands.live.outer in ("", event.edge) and hands.section not in ("neck", "shoulder")
            if hands.armhole_row is None and event.n >= 2 and at_side and before > 3 * event.n:
                hands.armhole_row = hands.live.number - 1 - (0 if hands.live.number % 2 else 1)


def _remember(hands: Hands, step: RowOf, run: Run) -> None:
    number = step.label.numbers[0] if step.label and step.label.numbers else 0
    entry = Recent(run, step.span, number, needles=step.needles)
    if number == 1:
        hands.book = {}
    if number:
        hands.book[number] = entry
    hands.recent.append(entry)
    del hands.recent[:-80]


def _by_reference(hands: Hands, step: RowOf) -> None:
    hands.done(step)
    for number in step.like:
        entry = hands.book.get(number)
        if entry is None:
            hands.trouble("row-not-there", step.span, 0, number)
            return
        again = RowOf(step.label, entry.run, span=step.span)
        if entry.run:
            attempt(hands, again, entry.run)


def set_aside(hands: Hands) -> None:
    """'K 15; leave the next 30 for the instep': what was begun only counts off the stitches."""
    if hands.pending_step is not None:
        hands.done(hands.pending_step)
    hands.pending, hands.pending_step = [], None


def hold_rest(hands: Hands, step: say.Hold) -> None:
    """'K 16; place remaining 36 sts on a holder and turn': a row that ends where the rest is put away."""
    run, begun = (*hands.pending, say.Turn()), hands.pending_step
    hands.pending, hands.pending_step = [], None
    if begun is None:
        return
    hands.done(begun)
    hands.done(step)
    attempt(hands, begun, run)
    split_rest(hands, hands.at(step.n) if step.n is not None else None, step.span)
