"""The order in which rows are worked: "1st and 3rd row" twice, a round told needle by needle once."""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Span
from lastlook.knit.needle.solve import is_filling
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Label, RowOf, Run, Step, Taken, Work

MOST = 1500
MOST_LISTED = 300


def in_order(steps: tuple[Step, ...]) -> list[Step]:
    """Return the steps with numbered rows in the order in which they are worked: '1st and 3rd row' twice."""
    out: list[Step] = []
    spot = 0
    steps = _held_inside(_by_needle(_ended(steps)))
    while spot < len(steps):
        step = steps[spot]
        if not (isinstance(step, RowOf) and step.label and step.label.numbers):
            out.append(step)
            spot += 1
            continue
        stop = spot
        while stop < len(steps) and _belongs(steps, stop):
            stop += 1
        out += _listed(list(steps[spot:stop]))
        spot = stop
    return out


def _by_needle(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Put a round that is told needle by needle together."""
    out: list[Step] = []
    for step in steps:
        last = out[-1] if out else None
        on_needle = isinstance(step, RowOf) and step.label is not None and step.label.needle and bool(step.run)
        if (
            on_needle
            and isinstance(step, RowOf)
            and isinstance(last, RowOf)
            and last.label
            and not last.run
            and (last.label.round or last.needles)
        ):
            out[-1] = replace(last, needles=(*last.needles, step.run), covers=(*last.covers, step.span))
        elif on_needle and isinstance(step, RowOf) and step.label and step.label.numbers == (1,):
            # "Toe: First needle, …; second needle, …": a round begins though none is named.
            label = Label(name="next", round=True)
            out.append(RowOf(label, (), needles=(step.run,), covers=(step.span,), span=step.span))
        else:
            out.append(step)
    return tuple(out)


def _ended(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """'K to end. Pick up and k 10': what is picked up after the end of a row is no part of it."""
    out: list[Step] = []
    for step in steps:
        cut = _end_of(step.run) if isinstance(step, RowOf) else 0
        if isinstance(step, RowOf) and cut:
            out += [replace(step, run=step.run[:cut]), replace(step, label=None, run=step.run[cut:], covers=())]
        else:
            out.append(step)
    return tuple(out)


def _end_of(run: Run) -> int:
    """Return after how many items a run has come to the end of its row, with stitches picked up after it; else 0."""
    for spot, item in enumerate(run[:-1]):
        after = run[spot + 1]
        whole = isinstance(item, Work) and item.reach in ("end", "all") and item.rest is None
        if whole and isinstance(after, Taken) and any(isinstance(one, Taken) and not one.picked_up for one in run):
            return spot + 1
    return 0


def _held_inside(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """'K 1, slip the next 17 sts on a thread, cast on 1, k to end' is one row, told in three breaths."""
    out: list[Step] = []
    spot = 0
    while spot < len(steps):
        found = _with_thread(steps, spot)
        ended = _both_ends(steps, spot)
        if ended:
            out += ended
            spot += 3
            continue
        out.append(found[0] if found else steps[spot])
        spot += found[1] if found else 1
    return tuple(out)


def _both_ends(steps: tuple[Step, ...], spot: int) -> tuple[Step, ...]:
    """'Bind off 14, work 20 and place them on a holder, bind off the last 14': one row, then the holder."""
    if spot + 2 >= len(steps):
        return ()
    first, hold, last = steps[spot : spot + 3]
    if not (isinstance(first, RowOf) and isinstance(hold, say.Hold) and isinstance(last, say.Finish)):
        return ()
    begins = len(first.run) == 2 and isinstance(first.run[0], say.BindOff) and isinstance(first.run[1], Work)
    if not begins or hold.n is not None or last.how != "bound off" or last.n is None:
        return ()
    run = (*first.run, say.BindOff(last.n, span=last.span))
    return replace(first, run=run, covers=(first.span, last.span)), hold


def _with_thread(steps: tuple[Step, ...], spot: int) -> tuple[RowOf, int] | None:
    """Return such a row with the number of steps it takes."""
    named = [(place, one) for place, one in enumerate(steps[spot : spot + 6]) if not isinstance(one, say.Nothing)][:3]
    if len(named) < 3 or named[0][0] != 0:
        return None
    (_, first), (_, hold), (place, last) = named
    if not isinstance(first, RowOf) or not isinstance(hold, say.Hold) or first.needles:
        return None
    if any(map(is_filling, first.run)) or not isinstance(last, RowOf) or last.label is not None or not last.run:
        return None
    if hold.n is None or not (
        (hold.which in ("next", "first") and isinstance(last.run[0], say.CastOnInRow))
        or (hold.which == "center" and isinstance(last.run[0], say.Parted))
    ):
        return None
    run = (*first.run, say.Held(hold.n, span=hold.span), *last.run)
    covers = (first.span, hold.span, last.span)
    return replace(first, run=run, span=Span(first.span.start, last.span.end), covers=covers), place + 1


def _belongs(steps: tuple[Step, ...], spot: int) -> bool:
    step = steps[spot]
    if isinstance(step, RowOf):
        return step.label is None or bool(step.label.numbers)
    follows = any(isinstance(one, RowOf) and one.label and one.label.numbers for one in steps[spot + 1 : spot + 3])
    return isinstance(step, say.Printed | say.Nothing) and follows


def _listed(part: list[Step]) -> list[Step]:
    several = any(
        isinstance(one, RowOf) and one.label and (len(one.label.numbers) > 1 or one.label.every) for one in part
    )
    if not several:
        return part
    rows: dict[int, list[Step]] = {}
    now: list[Step] = []
    highest = max(
        (max(one.label.numbers) for one in part if isinstance(one, RowOf) and one.label and one.label.numbers),
        default=0,
    )
    fillers: list[tuple[int, RowOf]] = []
    for one in part:
        if isinstance(one, RowOf) and one.label and one.label.numbers:
            now = []
            pairwise = len(one.like) == len(one.label.numbers) > 1
            for place, number in enumerate(one.label.numbers[:MOST_LISTED]):
                if number in rows:
                    return part
                like = (one.like[place],) if pairwise else one.like
                rows[number] = now = [replace(one, label=replace(one.label, numbers=(number,)), like=like)]
            if one.label.every:
                fillers.append((one.label.numbers[-1], one))
        else:
            now.append(one)
    for first, filler in fillers:
        for number in range(first, highest + 1, 2):
            label = replace(filler.label or Label(), numbers=(number,))
            rows.setdefault(number, [replace(filler, label=label)])
    return [step for number in sorted(rows)[:MOST_LISTED] for step in rows[number]]
