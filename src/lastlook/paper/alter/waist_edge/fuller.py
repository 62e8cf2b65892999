"""A piece made longer at its centre, and wider with it, while its waist and its side seam stay as long as they are.

The centre of the waist edge is raised or lowered, the side moves out or in from waist to hem, and the darts take up at
the waist what that gave; where there are none the side does. What grows is done in this order and what shrinks in
the other, so that each takes the other back.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from lastlook.finding import Finding
from lastlook.paper.alter.alteration import no_edge
from lastlook.paper.alter.dart import DartWidth
from lastlook.paper.alter.waist_edge.waist import tilted
from lastlook.paper.alter.width import Widen, is_side
from lastlook.paper.paper_piece import PaperPiece

FINE_MM = 1e-9
TRIES = 40
Change = Callable[[PaperPiece], PaperPiece | Finding]


def fuller(piece: PaperPiece, longer_mm: float, wider_mm: float) -> PaperPiece | Finding:
    """Return the piece so much longer at its centre and wider at each side edge, less than nothing the other way."""
    if piece.centre is not None:
        return tilted(piece, longer_mm, "centre")
    grow: list[Change] = [lambda one: tilted(one, longer_mm, "centre")]
    if wider_mm:
        grow.insert(0, lambda one: Widen(one.name, wider_mm, "all").apply(one))
    if longer_mm > 0 or (longer_mm == 0 and wider_mm >= 0):
        return _in_turn(piece, [*grow, _waist_kept(piece, ())])
    shrink = grow[::-1]
    return _in_turn(piece, [_waist_kept(piece, shrink), *shrink])


def _in_turn(piece: PaperPiece, steps: Sequence[Change]) -> PaperPiece | Finding:
    for step in steps:
        changed = step(piece)
        if isinstance(changed, Finding):
            return changed
        piece = changed
    return piece


def _waist_kept(was: PaperPiece, later: Sequence[Change]) -> Change:
    """Return the change of darts or sides after which, once `later` is done, the waist is as long as it was."""
    waist = was.side("waist")

    def keep(piece: PaperPiece) -> PaperPiece | Finding:
        if waist is None:
            return no_edge(piece, "waist")
        by = 0.0
        for _ in range(TRIES):
            changed = _taken_in(piece, by)
            done = changed if isinstance(changed, Finding) else _in_turn(changed, later)
            if isinstance(done, Finding):
                return done
            side = done.side("waist")
            over = side.sewn_mm - waist.sewn_mm if side else 0.0
            if abs(over) < FINE_MM:
                break
            by += over
        return changed

    return keep


def _taken_in(piece: PaperPiece, by_mm: float) -> PaperPiece | Finding:
    """Take so much out of the waist: its darts share it, or the sides where it has none."""
    count = sum(dart.edge == "waist" for dart in piece.darts)
    if not count:
        sides = sum(is_side(side.name) for side in piece.sides)
        return Widen(piece.name, -by_mm / max(1, sides), "waist").apply(piece)
    return _in_turn(piece, [DartWidth(piece.name, by_mm / count, number).apply for number in range(1, count + 1)])
