"""The trade's notation as canonical words: its numbers, sizes, columns, colours and abbreviations."""

from lastlook.leaflet.trade.canon import Canon, Lexeme, canon
from lastlook.leaflet.trade.sizelist import Figure, read_values, write_values
from lastlook.leaflet.trade.tokens import Token, number, tokens
from lastlook.leaflet.trade.vocabulary import Vocabulary, vocabulary

__all__ = [
    "Canon",
    "Figure",
    "Lexeme",
    "Token",
    "Vocabulary",
    "canon",
    "number",
    "read_values",
    "tokens",
    "vocabulary",
    "write_values",
]
