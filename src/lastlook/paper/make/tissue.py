"""A second-hand tissue: is each piece as it was printed, and are they all there?"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.drafted import Drafted

WALK_MM = 2.0
"""Side seams of a printed pattern are equal within 2 mm (common practice, no source)."""
LENGTH_MM = 6.0
"""A quarter of an inch, the finest that envelopes of the time print."""


@dataclass(frozen=True)
class Envelope:
    """What the envelope says."""

    pieces: Sequence[str] = ()
    finished_length_mm: float | None = None
    edges_mm: Mapping[str, float] = field(default_factory=dict)
    """Printed lengths by 'Piece: edge'."""


def tissue_findings(drafted: Drafted, envelope: Envelope) -> tuple[Finding, ...]:
    """Return what is missing, cut down or changed."""
    there = {piece.name.lower() for piece in drafted.pieces}
    out = [_missing(name) for name in envelope.pieces if name.lower() not in there]
    out += _side_seams(drafted)
    out += _printed(drafted, envelope)
    if envelope.finished_length_mm is not None:
        out += _cut_down(drafted, envelope.finished_length_mm)
    return tuple(out)


def _missing(name: str) -> Finding:
    return Finding(
        "tissue-missing",
        Certainty.PROVEN,
        f"{name} is not in the envelope.",
        "The envelope lists it, and none of the pieces taken in is called so.",
        "Look among the other pieces, or draft it anew from the edges it meets.",
        where=Where(piece=name),
    )


def _side_seams(drafted: Drafted) -> list[Finding]:
    out = []
    for seam in drafted.seams:
        if "side" in seam.mate.a.edge and abs(seam.difference) > WALK_MM:
            shorter = seam.mate.b if seam.difference > 0 else seam.mate.a
            out.append(_altered(str(shorter), abs(seam.difference), "than the seam it is sewn to", shorter.piece))
    return out


def _printed(drafted: Drafted, envelope: Envelope) -> list[Finding]:
    out = []
    for piece in drafted.pieces:
        for side in piece.sides:
            printed = envelope.edges_mm.get(f"{piece.name}: {side.name}")
            if printed is not None and printed - side.sewn_mm > LENGTH_MM:
                out.append(_altered(f"{piece.name}: {side.name}", printed - side.sewn_mm, "than printed", piece.name))
    return out


def _cut_down(drafted: Drafted, printed_mm: float) -> list[Finding]:
    """Compare each centre length with the printed finished length."""
    out = []
    for piece in drafted.pieces:
        centre = piece.side("centre")
        if piece.role == "skirt" and centre and printed_mm - centre.sewn_mm > LENGTH_MM:
            by = printed_mm - centre.sewn_mm
            out.append(_altered(f"{piece.name}: centre", by, "than the printed finished length", piece.name))
    return out


def _altered(edge: str, by_mm: float, than: str, piece: str) -> Finding:
    return Finding(
        "tissue-cut-down",
        Certainty.DOUBTFUL,
        f"{edge} is {by_mm:.0f} mm shorter {than}.",
        "Somebody may have folded or cut the tissue for a body of her own.",
        "Look for a fold, a pinned tuck or a fresh edge, and put the length back before altering.",
        where=Where(piece=piece),
    )
