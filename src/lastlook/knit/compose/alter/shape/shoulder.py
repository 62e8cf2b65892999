"""The shoulder of a piece at another gauge: as many stitches on every piece that is sewn there.

The bind-offs of a shoulder are rounded together and for themselves, so that a back and a front that were worked to
the same shoulder come to the same one again. What rounding leaves over is taken at the neck edge, where nothing is
sewn stitch to stitch.
"""

from __future__ import annotations

from lastlook.knit.compose.alter.shape.profile import Stretch, stretches
from lastlook.knit.compose.alter.shape.scale import Scale
from lastlook.knit.worked import Ended, WorkedPiece

OTHER = {"left": "right", "right": "left"}


def shoulder(parts: tuple[Stretch, ...], edge: str) -> list[int]:
    """Return which stretches bind the shoulder off at an edge: the last bind-offs there."""
    taking = [spot for spot, part in enumerate(parts) if part.takes(edge) and part.above]
    tail: list[int] = []
    while taking and parts[taking[-1]].hard and parts[taking[-1]].takes(edge) > 0:
        tail.insert(0, taking.pop())
    return tail


def widen(counts: list[dict[str, int]], tail: list[int], edge: str, stitches: int) -> None:
    """Give a shoulder's bind-offs so many stitches more, the last ones first; fewer where it is below nothing."""
    left = stitches
    for spot in reversed(tail):
        step = left if left > 0 else max(left, 1 - counts[spot][edge])
        counts[spot][edge] += step
        left -= step


def is_one_sided(piece: WorkedPiece) -> bool:
    """Whether a piece goes up to one shoulder and is bound off there."""
    words = piece.name.lower().split()
    half = piece.part_of is not None or ("front" in words and bool({"left", "right"} & set(words)))
    return half and piece.ended is Ended.BOUND_OFF


def to_shoulder(
    piece: WorkedPiece, parts: tuple[Stretch, ...], scale: Scale, cast_on: int, counts: list[dict[str, int]]
) -> int:
    """Let a piece of one shoulder end on its share of it; return what it begins with.

    The neck edge gives way, and of a side without neck shaping the stitches that it begins with.
    """
    if not is_one_sided(piece) or not parts:
        return cast_on
    tails = {edge: shoulder(parts, edge) for edge in OTHER}
    arm = max(OTHER, key=lambda edge: (len(tails[edge]), sum(max(0, part.takes(edge)) for part in parts if part.hard)))
    old = sum(parts[spot].takes(arm) for spot in tails[arm])
    wanted = scale.count(old + piece.end_stitches) - scale.count(old)
    over = cast_on - sum(sum(one.values()) for one in counts) - wanted
    neck = OTHER[arm]
    spots = [spot for spot, part in enumerate(parts) if part.above and part.takes(neck) > 0]
    for spot in sorted(spots, key=lambda one: (parts[one].hard, -parts[one].takes(neck))):
        least = 1 if parts[spot].hard else 0
        step = max(least - counts[spot][neck], over)
        counts[spot][neck] += step
        over -= step
    return cast_on - over if piece.part_of is not None else cast_on


def shoulder_row(piece: WorkedPiece) -> int:
    """Return the rows up to where the shoulders begin to be bound off; all of them where none are."""
    marked = dict(piece.landmarks).get("shoulder")
    if marked is not None:
        return min(marked, len(piece.rows))
    parts = stretches(piece)
    firsts = [
        tail[0] for edge in OTHER if (tail := shoulder(parts, edge)) and (piece.part_of or has_armhole(parts, edge))
    ]
    return sum(len(part.rows) for part in parts[: min(firsts)]) if firsts else len(piece.rows)


def has_armhole(parts: tuple[Stretch, ...], edge: str) -> bool:
    """Whether an edge is shaped row by row between its underarm and its shoulder, if it has one."""
    tail = shoulder(parts, edge)
    lower = parts[: tail[0]] if tail else parts
    arm = sum(part.takes(edge) for part in lower if part.hard and part.above) > 0 or bool(tail)
    return arm and any(part.above and not part.hard and part.takes(edge) > 0 for part in lower)


def has_shoulders(piece: WorkedPiece) -> bool:
    """Whether a piece is shaped at an armhole and bound off at a shoulder."""
    parts = stretches(piece)
    return any(shoulder(parts, edge) and has_armhole(parts, edge) for edge in OTHER)
