"""An outfit: the whole undertaking for one wearer out of one stock, as values.

A *knitting* is a leaflet to be knitted, a *sewing* a garment to be drafted and cut. A *made* piece is what
really came off the needles or the machine; fact beats plan.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from lastlook import paper
from lastlook.finding import Finding
from lastlook.outfit.written.document import Document
from lastlook.outfit.written.read_cuts import CutMade
from lastlook.outfit.written.read_photographs import Photograph
from lastlook.outfit.written.read_taken import TakenPiece
from lastlook.paper import fit, make
from lastlook.paper.toile import Toile
from lastlook.quantity import Units
from lastlook.stock import Cloth, Notion, Swatch, Yarn
from lastlook.wearer import Wearer


@dataclass(frozen=True)
class Manner:
    """How the maker speaks and works."""

    units: Units = Units.CM
    english: str = "US"
    hand: str = "right"


@dataclass(frozen=True)
class Ease:
    """How much more than the body a garment is to measure at one level, least and most, in mm; most may be infinite."""

    low_mm: float
    high_mm: float

    @property
    def is_open(self) -> bool:
        """Whether there is no most: any amount more is welcome."""
        return math.isinf(self.high_mm)


@dataclass(frozen=True)
class Sitting:
    """Some rows of a piece, and the minutes that they took."""

    piece: str
    first: int
    last: int
    """The last row that was worked, the first with it."""
    minutes: float
    day: str = ""


@dataclass(frozen=True)
class RowNote:
    """A note that the maker pinned to a row."""

    piece: str
    row: int
    note: str


@dataclass(frozen=True)
class Knitting:
    """One garment to be knitted from a leaflet."""

    name: str
    leaflet: str
    """The leaflet's file in the outfit's folder."""
    size: str | None
    yarn: str | None = None
    swatch: str | None = None
    readings: tuple[tuple[str, int], ...] = ()
    corrections: tuple[tuple[str, str], ...] = ()
    ease: tuple[tuple[str, Ease], ...] = ()
    """By level: 'bust', 'upper arm'."""
    longer: tuple[tuple[str, float], ...] = ()
    """How much longer than printed, in mm, at the 'body', the 'sleeve' or the 'armhole'; shorter is below nothing."""
    wider: tuple[tuple[str, float], ...] = ()
    """How much wider than printed, in mm, at the 'upper-arm' or the 'bust'."""
    place: tuple[tuple[str, int], ...] = ()
    """Where the hands are: how many rows of each piece are done."""
    log: tuple[Sitting, ...] = ()
    """The sittings that were noted, in their order."""
    notes: tuple[RowNote, ...] = ()
    """Notes pinned to rows."""

    def rows_done(self, piece: str) -> int:
        """Return how many rows of a piece are done."""
        return dict(self.place).get(piece, 0)


@dataclass(frozen=True)
class Sewing:
    """One garment to be drafted, altered and cut."""

    name: str
    kind: str
    cloth: str | None = None
    fold: str = "none"
    options: tuple[tuple[str, float], ...] = ()
    """What the draft is told, lengths in mm."""
    alterations: tuple[paper.Alteration, ...] = ()
    eases: float | None = None
    """Share by which a test strip of this cloth could be eased; None where none was sewn."""
    ease: tuple[tuple[str, Ease], ...] = ()
    """Ease wanted by level: 'waist', 'high hip', 'hip', 'knee', 'hem'."""
    opening: fit.Opening | None = None
    elastic: fit.Elastic | None = None
    printed: fit.Printed | None = None
    """The sizes of the pattern that it comes from."""
    envelope: make.Envelope | None = None
    """What the envelope of a second-hand pattern says."""
    taken: tuple[TakenPiece, ...] = ()
    """Pieces that come from elsewhere; where there are any, nothing is drafted."""
    toiles: tuple[Toile, ...] = ()
    """Mock-ups that were put on, with what was seen."""
    lay: str | None = None
    """The file of the lay in the outfit's folder."""
    cut: tuple[CutMade, ...] = ()
    """Pieces that were cut out; where they lie is a fact."""


@dataclass(frozen=True)
class MadePiece:
    """What really came off: whatever was not counted or measured is None."""

    garment: str
    piece: str
    rows: int | None = None
    rows_to_underarm: int | None = None
    cast_on: int | None = None
    stitches: int | None = None
    """Stitches at the end."""
    width_mm: float | None = None
    length_mm: float | None = None
    grams: float | None = None


def made_of(made: tuple[MadePiece, ...], name: str) -> MadePiece | None:
    """Return the made piece of that name, whichever way it is capitalised."""
    return next((one for one in made if one.piece.lower() == name.lower()), None)


@dataclass(frozen=True)
class Outfit:
    """Everything that was planned, is at hand and was made, with what in it could not be taken."""

    document: Document
    name: str
    manner: Manner
    wearer: Wearer
    knittings: tuple[Knitting, ...] = ()
    sewings: tuple[Sewing, ...] = ()
    yarns: tuple[Yarn, ...] = ()
    swatches: tuple[Swatch, ...] = ()
    cloths: tuple[Cloth, ...] = ()
    notions: tuple[Notion, ...] = ()
    made: tuple[MadePiece, ...] = ()
    photographs: tuple[Photograph, ...] = ()
    again: str = ""
    """What the maker would do again, and what not, in her own words."""
    findings: tuple[Finding, ...] = ()

    def yarn(self, name: str | None) -> Yarn | None:
        """Return the yarn lot of that name, None where there is none."""
        return next((one for one in self.yarns if one.name == name), None)

    def swatch(self, name: str | None) -> Swatch | None:
        """Return the swatch of that name, None where there is none."""
        return next((one for one in self.swatches if one.name == name), None)

    def cloth(self, name: str | None) -> Cloth | None:
        """Return the cloth of that name, None where there is none."""
        return next((one for one in self.cloths if one.name == name), None)
