"""A flat piece with named edges, and mates: one model for both crafts."""

from lastlook.piece.edge import Edge, EdgeName, Unit
from lastlook.piece.mate import Mate
from lastlook.piece.piece import Piece, State
from lastlook.piece.seam import Meets, Seam, walk

__all__ = ["Edge", "EdgeName", "Mate", "Meets", "Piece", "Seam", "State", "Unit", "walk"]
