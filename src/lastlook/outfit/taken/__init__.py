"""Paper pieces taken in from elsewhere: their file read, their edges named, made into pieces of a garment."""

from lastlook.outfit.taken.files import Told, garment_of, with_envelope
from lastlook.outfit.taken.pieces import FILES, outline_of, shapes, taken_in
from lastlook.outfit.taken.place import runs_named
from lastlook.outfit.taken.words import read_envelope_words, read_piece_words

__all__ = [
    "FILES",
    "Told",
    "garment_of",
    "outline_of",
    "read_envelope_words",
    "read_piece_words",
    "runs_named",
    "shapes",
    "taken_in",
    "with_envelope",
]
