"""A worked piece at another gauge, longer, or wider: the same shape in new stitches and rows.

At its own gauge a piece comes back as it was. What is asked beyond the gauge comes as a `Stretching`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from lastlook.knit.compose.alter.shape.holes import opened, pocket
from lastlook.knit.compose.alter.shape.profile import EDGES, Stretch, stretches, underarm_row
from lastlook.knit.compose.alter.shape.scale import Scale, spread
from lastlook.knit.compose.alter.shape.shoulder import has_armhole, is_one_sided, shoulder, to_shoulder, widen
from lastlook.knit.compose.craft.needle import Needle
from lastlook.knit.worked import Act, Ended, Shaping, Side, WorkedPiece
from lastlook.piece import Edge

ABOVE = ("raglan", "armhole", "cap", "neck", "shoulder")
"""Words in the names of edges that begin at the underarm."""
BIND_OFF_ROWS = 2
MANY = 3
"""So many stitches in a row are spread along it."""
SMALL_END = 3
"""A piece that ends on so few stitches has to end on exactly those."""


@dataclass(frozen=True)
class Stretching:
    """Rows and stitches more (or fewer) than the gauge alone would give."""

    below_rows: int = 0
    """In the plain part below the underarm, even."""
    above_rows: int = 0
    """Above the underarm, even."""
    at_underarm: int = 0
    """Stitches at the underarm, half of them at each edge, taken off again above it."""
    all_through: int = 0
    """Stitches from cast-on to underarm, taken off again above it."""
    shoulder: int = 0
    """Stitches that each shoulder has more."""
    armhole: int = 0
    """Stitches that each armhole takes less above its bind-off."""


@dataclass(frozen=True)
class Foot:
    """Where a part of a divided piece begins."""

    old_rows: int = 0
    """Rows from the underarm to it, as they were."""
    new_rows: int = 0
    stitches: int | None = None
    """Stitches that it begins with; None where the gauge alone tells."""


def recompose(piece: WorkedPiece, scale: Scale, more: Stretching = Stretching(), foot: Foot = Foot()) -> WorkedPiece:
    """Return the piece in new stitches and rows.

    A part of a divided piece goes on from its `foot`.
    """
    parts = stretches(piece)
    heights = _heights(parts, scale, more, foot)
    counts = _takes(piece, parts, scale, more)
    start = piece.cast_on if piece.cast_on is not None else piece.rows[0].before if piece.rows else 0
    cast_on = (_cast_on(piece, start, scale) if foot.stitches is None else foot.stitches) + more.all_through
    counts = _landing(piece, parts, cast_on, counts)
    cast_on = to_shoulder(piece, parts, scale, cast_on, counts)
    needle = Needle(cast_on, piece.rows[0].side if piece.rows else Side.RIGHT)
    marks = _marks(piece, parts, heights)
    for part, height, taken in zip(parts, heights, counts, strict=True):
        mouth = pocket(part.rows[0])
        if mouth:
            needle.row(part.structure, opened(part.rows[0], scale.cast_on(mouth, 2)))
        else:
            extra = {edge: round(-more.armhole / scale.stitches) for edge in _arms(parts, part)}
            _work(needle, part, height, taken, extra)
    return WorkedPiece(
        piece.name,
        piece.part_of,
        piece.make,
        cast_on if piece.cast_on is not None else None,
        tuple(needle.rows),
        needle.stitches,
        piece.ended,
        (),
        tuple(_edge(edge, piece, heights, scale, more) for edge in piece.edges),
        marks,
    )


def _heights(parts: tuple[Stretch, ...], scale: Scale, more: Stretching, foot: Foot) -> list[int]:
    """Return the rows of each stretch, so that each ends at its scaled height over cast-on or underarm.

    Heights are scaled, not stretches: pieces whose shapings lie at the same heights stay so. Above the
    underarm the two rows of its bind-off stay two.
    """
    out: list[int] = []
    for above in (False, True):
        old, new = (foot.old_rows, foot.new_rows) if above else (0, 0)
        mine = [part for part in parts if part.above is above]
        longest = _longest(parts, above)
        extra = more.above_rows if above else more.below_rows
        for part in mine:
            old += len(part.rows)
            height = 1 if part.hard else max(2 - len(part.rows) % 2, _height(old, scale, above) - new)
            new += height
            out.append(max(2, height + extra) if extra and part is longest else height)
    return out


def _longest(parts: tuple[Stretch, ...], above: bool) -> Stretch | None:
    """Return the longest stretch that can give and take rows: below the underarm, or from it to the shoulder."""
    tails = [(edge, spots[0]) for edge in ("left", "right") if (spots := shoulder(parts, edge))]
    ends = [spot for edge, spot in tails if any(part.above and part.takes(edge) for part in parts[:spot])]
    mine = parts[: min(ends)] if above and ends else parts
    soft = [part for part in mine if part.above is above and not part.hard]
    return max(soft, key=lambda one: len(one.rows), default=None)


def _height(old: int, scale: Scale, above: bool) -> int:
    return old if above and old <= BIND_OFF_ROWS else scale.height(old)


def _takes(piece: WorkedPiece, parts: tuple[Stretch, ...], scale: Scale, more: Stretching) -> list[dict[str, int]]:
    """Return what each edge loses in each stretch, rounded from cast-on, from the underarm and at the shoulder."""
    out: list[dict[str, int]] = [{} for _ in parts]
    for edge in EDGES:
        for above in (False, True):
            mine = [spot for spot, part in enumerate(parts) if part.above is above]
            tail = shoulder(parts, edge) if above else []
            arm = more.armhole if above and has_armhole(parts, edge) else 0
            wider = 0 if edge == "inside" else (more.at_underarm if not above else -_all(more)) // 2
            whole = sum(abs(parts[spot].takes(edge)) for spot in mine if not parts[spot].hard)
            old = new = 0
            for spot in mine:
                if tail and spot == tail[0]:
                    old, new, wider, arm = 0, 0, 0, 0
                old += parts[spot].takes(edge)
                share = _share(parts, mine, spot, edge, whole)
                step = scale.count(old) - round((wider + arm) * share) - new
                if parts[spot].hard and parts[spot].takes(edge):
                    step = max(1, step) if parts[spot].takes(edge) > 0 else min(-1, step)
                out[spot][edge] = step
                new += step
            widen(out, tail, edge, more.shoulder)
    return out


def _all(more: Stretching) -> int:
    return more.at_underarm + more.all_through


def _share(parts: tuple[Stretch, ...], mine: list[int], spot: int, edge: str, whole: int) -> float:
    """Return how much of an edge's own shaping is done by the end of a stretch, so that extra follows it."""
    if not whole:
        return 1.0 if spot == mine[-1] else 0.0
    return sum(abs(parts[one].takes(edge)) for one in mine if one <= spot and not parts[one].hard) / whole


def _cast_on(piece: WorkedPiece, start: int, scale: Scale) -> int:
    rib = re.match(r"rib (\d+)x(\d+)", piece.rows[0].structure) if piece.rows else None
    repeat = int(rib.group(1)) + int(rib.group(2)) if rib else 2
    return scale.cast_on(start, repeat)


def _landing(
    piece: WorkedPiece, parts: tuple[Stretch, ...], cast_on: int, counts: list[dict[str, int]]
) -> list[dict[str, int]]:
    """Let a piece that ends on a point end on the same few stitches: the neck edge, or both edges, give way."""
    if piece.end_stitches > SMALL_END or not parts or is_one_sided(piece):
        return counts
    wanted = piece.end_stitches + (parts[-1].takes("inside") if piece.ended is Ended.FASTENED_OFF else 0)
    last = counts[-1].get("inside", 0) if piece.ended is Ended.FASTENED_OFF else 0
    over = cast_on - sum(sum(one.values()) for one in counts) + last - wanted
    if piece.ended is Ended.FASTENED_OFF:
        counts[-1]["inside"] = parts[-1].takes("inside")
    softs = [spot for spot, part in enumerate(parts) if not part.hard and part.above]
    if not over or not softs:
        return counts
    spot = softs[-1]
    edge = min(("left", "right"), key=lambda name: _arm_weight(parts, name))
    counts[spot][edge] = counts[spot].get(edge, 0) + over
    return counts


def _arm_weight(parts: tuple[Stretch, ...], edge: str) -> int:
    """Return how much of the underarm an edge has: the neck edge has none."""
    first = next((part for part in parts if part.hard and part.takes(edge)), None)
    return first.takes(edge) if first is not None and first.above else 0


def _arms(parts: tuple[Stretch, ...], part: Stretch) -> list[str]:
    """Return the edges at which a stretch shapes an armhole."""
    if part.hard or not part.above:
        return []
    return [edge for edge in ("left", "right") if part.takes(edge) > 0 and has_armhole(parts, edge)]


def _work(needle: Needle, part: Stretch, height: int, taken: dict[str, int], extra: dict[str, int]) -> None:
    old = len(part.rows)
    if height == old and all(taken.get(edge, 0) == part.takes(edge) for edge in EDGES):
        for row in part.rows:
            needle.row(row.structure, row.shapings)
        return
    rows = {edge: _spread(part, edge, abs(taken.get(edge, 0)), height, extra.get(edge, 0)) for edge in EDGES}
    for spot in range(height):
        shapings = []
        for edge in EDGES:
            count = rows[edge][spot]
            if count:
                shapings.append(_shaping(part, edge, count, taken[edge]))
        needle.row(part.structure, shapings)


def _spread(part: Stretch, edge: str, events: int, height: int, extra: int) -> list[int]:
    """Return how many stitches an edge takes in each new row; what is spread along a row stays together in one.

    What an armhole takes beyond its own goes on in its last cadence, so that back and front stay alike.
    """
    old = _went_on(part.events(edge), extra, len(part.rows))
    together = sorted(set(old))
    if not height or not together or len(old) < MANY * len(together) or not events:
        return spread(old, len(part.rows), events, height) if height else []
    rows = max(1, min(events, round(len(together) * height / len(part.rows))))
    spots = [spot for spot, one in enumerate(spread(together, len(part.rows), rows, height)) if one]
    each, more = divmod(events, len(spots))
    out = [0] * height
    for number, spot in enumerate(spots):
        out[spot] = each + (number < more)
    return out


def _went_on(old: tuple[int, ...], extra: int, rows: int) -> tuple[int, ...]:
    """Return shapings with so many more at their last distance, or so many fewer."""
    if extra <= 0 or len(old) < 2:
        return old[: len(old) + extra] if -len(old) < extra < 0 else old
    gap = max(1, old[-1] - old[-2])
    more = tuple(old[-1] + gap * number for number in range(1, extra + 1))
    return (*old, *(spot for spot in more if spot < rows))


def _shaping(part: Stretch, edge: str, count: int, taken: int) -> Shaping:
    like = part.like(edge)
    if like is not None and (like.act in (Act.DECREASE, Act.BIND_OFF, Act.HOLD)) == (taken > 0):
        return Shaping(like.act, edge, count, like.inset, like.lean)
    if taken > 0:
        return Shaping(Act.DECREASE, edge, count, 2, "left" if edge == "right" else "right")
    return Shaping(Act.INCREASE, edge, count, 1)


def _marks(piece: WorkedPiece, parts: tuple[Stretch, ...], heights: list[int]) -> tuple[tuple[str, int], ...]:
    """Return the landmarks at their new heights."""
    ends_old, ends_new = _ends(parts, heights)
    out = []
    for name, row in piece.landmarks:
        spot = min(range(len(ends_old)), key=lambda one: abs(ends_old[one] - row))
        out.append((name, ends_new[spot] + (row - ends_old[spot])))
    return tuple(out)


def _ends(parts: tuple[Stretch, ...], heights: list[int]) -> tuple[list[int], list[int]]:
    """Return where each stretch ends, in old rows and in new ones, the cast-on first."""
    old, new = [0], [0]
    for part, height in zip(parts, heights, strict=True):
        old.append(old[-1] + len(part.rows))
        new.append(new[-1] + height)
    return old, new


def is_above(edge: Edge) -> bool:
    """Whether an edge begins at the underarm, by its name."""
    return any(word in edge.name.edge for word in ABOVE)


def _edge(edge: Edge, piece: WorkedPiece, heights: list[int], scale: Scale, more: Stretching) -> Edge:
    """Return an edge as long as the rows that were really composed along it."""
    stitches = None if edge.stitches is None else scale.count(edge.stitches)
    if edge.rows is None:
        return Edge(edge.name, None, stitches, None)
    above = is_above(edge)
    old, new = _ends(stretches(piece), heights)
    foot = underarm_row(piece) if above else 0
    feet = new[old.index(foot)] if foot in old else 0
    if foot + edge.rows in old and foot in old:
        return Edge(edge.name, new[old.index(foot + edge.rows)] - feet, stitches, None)
    rows = _height(edge.rows, scale, above) + (more.above_rows if above else more.below_rows)
    return Edge(edge.name, rows, stitches, None)
