"""The last look at an altered page: it is read as a stranger would read it, and given only where it adds up.

Its rows have to come back count for count; a page that merely adds up to something else isn't given either.
"""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.finding import Certainty, Finding
from lastlook.knit.compose.alter.shape.divided import set_out
from lastlook.knit.compose.composed import Composed, not_composed
from lastlook.knit.read import read
from lastlook.knit.reading import ADDS_UP, DOES_NOT, LeafletReading, SizeReading
from lastlook.knit.worked import WorkedPiece


def sure(made: Composed, printed: SizeReading) -> Composed:
    """Return the garment where its page reads as adding up; else what stands in its way, and no page.

    `printed` is the size it was made from: what didn't add up there can't here.
    """
    if not made.leaflet:
        return made
    again = read(made.leaflet)
    sizes = list(again.by_size.values())
    if not sizes or any(size.verdict != ADDS_UP for size in sizes):
        return _unsettled(made, printed, _first(again))
    for size in sizes:
        back = {_key(piece): piece for piece in set_out(size.pieces)}
        for piece in set_out(made.pieces):
            twin = back.get(_key(piece))
            if twin is not None and _counts(twin) != _counts(piece):
                return _refused(made, f"{piece.name} comes back with {len(twin.rows)} rows for {len(piece.rows)}.")
    return made


def _refused(made: Composed, why: str) -> Composed:
    open_still = [one for one in made.findings if one.certainty is Certainty.PROVEN]
    doubt = Finding(
        "page-unproven",
        Certainty.DOUBTFUL,
        f"{made.title} could not be rewritten so that it is proven to add up, so no page is given.",
        why,
        "Settle what `lastlook read` says of the leaflet first, or ask for less at once.",
    )
    return not_composed(made.title, made.size, [*open_still, doubt])


def _unsettled(made: Composed, printed: SizeReading, why: str) -> Composed:
    if printed.verdict != DOES_NOT:
        return _refused(made, why)
    doubt = Finding(
        "page-unproven",
        Certainty.DOUBTFUL,
        f"{made.title} does not add up as it is printed in size {printed.size}, so it is not rewritten.",
        why,
        "Settle what `lastlook read` says of the leaflet first; the rest follows from it.",
    )
    return not_composed(made.title, made.size, [doubt])


def _first(again: LeafletReading) -> str:
    return next((one.say for one in again.findings if one.certainty is not Certainty.NOTE), "No piece was found.")


def _key(piece: WorkedPiece) -> tuple[str, str]:
    return piece.name.lower().rstrip("s"), (piece.part_of or "").lower().rstrip("s")


def _counts(piece: WorkedPiece) -> Sequence[int]:
    return [row.after for row in piece.rows]
