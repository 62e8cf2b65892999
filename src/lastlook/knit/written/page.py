"""A worked size written down clean: one size, row by row, in the maker's own English, units and hand.

Plain stretches are one sentence; every row that shapes stands alone with the count it leaves. What is written is read
again; where a row does not come out as it was worked, it is written anew from its counts. For a left-handed knitter
the work is mirrored: rows begin at the other edge, so left pieces and edges change places with right ones.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.knit.hand import SAID, mirrored
from lastlook.knit.reading import LeafletReading
from lastlook.knit.worked import WorkedPiece
from lastlook.knit.written.lines import Scope
from lastlook.knit.written.manner import English, Hand, Manner, hooked, in_american, in_british
from lastlook.knit.written.piece import parts_of, piece_lines
from lastlook.knit.written.proof import read_again, strays
from lastlook.leaflet.crochet_terms import is_british
from lastlook.quantity import Missing, Units, write_length

Block = tuple[bool, str]
"""A stretch of the page, and whether it is told in crochet."""
MOST_PROOFS = 6
"""How often it is written anew at most."""


@dataclass(frozen=True)
class Written:
    """What was written, and what of it does not read as it was worked."""

    text: str
    strays: tuple[tuple[str, int], ...] = ()
    """Piece and row; empty where reading it again gives the same rows."""


def write(reading: LeafletReading, size: str, manner: Manner | None = None) -> str:
    """Return the instructions of one size, row by row; the size is named on every piece."""
    return written(reading, size, manner).text


def written(reading: LeafletReading, size: str, manner: Manner | None = None) -> Written:
    """Write one size out and read it again."""
    how = manner or Manner()
    one = reading.by_size.get(size)
    if one is None:
        return Written("")
    scope = Scope(size, len(reading.sizes), list(reading.sizes).index(size))
    best: Written | None = None
    for _ in range(MOST_PROOFS):
        blocks = _blocks(reading, one.pieces, scope, how.units)
        astray = strays(one.pieces, read_again(_as_asked(blocks, Manner()), reading.gauge))
        if best is None or len(astray) < len(best.strays):
            best = Written(_as_asked(blocks, how), tuple(astray))
        fresh = scope.plainly | set(astray)
        if not astray or fresh == scope.plainly:
            break
        scope = replace(scope, plainly=fresh)
    assert best is not None
    return best


def _as_asked(blocks: list[Block], how: Manner) -> str:
    """Put the blocks together in the maker's own words and for her hand."""
    out = []
    for crochet, block in blocks:
        text = mirrored(block) if how.hand is Hand.LEFT else block
        if how.english is English.BRITISH:
            text = in_british(hooked(text, English.BRITISH) if crochet else text)
        out.append(text)
    if how.hand is Hand.LEFT:
        title, _, rest = out[0].partition("\n")
        out[0] = f"{title}\n{SAID}\n{rest}"
    return "\n\n".join(out) + "\n"


def _blocks(reading: LeafletReading, pieces: tuple[WorkedPiece, ...], scope: Scope, units: Units) -> list[Block]:
    """Return the head and each piece in American words."""
    size = f"SIZE: {scope.size} (this size alone)" if scope.named else f"SIZE: {scope.size}"
    british = is_british(reading.source.text)
    out = [(False, "\n".join([reading.title or "Leaflet", size, _gauge(reading, units)]))]
    banded = {piece.name.removesuffix(", band") for piece in pieces if piece.name.endswith(", band")}
    for piece, parts in parts_of(pieces):
        crochet = any(row.structure == "crochet" for row in piece.rows)
        text = "\n".join(piece_lines(piece, parts, scope, crochet))
        if piece.name in banded:
            # The whole piece is bound off before its band is picked up: not a row of so many stitches.
            text = text.replace(f"Bind off {piece.end_stitches} sts.", "Bind off.")
        out.append((crochet, in_american(hooked(text, English.AMERICAN) if crochet and british else text)))
    return out


def _gauge(reading: LeafletReading, units: Units) -> str:
    gauge = reading.gauge
    if gauge is None:
        return "GAUGE: not given."
    span = 4 * 25.4 if units is Units.INCHES else 100.0
    stitches = f"{round(gauge.stitches.best * span / 100, 2):g} sts"
    rows = "" if isinstance(gauge.rows, Missing) else f" and {round(gauge.rows.best * span / 100, 2):g} rows"
    return f"GAUGE: {stitches}{rows} = {write_length(span, units)}."
