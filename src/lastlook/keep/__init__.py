"""The outfits kept on this disk, every revision of them.

A *shelf* is one database file that holds outfits. A *revision* is a whole document with a sentence that says what
changed; it is never altered. An outfit *stands* at one of its revisions: undo and redo move it.
"""

from lastlook.keep.folder import read_folder, write_folder
from lastlook.keep.follow import follow
from lastlook.keep.open import open_shelf
from lastlook.keep.revision import Revision
from lastlook.keep.shelf import Kept, Shelf, Stale
from lastlook.keep.took import receive, take_in

__all__ = [
    "Kept",
    "Revision",
    "Shelf",
    "Stale",
    "follow",
    "open_shelf",
    "read_folder",
    "receive",
    "take_in",
    "write_folder",
]
