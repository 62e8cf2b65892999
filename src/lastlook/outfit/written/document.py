"""An outfit as a folder that a person can read: `outfit.toml`, leaflets, pieces, lays, photographs.

A *document* is the folder's files as they are; it is the only truth, and everything else is derived from
it. File names are relative, with forward slashes, and never climb out of the folder.
"""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass

from lastlook.finding import Certainty, Finding, Where

MAIN = "outfit.toml"
MOST_BYTES = 64 * 1024 * 1024
MOST_FILES = 500
_SAFE = re.compile(r"(?!/)(?!.*(^|/)\.\.?(/|$))[^\\:\0]+")
_STILL = (1980, 1, 1, 0, 0, 0)
"""The date every member of a mailed folder carries, so that the same outfit is the same file."""


@dataclass(frozen=True)
class Document:
    """The files of one outfit, by name, in the order of their names."""

    files: tuple[tuple[str, bytes], ...]

    def text(self, name: str) -> str | None:
        """Return a text file, None where there is none or it is not UTF-8."""
        data = dict(self.files).get(name)
        try:
            return None if data is None else data.decode("utf-8-sig")
        except UnicodeDecodeError:
            return None

    def has(self, name: str) -> bool:
        """Whether there is a file of that name."""
        return any(name == known for known, _ in self.files)

    def with_file(self, name: str, data: bytes) -> Document:
        """Return the document with one file new or replaced."""
        return document({**dict(self.files), name: data})

    def without_file(self, name: str) -> Document:
        """Return the document without one file."""
        return document({known: data for known, data in self.files if known != name})


def document(files: Mapping[str, bytes]) -> Document:
    """Return the document of these files."""
    return Document(tuple(sorted(files.items())))


def pack(folder: Document) -> bytes:
    """Return the folder as one zip file to mail; the same folder gives the same bytes."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in folder.files:
            archive.writestr(zipfile.ZipInfo(name, _STILL), data, zipfile.ZIP_DEFLATED)
    return out.getvalue()


def unpack(data: bytes) -> Document | Finding:
    """Return the document inside a zip file, or a finding that says why it is none."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            return _members(archive)
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError, ValueError):
        return _refusal("The file is not a zip of an outfit folder.", "It can't be opened as a zip file.")


def is_safe(name: str) -> bool:
    """Whether a file name stays inside the folder."""
    return bool(_SAFE.fullmatch(name)) and len(name) < 200


def _members(archive: zipfile.ZipFile) -> Document | Finding:
    members = [member for member in archive.infolist() if not member.is_dir()]
    for member in members:
        if not is_safe(member.filename):
            return _refusal(
                "The zip was not taken in: one of its files would land outside the outfit's folder.",
                f"It is called “{member.filename}”.",
            )
    if len(members) > MOST_FILES or sum(member.file_size for member in members) > MOST_BYTES:
        return _refusal(
            "The zip was not taken in: it holds more than an outfit does.",
            f"An outfit has at most {MOST_FILES} files and {MOST_BYTES // 2**20} MB.",
        )
    files = {member.filename: archive.read(member) for member in members}
    roots = {name.split("/")[0] for name in files}
    if MAIN not in files and len(roots) == 1 and f"{next(iter(roots))}/{MAIN}" in files:
        files = {name.split("/", 1)[1]: data for name, data in files.items()}
    if MAIN not in files:
        return _refusal("The zip is not an outfit.", f"There is no {MAIN} in it.")
    return document(files)


def _refusal(say: str, why: str) -> Finding:
    attempt = "Zip the outfit's folder as it is, with outfit.toml in it."
    return Finding("not-an-outfit", Certainty.PROVEN, say, why, attempt, where=Where(fact=MAIN))
