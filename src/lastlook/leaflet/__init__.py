"""A printed knitting pattern as text, and the instructions it holds, each with its words."""

from lastlook.leaflet import instruction
from lastlook.leaflet.leaflet import Leaflet, Part
from lastlook.leaflet.read import numbers, read, reread
from lastlook.leaflet.repairs import Repair, Repaired, repair
from lastlook.leaflet.trade.canon import Canon, Lexeme, canon
from lastlook.leaflet.trade.sizelist import Figure, read_values, write_values
from lastlook.leaflet.trade.tokens import Token, tokens
from lastlook.leaflet.trade.vocabulary import vocabulary

__all__ = [
    "Canon",
    "Figure",
    "Leaflet",
    "Lexeme",
    "Part",
    "Repair",
    "Repaired",
    "Token",
    "canon",
    "instruction",
    "numbers",
    "read",
    "read_values",
    "repair",
    "reread",
    "tokens",
    "vocabulary",
    "write_values",
]  # fmt: skip
