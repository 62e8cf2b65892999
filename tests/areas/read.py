"""Reading on a page: a leaflet goes in; what was asked comes out.

Asked `KIND` gives the first finding of that kind as the terminal shows it; `counts` gives every piece with its
stitches after each row, in every size; `seams` the seams; nothing gives the verdicts and all that stands open.
"""

from __future__ import annotations

from itertools import groupby

from lastlook import finding, knit
from lastlook.finding import Certainty


def answer(given: str, asked: str) -> str:
    reading = knit.read(given)
    if asked == "counts":
        return "\n".join(_counts(reading))
    if asked == "seams":
        return "\n".join(_seams(reading))
    if asked:
        found = [one for one in reading.findings if one.kind == asked]
        return finding.say(found[0], reading.source) if found else f"no {asked}"
    open_ = [one for one in reading.findings if one.certainty is not Certainty.NOTE]
    verdicts = [f"{name}: {one.verdict}" for name, one in reading.by_size.items()]
    read = f"{reading.understood} of {reading.phrases} phrases understood"
    return "\n".join([read, *verdicts, *(f"{one.kind}: {one.say}" for one in open_)])


def _counts(reading: knit.LeafletReading) -> list[str]:
    out = []
    for name, one in reading.by_size.items():
        for piece in one.pieces:
            rows = " ".join(_run(list(group)) for _, group in groupby(row.after for row in piece.rows))
            out.append(f"{name} {piece.name}: {piece.cast_on}: {rows}: {piece.end_stitches} {piece.ended.value}")
    return out


def _run(counts: list[int]) -> str:
    return str(counts[0]) if len(counts) == 1 else f"{counts[0]}x{len(counts)}"


def _seams(reading: knit.LeafletReading) -> list[str]:
    return [
        f"{name} {seam.mate.a} {seam.a_length:g} | {seam.mate.b} {seam.b_length:g} "
        f"{seam.mate.unit.value}: {seam.meets.value}"
        for name, one in reading.by_size.items()
        for seam in one.seams
    ]
