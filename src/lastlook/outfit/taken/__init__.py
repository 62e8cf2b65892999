"""Paper pieces taken in from elsewhere: their file read, their edges named, made into pieces of a garment."""

from lastlook.outfit.taken.pieces import FILES, outline_of, shapes, taken_in
from lastlook.outfit.taken.place import runs_named

__all__ = ["FILES", "outline_of", "runs_named", "shapes", "taken_in"]
