"""A folder kept in step with the outfit on the shelf, both ways.

What a person changes in the folder becomes a revision; what changes on the screens is written to the folder.
A file is *by hand* if it is neither as the folder was last brought up to nor as the outfit stands; so a folder
that was left half brought up (the machine stopped in between) is finished, not mistaken for somebody's work.
"""

from __future__ import annotations

from pathlib import Path

from lastlook.finding import Finding
from lastlook.keep.folder import read_folder, write_folder
from lastlook.keep.shelf import Kept, Shelf
from lastlook.outfit import Document

BY_HAND = "Changed by hand in the folder."


def follow(shelf: Shelf, kept: Kept, when: str) -> Finding | None:
    """Take in what was changed by hand, then bring the folder up to where the outfit stands.

    A folder that can't be read at present is left alone, and the finding says why.
    """
    if kept.folder is None:
        return None
    folder = Path(kept.folder)
    stands, wrote = shelf.stands_at(kept.id), shelf.wrote(kept.id)
    now = shelf.document_at(stands.id)
    last = shelf.document_at(wrote) if wrote is not None else now
    found = read_folder(folder)
    if isinstance(found, Finding):
        return found
    if found != now and _is_by_hand(found, last, now):
        shelf.keep(kept.id, found, BY_HAND, when)
        shelf.has_written(kept.id, shelf.stands_at(kept.id).id)
    elif found != now or wrote != stands.id:
        write_folder(now, folder, found)
        shelf.has_written(kept.id, stands.id)
    return None


def _is_by_hand(found: Document, last: Document, now: Document) -> bool:
    """Whether any file is one that the program never wrote there."""
    before, after = dict(last.files), dict(now.files)
    have = dict(found.files)
    return any(have.get(name) not in (before.get(name), after.get(name)) for name in {*have, *before, *after})
