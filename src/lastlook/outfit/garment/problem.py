"""From the cloth at hand and the paper pieces to the question that the lay answers."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook import lay, paper
from lastlook.geometry import Point
from lastlook.stock import Cloth, Flaw

CHORD_MM = 0.25
"""How near the chords of a cutting line stay to the curve for laying."""


def problem(cloth: Cloth, pieces: Sequence[paper.PaperPiece], fold: str) -> lay.Problem:
    """Return the lay's question: everything turned so that x runs along the cloth and y across it."""
    repeat = cloth.repeat_mm and lay.Repeat(cloth.repeat_mm[0] or None, cloth.repeat_mm[1] or None)
    return lay.Problem(
        lay.Cloth(
            width_mm=cloth.width_mm,
            length_mm=cloth.length_mm,
            flaws=tuple(_spot(flaw) for flaw in cloth.flaws),
            fold=lay.Fold(fold),
            one_way=cloth.nap == "one way",
            selvedge_mm=cloth.selvedge_mm,
            repeat=repeat,
        ),
        tuple(_wanted(piece) for piece in pieces),
    )


def _spot(flaw: Flaw) -> lay.Outline:
    """Return a flaw as an outline: `along` is x, `across` is y."""
    x, y = flaw.along_mm, flaw.across_mm
    ends = (x + flaw.length_mm, y + flaw.width_mm)
    return ((x, y), (ends[0], y), ends, (x, ends[1]))


def _wanted(piece: paper.PaperPiece) -> lay.Wanted:
    points = piece.cut_line.points(CHORD_MM)[:-1]
    (x0, y0), (x1, y1) = piece.grain
    fold = piece.fold
    return lay.Wanted(
        id=piece.name,
        outline=tuple(_turned(point) for point in points),
        quantity=piece.quantity,
        mirrored_pair=piece.mirrored_pair,
        on_fold=(_turned(fold[0]), _turned(fold[1])) if fold else None,
        grain_deg=0.0 if abs(x1 - x0) < abs(y1 - y0) else 90.0,
        may_turn=True,
    )


def _turned(point: Point) -> Point:
    """Turn a paper piece, drawn upright, so that its length runs along x."""
    return (point[1], -point[0])
