"""What is to come out of the cloth: paper pieces, how often, and what each allows.

A *copy* is one piece of cloth cut by a paper piece. A *pieced* copy is cut in *parts* that are seamed together.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.lay.cloth import Cloth, Outline, Point


@dataclass(frozen=True)
class Match:
    """The point of a piece that lies at the same place of the repeat as those of its group."""

    group: str
    point: Point


@dataclass(frozen=True)
class Pieced:
    """In how many parts a copy may be cut at most, and the seam that each side of a joint adds."""

    parts: int
    seam_mm: float


@dataclass(frozen=True)
class Wanted:
    """One paper piece: its cutting line counter-clockwise, how many copies, and how it may lie."""

    id: str
    outline: Outline
    quantity: int = 1
    mirrored_pair: bool = False
    """Whether half of the copies are mirrored."""
    on_fold: tuple[Point, Point] | None = None
    """The edge of a half piece that lies on the fold; the copy is the opened piece."""
    grain_deg: float | None = 0.0
    """Direction of the grain in the piece's own coordinates; None where it may lie any way."""
    tilt_deg: float = 0.0
    may_turn: bool = False
    """Whether it may lie upside down."""
    angles_deg: tuple[float, ...] | None = None
    """The turns that are allowed, instead of grain, tilt and `may_turn`."""
    match: Match | None = None
    pieced: Pieced | None = None
    flaw_free: tuple[Outline, ...] | None = None
    """The parts of the piece that a flaw must not touch; None for all of it, () for a piece nobody sees."""


@dataclass(frozen=True)
class Problem:
    """A cloth and everything that is to come out of it."""

    cloth: Cloth
    pieces: tuple[Wanted, ...]

    def piece(self, name: str) -> Wanted | None:
        """Return the piece of that name, None where there is none."""
        return next((piece for piece in self.pieces if piece.id == name), None)
