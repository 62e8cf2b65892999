"""Decreases that are told stitch by stitch at two edges that mirror each other must lean as mirror images.

A decrease slants *in* or *out*, seen from its edge: at a right edge 'sl 1, k 1, psso' slants in and 'k 2 tog' out.
Two edges of a pair slant alike. Leaflets that take one decrease for both edges throughout do so for ease, so a pair is
told only where another pair of the same leaflet is mirrored.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from lastlook.finding import Span
from lastlook.knit.needle import Hands, Row, Trouble

GARMENT = ("back", "front", "sleeve")
DEEPEST = 6
"""A decrease further from the edge than this does not belong to it."""
INWARD = {"right": "left", "left": "right"}


@dataclass(frozen=True)
class _Told:
    """How the decreases at one edge slant, and where that is printed."""

    piece: str
    edge: str
    zone: str
    slant: str
    lean: str
    span: Span


def leans(pieces: Mapping[str, Hands]) -> list[Trouble]:
    """Return the edges whose decreases do not mirror those of their twins."""
    told = [one for hands in pieces.values() for one in _of_piece(hands)]
    pairs = _pairs(told)
    mirrored = [pair for pair in pairs if pair[0].slant == pair[1].slant]
    if not mirrored:
        return []
    usual = Counter(one.slant for pair in mirrored for one in pair)
    out: dict[Span, Trouble] = {}
    for first, second in pairs:
        if first.slant == second.slant:
            continue
        odd = first if usual[first.slant] < usual[second.slant] else second
        blind = any(hands.unread for hands in pieces.values() if hands.name in (first.piece, second.piece))
        words = f"{odd.edge}|{odd.lean}"
        out.setdefault(odd.span, Trouble("lean-not-mirrored", odd.span, odd.piece, None, 0, 0, words, blind))
    return list(out.values())


def _of_piece(hands: Hands) -> list[_Told]:
    """Return what a piece says of each of its edges; nothing for an edge that is told in two ways."""
    if hands.crochet or not hands.span.end or not any(word in hands.name.lower() for word in GARMENT):
        return []
    found: dict[tuple[str, str], dict[str, Span]] = {}
    for live in hands.parts:
        for row in live.rows:
            # A row before the cast-on was taken from another piece; it mirrors by its making.
            for edge, lean in _plain(row) if row.span.start > hands.span.start else []:
                zone = "neck" if live.inner == edge else "side"
                found.setdefault((edge, zone), {}).setdefault(lean, row.span)
    return [
        _Told(hands.name, edge, zone, "in" if INWARD[edge] == lean else "out", lean, span)
        for (edge, zone), ways in found.items()
        if len(ways) == 1
        for lean, span in ways.items()
    ]


def _plain(row: Row) -> list[tuple[str, str]]:
    """Return edge and lean of the decreases of a row that only decreases near its edges."""
    events = row.events
    if row.side == "round" or not events or len(events) > 2 or any(one.act != "dec" or one.n != 1 for one in events):
        return []
    near = [one for one in events if one.edge in INWARD and one.inset <= DEEPEST]
    return [(one.edge, one.lean) for one in near if one.lean in INWARD]


def _pairs(told: list[_Told]) -> list[tuple[_Told, _Told]]:
    """Return edges that mirror each other: two of one piece, or the same one of the left and the right front."""
    out = []
    for number, first in enumerate(told):
        for second in told[number + 1 :]:
            if first.edge == second.edge or first.zone != second.zone:
                continue
            twins = {first.piece.lower(), second.piece.lower()} == {"left front", "right front"}
            if first.piece == second.piece or twins:
                out.append((first, second))
    return out
