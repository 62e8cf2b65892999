"""Two versions of the same pieces laid over each other, with every changed edge measured."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.geometry import nearest
from lastlook.paper.drafted import Drafted
from lastlook.paper.seam_edge import SeamEdge

SAME_MM = 0.05
SAMPLES = 12


@dataclass(frozen=True)
class EdgeChange:
    """How one edge differs between two versions; plus is longer, and `moved_mm` is the furthest it went."""

    piece: str
    edge: str
    before_mm: float | None
    after_mm: float | None
    moved_mm: float | None

    @property
    def longer_mm(self) -> float | None:
        """Return how much longer the edge became, None where it is in one version only."""
        if self.before_mm is None or self.after_mm is None:
            return None
        return self.after_mm - self.before_mm


def changes(before: Drafted, after: Drafted) -> tuple[EdgeChange, ...]:
    """Return every edge that is longer, shorter, moved, new or gone."""
    out: list[EdgeChange] = []
    names = dict.fromkeys(piece.name for piece in (*before.pieces, *after.pieces))
    for name in names:
        a, b = before.piece(name), after.piece(name)
        edges = dict.fromkeys(side.name for piece in (a, b) if piece for side in piece.sides)
        for edge in edges:
            old, new = (a.side(edge) if a else None), (b.side(edge) if b else None)
            moved = max(_moved(old, new), _moved(new, old)) if old and new else None
            change = EdgeChange(name, edge, old.sewn_mm if old else None, new.sewn_mm if new else None, moved)
            if moved is None or moved > SAME_MM or abs(change.longer_mm or 0.0) > SAME_MM:
                out.append(change)
    return tuple(out)


def _moved(old: SeamEdge, new: SeamEdge) -> float:
    """Return how far the furthest spot of one edge lies from the other."""
    spots = old.path.points(0.1)
    step = max(1, len(spots) // SAMPLES)
    return max(nearest(new.path, spot).away_mm for spot in [*spots[::step], spots[-1]])
