"""What the commands on a leaflet share: its text fetched, and the one size that is meant."""

from __future__ import annotations

import json
import sys
from pathlib import Path

from lastlook import finding
from lastlook.finding import Certainty, Finding
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


def size_wanted(reading: LeafletReading, wanted: str | None) -> Finding | None:
    """Return the question which of several sizes is meant; None where one was named or there is but one."""
    if wanted is not None or len(reading.by_size) < 2:
        return None
    return Finding(
        "size-unnamed",
        Certainty.UNKNOWN,
        f"Which of the sizes {', '.join(reading.sizes)} is meant is not known yet.",
        "Each has counts of its own.",
        f"Choose one with --size, like --size {reading.sizes[0]}.",
        asks=True,
        readings=tuple(reading.sizes),
    )


def ask(question: Finding, as_json: bool) -> int:
    """Put a question to the maker, and return the exit status of something that stands open."""
    if as_json:
        print(json.dumps({"findings": [finding.as_json(question)]}, ensure_ascii=False, indent=1))
    else:
        print(finding.say(question))
    return 1
