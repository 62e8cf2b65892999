"""How many stitches of each structure a piece has, and what its edges count for in stitches.

An edge is told in *plain stitches*: a long-tail cast-on of three widths is 0.8 of a stitch for each stitch, a
bind-off of three and a half widths 0.9 (worked out at 20 x 28 in 10 cm from those lengths; the lengths are
common practice).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from lastlook.knit.worked import Act, Ended, WorkedPiece

CAST_ON = 0.8
BIND_OFF = 0.9


@dataclass(frozen=True)
class Structure:
    """How much yarn one stitch takes beside one of stockinette, with one standard deviation."""

    share: float
    sd: float


PLAIN = Structure(1.0, 0.0)
STRUCTURES: dict[str, Structure] = {
    "stockinette": PLAIN,
    "reverse stockinette": PLAIN,
    "rib": Structure(0.97, 0.03),
    "garter": Structure(0.88, 0.04),
    "seed": Structure(0.95, 0.03),
    "moss": Structure(0.95, 0.03),
    "cable": Structure(1.05, 0.03),
    "lace": Structure(1.0, 0.06),
    "stranded": Structure(1.75, 0.10),
    "crochet": Structure(2.6, 0.3),
}
"""Common practice, no source: worked out from how much more yarn an area of each takes and how many stitches
lie in it; knit and purl take about the same (a loom test, stringtheoryfiberworks 2014)."""
OTHER = Structure(1.0, 0.06)


@dataclass(frozen=True)
class PieceStitches:
    """The stitches of one piece, or of all copies of it together."""

    name: str
    by_structure: tuple[tuple[str, int], ...]
    cast_on: int = 0
    bound_off: int = 0
    make: int = 1

    @property
    def stitches(self) -> int:
        """Return all stitches of one copy."""
        return sum(count for _, count in self.by_structure)

    @property
    def plain(self) -> float:
        """Return one copy told in stitches of stockinette, edges and all."""
        body = sum(count * structure_of(name).share for name, count in self.by_structure)
        return body + CAST_ON * self.cast_on + BIND_OFF * self.bound_off

    @property
    def plain_sd(self) -> float:
        """Return one standard deviation of that, from not knowing the structures better."""
        return sum(count * structure_of(name).sd for name, count in self.by_structure)


def structure_of(name: str) -> Structure:
    """Return what a structure takes; a pattern that has no name here is taken as plain with more doubt."""
    plain = name.lower()
    return next((entry for word, entry in STRUCTURES.items() if word in plain), OTHER)


def stitches_of(piece: WorkedPiece) -> PieceStitches:
    """Return what a worked piece has on its rows and edges."""
    counts: dict[str, int] = {}
    cast_on, bound_off = piece.cast_on or 0, 0
    for row in piece.rows:
        counts[row.structure] = counts.get(row.structure, 0) + row.after
        for shaping in row.shapings:
            cast_on += shaping.stitches if shaping.act is Act.CAST_ON else 0
            bound_off += shaping.stitches if shaping.act is Act.BIND_OFF else 0
    if piece.ended is Ended.BOUND_OFF:
        bound_off += piece.end_stitches
    return PieceStitches(piece.name, tuple(counts.items()), cast_on, bound_off, piece.make)


def stitches_of_all(pieces: Sequence[WorkedPiece]) -> list[PieceStitches]:
    """Return every piece that has rows, the sides of one that divides counted with it."""
    out = []
    for piece in pieces:
        if piece.part_of is not None or not piece.rows:
            continue
        parts = [stitches_of(one) for one in pieces if one.part_of == piece.name]
        whole = stitches_of(piece)
        counts = dict(whole.by_structure)
        for part in parts:
            for name, count in part.by_structure:
                counts[name] = counts.get(name, 0) + count
        cast_on = whole.cast_on + sum(part.cast_on for part in parts)
        bound_off = whole.bound_off + sum(part.bound_off for part in parts)
        out.append(PieceStitches(piece.name, tuple(counts.items()), cast_on, bound_off, piece.make))
    return out


def order_of_work(pieces: Sequence[PieceStitches]) -> tuple[str, ...]:
    """Return the pieces in an order that leaves the freest length for last: body, then bands' share, then sleeves.

    A sleeve shows a centimetre less than a body does, so its length is what the last of the yarn decides.
    """

    def rank(piece: PieceStitches) -> int:
        name = piece.name.lower()
        return (
            2 if any(word in name for word in ("band", "border", "collar", "edging")) else 1 if "sleeve" in name else 0
        )

    return tuple(piece.name for piece in sorted(pieces, key=rank))


def total_plain(pieces: Iterable[PieceStitches]) -> float:
    """Return all pieces told in stitches of stockinette."""
    return sum(piece.plain * piece.make for piece in pieces)


def copies(pieces: Sequence[PieceStitches]) -> list[PieceStitches]:
    """Return one entry for each copy that is knitted: 'Sleeve' of two becomes 'Sleeve 1' and 'Sleeve 2'."""
    out = []
    for piece in pieces:
        for number in range(1, piece.make + 1):
            name = piece.name if piece.make == 1 else f"{piece.name} {number}"
            out.append(PieceStitches(name, piece.by_structure, piece.cast_on, piece.bound_off))
    return out
