"""The order in which rows are worked: "1st and 3rd row" twice, a round told needle by needle once."""

from __future__ import annotations

from dataclasses import replace

from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Label, RowOf, Step

MOST = 1500
MOST_LISTED = 300


def in_order(steps: tuple[Step, ...]) -> list[Step]:
    """Return the steps with numbered rows in the order in which they are worked: '1st and 3rd row' twice."""
    out: list[Step] = []
    spot = 0
    steps = _by_needle(steps)
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
        else:
            out.append(step)
    return tuple(out)


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
