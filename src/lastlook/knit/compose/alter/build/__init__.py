"""How a garment is built: in pieces and sewn, or in the round up to the underarm."""

from lastlook.knit.compose.alter.build.flat import in_pieces
from lastlook.knit.compose.alter.build.rounds import in_rounds

__all__ = ["BUILDS", "in_pieces", "in_rounds"]

BUILDS = ("round", "pieces")
