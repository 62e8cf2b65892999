"""A leaflet written for left-handed knitters: every row begins at the other edge, so left and right change places.

Such a leaflet says so in a line of its own. It is read as its mirror image, and everything said of it is mirrored back.
"Right side" and "wrong side" of the fabric are the same in both hands.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from lastlook.finding import Cure, Edit, Finding
from lastlook.knit.correct import Corrected, exchanged
from lastlook.knit.reading import LeafletReading, SizeReading
from lastlook.knit.worked import Shaping, WorkedPiece, WorkedRow
from lastlook.piece import Edge, EdgeName, Seam

SAID = "For left-handed knitters: every row begins at the left edge."
LEFT_HANDED = re.compile(r"(?im)^\W*(?:written )?for left-handed knitters\b")
SIDES = re.compile(
    r"\b(left|right)\b(?![ -](?:handed|sides?\b(?! of (?!(?:the )?(?:work|fabric|piece)\b|it\b))))", re.I
)
OTHER = {"left": "right", "right": "left"}


def mirrored(words: str) -> str:
    """Return words with left and right exchanged.

    >>> mirrored("Left front: with right side facing, K 2")
    'Right front: with right side facing, K 2'
    """
    return SIDES.sub(lambda match: _other(match[0]), words)


def _other(word: str) -> str:
    new = OTHER[word.lower()]
    return new.upper() if word.isupper() else new.capitalize() if word[0].isupper() else new


@dataclass(frozen=True)
class Handed:
    """The text as it is read, and the way back from what was read of it."""

    text: str
    fixed: Corrected
    mirror: Corrected | None = None

    def choices(self, given: Mapping[str, int]) -> Mapping[str, int]:
        """Return choices by the keys that the reader meets."""
        return {mirrored(key): value for key, value in given.items()} if self.mirror else given

    def back(self, reading: LeafletReading) -> LeafletReading:
        """Return the reading with spans and sides as they are printed."""
        if self.mirror:
            reading = _reading(self.mirror.back(reading))
        return self.fixed.back(reading)


def handed(fixed: Corrected) -> Handed:
    """Return the text as a right-handed knitter would have it."""
    if LEFT_HANDED.search(fixed.text) is None:
        return Handed(fixed.text, fixed)
    spots = [(match.span(), _other(match[0])) for match in SIDES.finditer(fixed.text)]
    mirror = exchanged(fixed.text, spots)
    return Handed(mirror.text, fixed, mirror)


def _reading(reading: LeafletReading) -> LeafletReading:
    sizes = {
        name: SizeReading(
            one.size, one.verdict, tuple(map(_piece, one.pieces)), tuple(map(_seam, one.seams))
        )
        for name, one in reading.by_size.items()
    }  # fmt: skip
    return replace(reading, by_size=sizes, findings=tuple(map(_finding, reading.findings)))


def _piece(piece: WorkedPiece) -> WorkedPiece:
    part_of = mirrored(piece.part_of) if piece.part_of else None
    edges = tuple(map(_edge, piece.edges))
    return replace(
        piece, name=mirrored(piece.name), part_of=part_of, rows=tuple(map(_row, piece.rows)), edges=edges
    )  # fmt: skip


def _row(row: WorkedRow) -> WorkedRow:
    return replace(row, shapings=tuple(map(_shaping, row.shapings)), words=mirrored(row.words))


def _shaping(one: Shaping) -> Shaping:
    return replace(one, edge=OTHER.get(one.edge, one.edge), lean=OTHER.get(one.lean or "", one.lean))


def _edge(edge: Edge) -> Edge:
    return replace(edge, name=_name(edge.name))


def _name(name: EdgeName) -> EdgeName:
    return EdgeName(mirrored(name.piece), re.sub(r"\b(?:left|right)\b", lambda match: _other(match[0]), name.edge))


def _seam(seam: Seam) -> Seam:
    return replace(seam, mate=replace(seam.mate, a=_name(seam.mate.a), b=_name(seam.mate.b)))


def _finding(one: Finding) -> Finding:
    where = one.where
    piece, edge = mirrored(where.piece) if where.piece else None, mirrored(where.edge) if where.edge else None
    return replace(
        one,
        say=mirrored(one.say),
        why=mirrored(one.why),
        attempt=mirrored(one.attempt) if one.attempt else None,
        where=replace(where, piece=piece, edge=edge),
        readings=tuple(map(mirrored, one.readings)) if one.readings else one.readings,
        cures=tuple(map(_cure, one.cures)),
    )


def _cure(cure: Cure) -> Cure:
    edits = (
        Edit(mirrored(edit.fact), mirrored(edit.value) if isinstance(edit.value, str) else edit.value)
        for edit in cure.edits
    )
    return Cure(mirrored(cure.say), tuple(edits))
