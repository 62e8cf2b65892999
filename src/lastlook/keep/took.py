"""An outfit taken on to the shelf, from a folder that is kept in step or from a zip that was mailed."""

from __future__ import annotations

from pathlib import Path

from lastlook.finding import Certainty, Finding
from lastlook.keep.folder import read_folder
from lastlook.keep.follow import follow
from lastlook.keep.shelf import Kept, Shelf
from lastlook.outfit import unpack


def take_in(shelf: Shelf, source: Path, when: str) -> Kept | Finding:
    """Put the outfit in a folder or a zip file on the shelf; a folder known already is followed."""
    if source.is_dir():
        return _folder(shelf, source.resolve(), when)
    try:
        data = source.read_bytes()
    except OSError as trouble:
        return Finding(
            "not-an-outfit",
            Certainty.PROVEN,
            f"There is no outfit at {source}.",
            f"{trouble.strerror}.",
            "Name an outfit's folder, or the zip of one.",
        )
    return receive(shelf, source.stem, data, when)


def receive(shelf: Shelf, name: str, data: bytes, when: str) -> Kept | Finding:
    """Put a mailed outfit on the shelf."""
    found = unpack(data)
    return found if isinstance(found, Finding) else shelf.start(name, None, found, when)


def _folder(shelf: Shelf, folder: Path, when: str) -> Kept | Finding:
    known = shelf.outfit_of(str(folder))
    if known:
        return follow(shelf, known, when) or known
    found = read_folder(folder)
    if isinstance(found, Finding):
        return found
    kept = shelf.start(folder.name, str(folder), found, when)
    shelf.has_written(kept.id, shelf.stands_at(kept.id).id)
    return kept
