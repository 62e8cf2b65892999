"""A band or a belt made longer at the end away from its lap, and the marks where the skirt meets it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from lastlook.geometry import Point, mapped
from lastlook.paper.paper_piece import Notch, PaperPiece
from lastlook.paper.seam_edge import SeamEdge
from lastlook.paper.solve import solve


def longer(piece: PaperPiece, by_mm: float) -> PaperPiece:
    """Return a strip whose long edge is longer by so much; its lap stays as long as it is."""
    waist = piece.side("waist") or piece.sides[0]
    start, far = min(waist.start[0], waist.end[0]), max(waist.start[0], waist.end[0])

    def over(share: float) -> float:
        return _sent(waist, _stretch(start, far, share)).sewn_mm - waist.sewn_mm - by_mm

    first = 1.0 + by_mm / (far - start)
    share = first if abs(over(first)) < 1e-9 else solve(over, first * 0.98, first * 1.02)
    send = _stretch(start, far, first if share is None else share)
    return replace(
        piece,
        sides=tuple(_sent(side, send) for side in piece.sides),
        notches=tuple(replace(notch, point=send(notch.point)) for notch in piece.notches),
        marks=tuple(replace(mark, point=send(mark.point)) for mark in piece.marks),
        grain=(send(piece.grain[0]), send(piece.grain[1])),
    )


def band_notches(start: Point, length_mm: float, shares: Sequence[tuple[str, float]]) -> tuple[Notch, ...]:
    """Return the marks along a waist edge: the centre of each piece that meets it, and the seams between them."""
    total = sum(mm for _, mm in shares)
    out: list[Notch] = []
    spot = 0.0
    for name, mm in shares:
        share = mm * length_mm / total
        out.append(Notch(name, "waist", (start[0] + spot + share / 2, start[1])))
        spot += share
        if spot < length_mm - 1e-6:
            out.append(Notch("side", "waist", (start[0] + spot, start[1])))
    return tuple(out)


def _stretch(start: float, far: float, share: float) -> Callable[[Point], Point]:
    """Return what stretches everything between two places and carries along what lies beyond them."""

    def send(spot: Point) -> Point:
        if spot[0] <= start:
            return spot
        inside = min(spot[0], far)
        return (start + (inside - start) * share + (spot[0] - inside), spot[1])

    return send


def _sent(side: SeamEdge, send: Callable[[Point], Point]) -> SeamEdge:
    return replace(side, parts=tuple(mapped(part, send) for part in side.parts))
