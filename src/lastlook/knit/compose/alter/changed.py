"""What an alteration changed, figure by figure: as printed beside as it is now, in stitches or rows and in mm.

Each figure is told at its own gauge, so that a count may change and the width stay, or the other way round.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.knit.compose.alter.shape.divided import set_out
from lastlook.knit.compose.alter.shape.profile import underarm_row
from lastlook.knit.compose.alter.shape.shoulder import shoulder_row
from lastlook.knit.worked import WorkedPiece
from lastlook.quantity import Gauge, Missing


@dataclass(frozen=True)
class Figure:
    """A count with its length."""

    count: int
    unit: str
    """'sts' or 'rows'."""
    mm: float | None


@dataclass(frozen=True)
class Change:
    """One figure before and after; None where the piece has none such."""

    piece: str
    what: str
    was: Figure | None
    now: Figure | None

    @property
    def is_change(self) -> bool:
        """Whether count or length differ."""
        if self.was is None or self.now is None:
            return True
        lengths = (self.was.mm or 0.0, self.now.mm or 0.0)
        return self.was.count != self.now.count or abs(lengths[0] - lengths[1]) > 1.0


def changed(
    old: Sequence[WorkedPiece], new: Sequence[WorkedPiece], printed: Gauge | None, wanted: Gauge | None
) -> tuple[Change, ...]:
    """Return every figure that changed, piece by piece; a piece that is new or gone is told by its first stitches."""
    olds, news = _whole(old), _whole(new)
    out: list[Change] = []
    for name, piece in news.items():
        was = olds.get(name)
        before = _figures(was, old, printed) if was is not None else {}
        after = _figures(piece, new, wanted)
        if was is None:
            out.append(Change(piece.name, "new piece", None, after.get("begins with")))
            continue
        for what, now in after.items():
            out.append(Change(piece.name, what, before.get(what), now))
    for name, piece in olds.items():
        if name not in news:
            out.append(Change(piece.name, "left out", _figures(piece, old, printed).get("begins with"), None))
    return tuple(one for one in out if one.is_change)


def _whole(pieces: Sequence[WorkedPiece]) -> dict[str, WorkedPiece]:
    return {piece.name.lower().rstrip("s"): piece for piece in set_out(pieces) if piece.part_of is None}


def _figures(piece: WorkedPiece, pieces: Sequence[WorkedPiece], gauge: Gauge | None) -> dict[str, Figure]:
    """Return what a piece has at the heights that matter."""
    foot, rows = underarm_row(piece), list(piece.rows)
    parts = [one for one in set_out(pieces) if one.part_of == piece.name]
    longest = max((len(one.rows) for one in parts), default=0)
    begins = piece.cast_on if piece.cast_on is not None else rows[0].after if rows else 0
    counts: list[tuple[str, int, str]] = [("begins with", begins, "sts")]
    if 0 < foot < len(rows) + longest:
        wide = rows[foot - 1].after if foot <= len(rows) else begins
        counts += [("at the underarm", wide, "sts"), ("to the underarm", foot, "rows")]
        counts.append(("above the underarm", len(rows) - foot + longest, "rows"))
        top = shoulder_row(piece)
        if not parts and foot < top < len(rows):
            counts.append(("between the armholes", rows[top - 1].after, "sts"))
    else:
        counts.append(("in all", len(rows) + longest, "rows"))
    counts.append(("ends with", parts[0].end_stitches if parts else piece.end_stitches, "sts"))
    return {what: Figure(count, unit, _mm(count, unit, gauge)) for what, count, unit in counts}


def _mm(count: int, unit: str, gauge: Gauge | None) -> float | None:
    if gauge is None:
        return None
    length = gauge.width_mm(count) if unit == "sts" else gauge.length_mm(count)
    return None if isinstance(length, Missing) else length.best
