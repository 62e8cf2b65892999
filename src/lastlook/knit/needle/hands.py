"""One piece in the making, in one size: the live stitches, what waits on holders, and every instruction carried out.

`World` is what the pieces share: the size, the gauge, pieces made before, holders, patterns.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace

from lastlook.finding import Span
from lastlook.knit.needle import counting, fabric, rows, shaping, sight
from lastlook.knit.needle.border import border_row
from lastlook.knit.needle.chooser import Chooser
from lastlook.knit.needle.live import Live
from lastlook.knit.needle.parts import copying, divide, edge, ending, fingers, heir, holder, island
from lastlook.knit.needle.solve import is_filling
from lastlook.knit.needle.state import Hands, World
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step

LEAST_PART = 6
"""A part that is worked by itself is no narrower, nor what it leaves."""
MOST_TOGETHER = 40
"""No more steps than these are one shaping with what runs at the same time."""
MOST_ROWS = 3000
"""No piece is longer; an instruction that would make it so is stopped and reported."""


@dataclass(frozen=True)
class Task:
    """A piece to be made: its name, how often, and its steps."""

    name: str
    make: int
    steps: tuple[Step, ...]
    crochet: bool = False
    span: Span = field(default_factory=lambda: Span(0, 0))


Doer = Callable[[Hands, "Step"], None]


def work_piece(task: Task, world: World, chooser: Chooser) -> Hands:
    """Work a piece in the world's size and return the hands that made it."""
    hands = Hands(task.name, task.make, world, chooser)
    hands.crochet = task.crochet
    edge.place_edges(hands)
    steps = rows.in_order(task.steps)
    heir.inherit(hands, steps)
    after = _following(steps)
    clouds = sight.clouded(steps, world.words)
    spot = 0
    while spot < len(steps):
        hands.clouded = clouds[spot]
        taken = _parallel(hands, steps, spot)
        if taken == 0:
            do(hands, steps[spot], after[spot])
            taken = 1
        spot += taken
    rows.close(hands)
    ending.settle(hands)
    return hands


def _following(steps: list[Step]) -> list[Step | None]:
    """Return, for each step, the next one that instructs something."""
    out: list[Step | None] = [None] * len(steps)
    for spot in range(len(steps) - 2, -1, -1):
        after = steps[spot + 1]
        out[spot] = out[spot + 1] if isinstance(after, say.Nothing) else after
    return out


def _parallel(hands: Hands, steps: list[Step], spot: int) -> int:
    """Carry out shapings that run at the same time together; return how many steps that took."""
    first = steps[spot]
    if not isinstance(first, say.Shape):
        return 0
    group, used = [first], 1
    for step in steps[spot + 1 : spot + MOST_TOGETHER]:
        if isinstance(step, say.Shape) and step.same_time:
            group.append(step)
        elif not isinstance(step, say.Nothing | say.Section):
            break
        used += 1
    while used > 1 and not isinstance(steps[spot + used - 1], say.Shape):
        used -= 1
    rows.close(hands)
    for live in list(hands.lives):
        hands.live = live
        shaping.shape_together(hands, group)
    for step in group:
        hands.done(step)
    return used


def do(hands: Hands, step: Step, after: Step | None = None) -> None:
    """Carry out one step on every group that is being worked."""
    hands.following = after
    if fingers.is_head(hands, step):
        fingers.begin(hands, step)
        return
    if hands.fingers is not None and fingers.gather(hands, step):
        return
    if isinstance(step, say.Unread):
        sight.lose(hands, step.span)
    if isinstance(step, say.RowOf):
        (border_row if hands.crochet else rows.row)(hands, step)
        return
    if isinstance(step, say.WorkOn) and any(isinstance(item, ONCE) for item in step.run):
        # "K 30, bind off 40, k 30, and work so for 1 inch": the row is worked once, then plainly on.
        rows.row(hands, say.RowOf(None, step.run, span=step.span))
        step = replace(step, structure="", run=())
    if isinstance(step, say.Hold) and hands.pending:
        if step.which != "instep":
            rows.hold_rest(hands, step)
            return
        rows.set_aside(hands)
    if not isinstance(step, say.Nothing | say.Unread):
        rows.close(hands)
    if (
        isinstance(step, say.WorkOn | say.Shape | say.Printed | say.BindOffs)
        and hands.flanks
        and hands.live.ended != "open"
    ):
        island.rejoin(hands)
    if isinstance(step, say.WorkOn) and step.goal.until is not None and hands.parts and rows.is_turning(hands):
        hands.done(step)
        rows.turn_on(hands, step.span, step.goal, step.ending)
        return
    if isinstance(step, say.Shape | say.WorkOn | say.BindOffs) and _works_on_part(hands, step):
        divide.split_rest(hands, None, step.span)
    if isinstance(step, AFTERWARDS) and sight.is_bound_off(hands):
        hands.done(step)
        return
    doer = DOERS.get(type(step))
    if doer is None or hands.world.rows_made > 40_000:
        return
    if type(step) in EACH_GROUP and hands.lives:
        for live in list(hands.lives):
            hands.live = live
            doer(hands, step)
        return
    doer(hands, step)


def _works_on_part(hands: Hands, step: Step) -> bool:
    """'Work across 38 sts, turn', and then many rows: the part that was turned is worked by itself."""
    live = hands.live
    entry = hands.recent[-1] if hands.recent else None
    if live.behind < LEAST_PART or live.beyond or entry is None or live.n - live.behind < LEAST_PART:
        return False
    if not any(isinstance(item, say.Turn) for item in entry.run) or any(is_filling(item) for item in entry.run):
        return False
    return not (isinstance(step, say.WorkOn) and step.goal.rows is not None and hands.at(step.goal.rows) < 2)


def _nothing(hands: Hands, step: Step) -> None:
    hands.done(step)
    if hands.live.rounds:
        counting.count_off(hands, hands.words_of(step.span))
    if isinstance(step, say.Nothing) and step.why in sight.PROSE:
        sight.doubt(hands, step.span)


def _section(hands: Hands, step: Step) -> None:
    if isinstance(step, say.Section):
        hands.open_section(step.name)
        hands.done(step)


DOERS: dict[type[Step], Doer] = {
    say.CastOn: fabric.cast_on, say.WorkOn: fabric.work_on, say.Structure: fabric.structure,
    say.BindOffs: shaping.bind_offs, say.Finish: ending.finish, say.RepeatRows: rows.repeat,
    say.Printed: counting.printed, say.Hold: holder.hold, say.Resume: holder.resume, say.Copy: copying.copy,
    say.OtherSide: copying.other_side, say.Section: _section, say.Needles: counting.needles,
    say.Progress: rows.progress, say.Buttonholes: counting.buttonholes, say.Marker: counting.marker,
    say.Rounds: fabric.rounds, say.Apart: divide.apart, say.Nothing: _nothing,
}  # fmt: skip
ONCE = (say.BindOff, say.Held, say.CastOnInRow, say.Turn)
AFTERWARDS = (say.CastOn, say.Shape, say.BindOffs, say.Structure)
"""What is told after a piece was bound off shows how a part of it is worked: a buttonhole, a border."""
EACH_GROUP = frozenset({say.WorkOn, say.BindOffs, say.Finish, say.RepeatRows, say.Progress})

__all__ = ["Hands", "Live", "Task", "World", "do", "work_piece"]
