"""What the commands on a leaflet share: its text fetched, and the one size that is meant."""

from __future__ import annotations

import sys
from pathlib import Path

from lastlook.knit import LeafletReading, SizeReading

MOST_BYTES = 2_000_000


def leaflet_at(place: str) -> str | None:
    """Return the text of a leaflet; None, with one clear line on standard error, where there is none to read."""
    path = Path(place)
    try:
        raw = path.read_bytes()
    except OSError:
        print(f"{place}: there is no such file, or it can't be opened. Give a text file's path.", file=sys.stderr)
        return None
    why = None
    if not raw.strip():
        why = "the file is empty. Type or paste the leaflet into it."
    elif len(raw) > MOST_BYTES:
        why = "the file is over 2 MB, longer than any leaflet. Keep the leaflet alone."
    elif b"\0" in raw:
        why = "this is not a text file. Save the leaflet as plain text."
    if why:
        print(f"{place}: {why}", file=sys.stderr)
        return None
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return raw.decode("cp1252", errors="replace")


def chosen_size(reading: LeafletReading, wanted: str | None) -> SizeReading | None:
    """Return the size asked for, or the only one; None, with one clear line, where it is not clear which."""
    if wanted is None and len(reading.by_size) == 1:
        return next(iter(reading.by_size.values()))
    if wanted is not None and wanted in reading.by_size:
        return reading.by_size[wanted]
    known = ", ".join(reading.sizes) or "none that could be read"
    lead = f"The leaflet has no size “{wanted}”" if wanted else "The leaflet has several sizes"
    print(f"{lead}; its sizes are: {known}. Choose one with --size.", file=sys.stderr)
    return None
