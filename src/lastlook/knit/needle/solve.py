"""A run of stitches laid over the stitches on the needle: what it uses, gives, shapes, parts and leaves.

Rules: every item uses and gives a fixed number; what reaches 'to the end' or 'to the last n' fills up; a star repeat
is worked as often as it fits. The stitch that binding off leaves on the right needle is not one of those that follow,
unless only that fits.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from lastlook.knit.needle.live import Event
from lastlook.leaflet.instruction import BindOff, CastOnInRow, Group, Held, Item, Parted, Run, Taken, Turn, Work


@dataclass
class Solved:
    """What a run comes to on so many stitches."""

    used: int = 0
    gives: int = 0
    events: list[Event] = field(default_factory=list)
    parts: list[int] = field(default_factory=list)
    """Stitches in each group after the row, more than one where it parts."""
    held: list[int] = field(default_factory=list)
    taken: list[tuple[Taken, int]] = field(default_factory=list)
    turned: bool = False
    parted: bool = False
    left: int = 0
    """Stitches of the row that the run does not use; below 0 where it uses more than there are."""
    spare: int = 0
    """Stitches over where a repeat does not fit a whole number of times."""
    repeat: int = 0
    reached: bool = False
    whole: bool = False
    mid_offs: int = 0
    marks: list[int] = field(default_factory=list)
    """Where markers hang after the row, in stitches from its start."""


@dataclass
class _Way:
    """Where the reading of a run stands."""

    size: int
    n: int
    start: str
    end: str
    more: int
    out: Solved = field(default_factory=Solved)
    here: int = 0
    """Stitches given in the group that is being made."""
    slipped: int = 0
    marks: tuple[int, ...] = ()


def solve(run: Run, n: int, size: int, start: str, unclear_more: int = 1, marks: tuple[int, ...] = ()) -> Solved:
    """Lay a run over n stitches; `start` is the edge it begins at, `unclear_more` is 1 where 'n times' means n more."""
    way = _Way(size, n, start, "left" if start == "right" else "right", unclear_more)
    way.marks = marks
    _walk(run, way)
    out = way.out
    out.parts.append(way.here)
    out.left = n - out.used
    if out.mid_offs and 0 < out.left <= out.mid_offs and not out.reached:
        for number in range(out.left):
            out.parts[-1 - number] += 1
        out.used += out.left
        out.gives += out.left
        out.left = 0
    return out


def fixed_uses(run: Run, size: int, more: int = 1) -> int:
    """Return how many stitches a run uses without what fills up."""
    total = 0
    for item in run:
        if isinstance(item, Work):
            total += item.n.whole(size) * item.uses if item.n is not None else 0
        elif isinstance(item, Group):
            if item.one_stitch:
                total += 1
            elif item.times is not None:
                total += fixed_uses(item.items, size, more) * _times(item, size, more) + fixed_uses(
                    item.tail, size, more
                )
        elif isinstance(item, BindOff | Held) and item.n is not None:
            total += item.n.whole(size)
    return total


def fixed_gives(run: Run, size: int, more: int = 1) -> int:
    """Return how many stitches a run gives without what fills up."""
    total = 0
    for item in run:
        if isinstance(item, Work):
            total += item.n.whole(size) * item.gives if item.n is not None else 0
        elif isinstance(item, Group):
            if item.times is not None:
                total += fixed_gives(item.items, size, more) * _times(item, size, more) + fixed_gives(
                    item.tail, size, more
                )
        elif isinstance(item, CastOnInRow | Taken) and item.n is not None:
            total += item.n.whole(size)
    return total


def _times(group: Group, size: int, more: int) -> int:
    times = group.times.whole(size) if group.times else 0
    if group.count == "more" or (group.count == "unclear" and more):
        times += 1
    return min(times, 5000)


def is_filling(item: Item) -> bool:
    """Whether an item uses as many stitches as there are."""
    return (isinstance(item, Work) and bool(item.reach)) or (isinstance(item, Group) and item.times is None)


def is_soft(run: Run) -> bool:
    """A plain rib on a count that does not divide is let pass in print; any other repeat must fit."""
    for one in run:
        if isinstance(one, Group):
            plain = all(isinstance(item, Work) and item.name in ("k", "p") and item.n is not None for item in one.items)
            small = all(isinstance(item, Work) and item.n is not None and item.n.values[0] <= 4 for item in one.items)
            if len(one.items) != 2 or not plain or not small:
                return False
        elif not (isinstance(one, Work) and one.uses == one.gives):
            return False
    return True


def _after(run: Run, spot: int, size: int, more: int) -> int:
    """Return the fixed uses of what follows an item, up to the next that fills up."""
    rest = []
    for item in run[spot + 1 :]:
        if is_filling(item) or isinstance(item, Turn):
            break
        rest.append(item)
    return fixed_uses(tuple(rest), size, more)


def _walk(run: Run, way: _Way) -> None:
    for spot, item in enumerate(run):
        if isinstance(item, Work):
            _work(item, run, spot, way)
        elif isinstance(item, Group):
            _group(item, run, spot, way)
        else:
            _other(item, run, spot, way)


def _work(item: Work, run: Run, spot: int, way: _Way) -> None:
    if item.reach:
        rest = item.rest.whole(way.size) if item.rest else 0
        if item.reach.startswith("marker"):
            if way.marks:
                _to_marker(way, rest)
                return
            rest = _after(run, spot, way.size, way.more)
            count = max(0, way.n - way.out.used - rest)
            way.out.used += count
            way.out.gives += count
            way.here += count
            way.out.reached = True
            return
        if item.reach in ("end", "all"):
            rest = _after(run, spot, way.size, way.more)
        count = max(0, way.n - way.out.used - rest)
        way.out.used += count
        way.out.gives += count
        way.here += count
        way.out.reached = True
        way.out.whole = way.out.whole or item.reach == "all"
        return
    if item.name == "marker":
        way.out.marks.append(way.out.gives)
        return
    count = item.n.whole(way.size) if item.n else 1
    used, gives = count * item.uses, count * item.gives
    if item.gives != item.uses or item.name in ("psso", "p2sso"):
        _shape(item, used, gives, way)
    way.out.used += used
    way.out.gives += gives
    way.here += gives


def _to_marker(way: _Way, rest: int) -> None:
    """Work up to so many stitches before the next marker; the end of the row is the last one."""
    ahead = [mark for mark in (*way.marks, way.n) if mark - rest >= way.out.used and mark > way.out.used]
    count = max(0, (ahead[0] if ahead else way.n) - rest - way.out.used)
    way.out.used += count
    way.out.gives += count
    way.here += count
    way.out.reached = True


def _shape(item: Work, used: int, gives: int, way: _Way) -> None:
    net = gives - used
    edge, inset = _edge(way, used)
    events = way.out.events
    if item.name == "psso" and events and events[-1].act == "dec" and events[-1].lean == "right" and way.slipped:
        events[-1].n += 1
        events[-1].lean = "left"
        return
    act = "inc" if net > 0 else "dec"
    lean = item.lean
    events.append(
        Event(act, edge, abs(net), max(0, inset - (2 if item.name == "psso" and edge == way.start else 0)), lean)
    )


def _edge(way: _Way, used: int) -> tuple[str, int]:
    """Say at which edge a place of the row lies, and how many stitches from it."""
    before = way.out.used
    after = max(0, way.n - before - used)
    if way.out.reached and after <= max(12, way.n // 3):
        return way.end, after
    if before <= min(12, way.n // 3):
        return way.start, before
    if after <= min(12, way.n // 3):
        return way.end, after
    return "inside", before


def _group(item: Group, run: Run, spot: int, way: _Way) -> None:
    if item.times is not None:
        _repeated(item, _times(item, way.size, way.more), way)
        _walk(item.tail, way)
        return
    uses = fixed_uses(item.items, way.size, way.more)
    rest = item.rest.whole(way.size) if item.rest else _after(run, spot, way.size, way.more)
    room = way.n - way.out.used - rest
    way.out.reached = True
    if uses <= 0:
        _repeated(item, 1, way)
        return
    tail = fixed_uses(item.tail, way.size, way.more)
    if item.tail:
        _tailed(item, room, uses, tail, way)
        return
    whole, spare = divmod(max(0, room), uses)
    way.out.spare, way.out.repeat = spare, uses
    _repeated(item, whole, way)
    if spare and item.rest is None:
        _part_repeat(item, spare, way)


def _tailed(item: Group, room: int, uses: int, tail: int, way: _Way) -> None:
    """End the repeats: the tail follows whole repeats, or stands for the end of the last one."""
    head = _head(item)
    replaced = fixed_uses(head, way.size, way.more) + tail
    fits_after = (room - tail) % uses == 0
    fits_last = (room - replaced) % uses == 0
    last = item.tail_replaces == "last" or (not fits_after and fits_last)
    if last:
        whole = max(0, (room - replaced) // uses)
        way.out.spare, way.out.repeat = max(0, room - replaced) % uses, uses
        _repeated(item, whole, way)
        _walk(head, way)
    else:
        whole = max(0, (room - tail) // uses)
        way.out.spare, way.out.repeat = max(0, room - tail) % uses, uses
        _repeated(item, whole, way)
    _walk(item.tail, way)


def _head(item: Group) -> Run:
    """Return the part of the repeat before the stitch that its printed end takes the place of."""
    first = item.tail[0]
    name = first.name if isinstance(first, Work) else ""
    for spot in range(len(item.items) - 1, -1, -1):
        one = item.items[spot]
        if isinstance(one, Work) and one.name == name and len(item.items) - spot <= len(item.tail) + 1:
            return item.items[:spot]
    return item.items[: max(0, len(item.items) - len(item.tail))]


def _part_repeat(item: Group, spare: int, way: _Way) -> None:
    """Work as much of the repeat as there are stitches for, if it ends between two stitches."""
    part: list[Item] = []
    used = 0
    for one in item.items:
        needs = fixed_uses((one,), way.size, way.more)
        if used + needs > spare:
            break
        part.append(one)
        used += needs
    if used == spare and all(isinstance(one, Work) and one.uses == one.gives for one in part):
        _walk(tuple(part), way)
    elif isinstance(item.items[len(part)], Work) and len(part) < len(item.items):
        one = item.items[len(part)]
        if (
            isinstance(one, Work)
            and one.uses == one.gives == 1
            and all(isinstance(each, Work) and each.uses == each.gives for each in part)
        ):
            _walk(tuple(part), way)
            way.out.used += spare - used
            way.out.gives += spare - used
            way.here += spare - used


def _repeated(item: Group, times: int, way: _Way) -> None:
    parts_inside = any(
        not isinstance(one, Work | Group) or (isinstance(one, Work) and (one.reach or one.name == "marker"))
        for one in item.items
    )
    if times <= 1 or (parts_inside and times < 60):
        for _ in range(times):
            _walk(item.items, way)
        return
    uses = fixed_uses(item.items, way.size, way.more) * times
    gives = fixed_gives(item.items, way.size, way.more) * times
    if uses != gives:
        way.out.events.append(Event("inc" if gives > uses else "dec", "inside", abs(gives - uses), way.out.used))
    way.out.used += uses
    way.out.gives += gives
    way.here += gives


def _other(item: Item, run: Run, spot: int, way: _Way) -> None:
    out = way.out
    if isinstance(item, BindOff):
        _bound(item, run, spot, way)
    elif isinstance(item, CastOnInRow):
        count = item.n.whole(way.size)
        out.gives += count
        way.here += count
        edge = way.start if out.used == 0 else way.end if out.used >= way.n else "inside"
        out.events.append(Event("cast on", edge, count))
    elif isinstance(item, Held):
        count = item.n.whole(way.size) if item.n else max(0, way.n - out.used)
        out.used += count
        out.held.append(count)
        out.events.append(Event("hold", "inside" if out.used < way.n else way.end, count))
        bridged = spot + 1 < len(run) and isinstance(run[spot + 1], Taken | CastOnInRow)
        if not bridged and way.here:
            out.parts.append(way.here)
            way.here = 0
    elif isinstance(item, Taken):
        count = item.n.whole(way.size) if item.n else 0
        out.gives += count
        way.here += count
        out.taken.append((item, count))
        out.events.append(Event("pick up", "inside", count))
    elif isinstance(item, Turn):
        out.turned = True
    elif isinstance(item, Parted):
        out.parted = True


def _bound(item: BindOff, run: Run, spot: int, way: _Way) -> None:
    out = way.out
    count = item.n.whole(way.size) if item.n else max(0, way.n - out.used - _after(run, spot, way.size, way.more))
    edge = way.start if out.used == 0 else way.end if out.used + count >= way.n else "inside"
    out.events.append(Event("bind off", edge, count))
    if edge == "inside":
        out.parts.append(way.here)
        way.here = 0
    if spot + 1 < len(run):
        out.mid_offs += 1
    out.used += count
