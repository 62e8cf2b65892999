"""Photographs as the outfit's document keeps them: the file in the folder, what it is of, when it was taken."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from lastlook.finding import Finding
from lastlook.outfit.written.document import Document
from lastlook.outfit.written.table import count, strangers, unread

KEYS = ("file", "of", "toile", "note", "day")


@dataclass(frozen=True)
class Photograph:
    """One photograph."""

    file: str
    of: str = ""
    """The garment, the yarn or the cloth that it is of; nothing where it is of the whole outfit."""
    toile: int | None = None
    """Which mock-up of the garment, from 1."""
    note: str = ""
    day: str = ""


def read_photographs(entries: Any, folder: Document, findings: list[Finding]) -> tuple[Photograph, ...]:
    """Return the photographs; one whose file is not in the folder is said and left out."""
    if not isinstance(entries, list):
        findings.append(unread("photographs", "The photographs are not a list.", "Begin each with [[photographs]]."))
        return ()
    out = []
    for spot, entry in enumerate(entries):
        path = f"photographs.{spot}."
        facts = entry if isinstance(entry, dict) else {}
        findings += strangers(facts, KEYS, path)
        file = str(facts.get("file", ""))
        if not folder.has(file):
            said = f"The photograph “{file}” is not in the folder."
            findings.append(unread(path + "file", said, "Put it there, or take this entry away."))
            continue
        words = [str(facts.get(key, "")) for key in ("of", "note", "day")]
        out.append(Photograph(file, words[0], count(facts, "toile", path, findings), words[1], words[2]))
    return tuple(out)
