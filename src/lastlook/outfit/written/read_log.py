"""What a maker noted beside her needles: sittings with their rows and minutes, and notes pinned to rows."""

from __future__ import annotations

import re
from typing import Any

from lastlook.finding import Finding
from lastlook.outfit.outfit import RowNote, Sitting
from lastlook.outfit.written.table import count, strangers, unread

KEYS = ("piece", "first", "last", "minutes", "day")
LONGEST_MIN = 24 * 60
_SPAN = re.compile(r"(?:(\d+(?:\.\d+)?)\s*h(?:ours?|rs?)?)?\s*(?:(\d+(?:\.\d+)?)\s*(?:m(?:in(?:utes?)?)?)?)?", re.I)


def read_log(entries: Any, path: str, findings: list[Finding]) -> tuple[Sitting, ...]:
    """Return the sittings; one that can't be read is said and left out."""
    if not isinstance(entries, list):
        findings.append(unread(path + "log", "The sittings are not a list.", f"Begin each with [[{path}log]]."))
        return ()
    found = [_sitting(entry, f"{path}log.{place}.", findings) for place, entry in enumerate(entries)]
    return tuple(one for one in found if one is not None)


def read_notes(entries: Any, path: str, findings: list[Finding]) -> tuple[RowNote, ...]:
    """Return the notes pinned to rows; one without a row is said and left out."""
    out = []
    for place, entry in enumerate(entries if isinstance(entries, list) else []):
        at = f"{path}notes.{place}."
        facts = entry if isinstance(entry, dict) else {}
        findings += strangers(facts, ("piece", "row", "note"), at)
        row = count(facts, "row", at, findings)
        if row is None:
            findings.append(unread(at + "row", "A note does not say its row.", "Write row = 42."))
            continue
        out.append(RowNote(str(facts.get("piece", "")), row, str(facts.get("note", ""))))
    return tuple(out)


def _sitting(entry: Any, path: str, findings: list[Finding]) -> Sitting | None:
    if not isinstance(entry, dict):
        findings.append(unread(path.rstrip("."), "A sitting is not a table.", "Give its piece, first, last, minutes."))
        return None
    findings += strangers(entry, KEYS, path)
    first, last = count(entry, "first", path, findings), count(entry, "last", path, findings)
    minutes = minutes_of(str(entry.get("minutes", "")))
    if minutes is None:
        said = f"“{entry.get('minutes', '')}” is no span of time for a sitting."
        findings.append(unread(path + "minutes", said, "Write it like 40 or 1 h 20 min."))
        return None
    if first is None or last is None or not 1 <= first <= last:
        said = "The rows of a sitting can't be read."
        findings.append(unread(path + "first", said, "Write first = 1 and last = 12."))
        return None
    return Sitting(str(entry.get("piece", "")), first, last, minutes, str(entry.get("day", "")))


def minutes_of(text: str) -> float | None:
    """Return a span of time in minutes, None where it is none or longer than a day.

    >>> minutes_of("1 h 20 min"), minutes_of("45"), minutes_of("2 hours"), minutes_of("soon")
    (80.0, 45.0, 120.0, None)
    """
    match = _SPAN.fullmatch(text.strip())
    if match is None or not any(match.groups()):
        return None
    minutes = float(match[1] or 0) * 60 + float(match[2] or 0)
    return minutes if 0 < minutes <= LONGEST_MIN else None
