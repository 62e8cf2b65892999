"""Put the small files of `changes/` together into one changelog, newest version first, and print it.

A file is `changes/NAME.md`, or `changes/VERSION/NAME.md` once it was released.
"""

from __future__ import annotations

import sys
from pathlib import Path

CHANGES = Path(__file__).resolve().parent.parent / "changes"


def changelog(folder: Path) -> str:
    """Return the changelog as Markdown."""
    lines = ["# Changes"]
    released = sorted((one for one in folder.iterdir() if one.is_dir()), key=_version, reverse=True)
    for place in [folder, *released]:
        notes = sorted(place.glob("*.md"))
        if notes:
            lines += ["", f"## {'Not released yet' if place == folder else place.name}", ""]
            lines += [f"- {' '.join(note.read_text(encoding='utf-8').split())}" for note in notes]
    return "\n".join(lines) + "\n"


def _version(folder: Path) -> tuple[int, ...]:
    return tuple(int(part) for part in folder.name.split(".") if part.isdigit())


if __name__ == "__main__":
    sys.stdout.write(changelog(CHANGES))
