"""A flat piece of a garment, whichever craft it came from.

A piece is *planned*, *in hand* or *made*; a made piece is a fact, and its unmade mates follow it.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from lastlook.geometry import Path
from lastlook.piece.edge import Edge


class State(Enum):
    """How far a piece has come."""

    PLANNED = "planned"
    IN_HAND = "in hand"
    MADE = "made"


@dataclass(frozen=True)
class Piece:
    """A flat shape with named edges."""

    name: str
    outline: Path | None
    """Closed, counter-clockwise, in mm, at the seam line; None where no gauge is known."""
    edges: tuple[Edge, ...]
    quantity: int = 1
    mirrored_pair: bool = False
    state: State = State.PLANNED

    def edge(self, name: str) -> Edge | None:
        """Return the edge of that name, None where the piece has none."""
        return next((edge for edge in self.edges if edge.name.edge == name), None)
