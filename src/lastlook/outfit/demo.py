"""The demo outfit: an invented choir singer of 1951, her wool, her cloth and a leaflet for somebody else."""

from __future__ import annotations

from importlib import resources
from importlib.abc import Traversable

from lastlook.outfit.written.document import Document, document


def demo() -> Document:
    """Return the demo outfit as it stands before anything was put right."""
    return document(dict(_files(resources.files("lastlook.outfit") / "demo_outfit", "")))


def _files(folder: Traversable, prefix: str) -> list[tuple[str, bytes]]:
    out = []
    for entry in folder.iterdir():
        if entry.is_dir():
            out += _files(entry, f"{prefix}{entry.name}/")
        else:
            out.append((prefix + entry.name, entry.read_bytes()))
    return out
