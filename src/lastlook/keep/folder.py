"""An outfit as a folder on the disk: read in, written out, the same bytes both ways.

Hidden files (their name starts with a dot) are somebody else's and are left alone, and so are finished sheets: what
is printed follows from the outfit and is no part of it.
"""

from __future__ import annotations

import os
import threading
from pathlib import Path

from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit import MAIN, Document, document, is_safe

MOST_FILES = 500
MOST_BYTES = 64 * 1024 * 1024
"""The same roof as a mailed outfit has."""
SHEETS = "sheets"
"""The sub-folder that finished sheets lie in."""
HALF_WRITTEN = ".lastlook-half-written"


def read_folder(folder: Path) -> Document | Finding:
    """Return the document in a folder, or a finding that says why there is none."""
    if not (folder / MAIN).is_file():
        return _refusal(f"{folder.name or folder} is not an outfit.", f"There is no {MAIN} in it.")
    files: dict[str, bytes] = {}
    total = 0
    try:
        for path in _members(folder):
            name = path.relative_to(folder).as_posix()
            if not is_safe(name):
                return _refusal(
                    f"{folder.name} was not taken in: one of its files has a name that can't be mailed.",
                    f"It is called “{name}”.",
                )
            total += path.stat().st_size
            if total > MOST_BYTES or len(files) >= MOST_FILES:
                return _refusal(
                    f"{folder.name} was not taken in: it holds more than an outfit does.",
                    f"An outfit has at most {MOST_FILES} files and {MOST_BYTES // 2**20} MB.",
                )
            files[name] = path.read_bytes()
    except OSError as trouble:
        return _refusal(f"{folder.name} can't be read.", f"{trouble}.")
    return document(files)


def write_folder(holding: Document, folder: Path, before: Document | None = None) -> None:
    """Bring a folder up to a document; `before` is what it held, of which anything no longer held goes.

    Each file is whole at every moment: it is written beside its place and moved there.
    """
    root = folder.resolve()
    root.mkdir(parents=True, exist_ok=True)
    for name, data in holding.files:
        spot = _inside(root, name)
        if not spot.is_file() or spot.read_bytes() != data:
            _put(spot, data)
    wanted = {name for name, _ in holding.files}
    for name, _ in before.files if before else ():
        if name not in wanted:
            _inside(root, name).unlink(missing_ok=True)


def _members(folder: Path) -> list[Path]:
    out = []
    for here, folders, names in os.walk(folder):
        folders[:] = sorted(
            name for name in folders if not name.startswith(".") and Path(here, name) != folder / SHEETS
        )
        spots = (Path(here) / name for name in sorted(names) if not name.startswith("."))
        out += [spot for spot in spots if spot.is_file() and not spot.is_symlink()]
    return out


def _inside(root: Path, name: str) -> Path:
    """Return the file's place, which lies in the folder even where a link stands in the way."""
    spot = root / name
    if not is_safe(name) or not spot.parent.resolve().is_relative_to(root):
        raise ValueError(f"{name} would land outside the folder")
    return spot


def _put(spot: Path, data: bytes) -> None:
    spot.parent.mkdir(parents=True, exist_ok=True)
    half = spot.with_name(f"{HALF_WRITTEN}-{os.getpid()}-{threading.get_ident()}")
    with half.open("wb") as out:
        out.write(data)
        out.flush()
        os.fsync(out.fileno())
    half.replace(spot)


def _refusal(say: str, why: str) -> Finding:
    attempt = f"Name the folder (or its zip) that has {MAIN} in it."
    return Finding("not-an-outfit", Certainty.PROVEN, say, why, attempt, where=Where(fact=MAIN))
