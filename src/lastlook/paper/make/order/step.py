"""One step of the order of work, and what has to be known of a skirt to order its making."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.paper.drafted import Drafted
from lastlook.paper.fit import Elastic, Opening
from lastlook.paper.paper_piece import PaperPiece
from lastlook.quantity import Units, write_length


@dataclass(frozen=True)
class Step:
    """One step; `last_look` is what can't be taken back after it."""

    do: str
    why: str = ""
    last_look: str | None = None
    """'cut', 'sew up', 'press', 'trim' or 'sewn buttonhole'."""
    piece: str | None = None
    care: str = ""
    """What to mind, for hands and cloth."""


@dataclass(frozen=True)
class Stage:
    """Steps that belong together."""

    name: str
    steps: tuple[Step, ...]


@dataclass(frozen=True)
class Making:
    """A skirt that is to be made: its pieces, its cloth, how it opens, for whom."""

    drafted: Drafted
    fibre: str = ""
    opening: Opening | None = None
    elastic: Elastic | None = None
    shrinks: bool | None = None
    """Whether the cloth still shrinks; None where that is not known."""
    units: Units = Units.CM
    child_mm: float = 0.0
    """A child's height in mm, 0 for a grown wearer."""

    @property
    def shell(self) -> tuple[PaperPiece, ...]:
        """Return the pieces that go round the body."""
        return tuple(piece for piece in self.drafted.pieces if piece.role == "skirt")

    @property
    def band(self) -> PaperPiece | None:
        """Return the waistband, None where the waist is faced."""
        return next((piece for piece in self.drafted.pieces if piece.role == "band"), None)

    def parts(self, word: str) -> tuple[PaperPiece, ...]:
        """Return the smaller pieces whose name has a word in it: 'lining', 'facing', 'pocket'."""
        return tuple(piece for piece in self.drafted.pieces if word in piece.name.lower())

    def shown(self, mm: float) -> str:
        """Return a length as the maker writes it."""
        return write_length(mm, self.units)
