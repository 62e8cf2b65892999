"""A toile as the outfit's document keeps it, read; what can't be read is said and left out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.toile.observed import PLACES, Observation, Seen, Toile
from lastlook.quantity import Unread, read_length

PARTS = ("all round", "front", "back", "left side", "right side")


def read_toile(table: Mapping[str, Any], number: int) -> tuple[Toile, tuple[Finding, ...]]:
    """Return the toile that a table says, and what in it can't be read."""
    findings: list[Finding] = []
    seen: list[Observation] = []
    for entry in table.get("seen", []):
        read = _observation(entry if isinstance(entry, Mapping) else {})
        if isinstance(read, Finding):
            findings.append(read)
        else:
            seen.append(read)
    sewn_to = str(table.get("sewn_to", "hem"))
    if sewn_to not in PLACES:
        findings.append(
            _unread(f"“{sewn_to}” is no place that a toile is sewn to.", "Write " + ", ".join(PLACES) + ".")
        )
        sewn_to = "hem"
    photographs = tuple(str(one) for one in table.get("photographs", []))
    same = table.get("same_cloth") is True
    return Toile(number, str(table.get("cloth", "")), sewn_to, tuple(seen), photographs, same), tuple(findings)


def _observation(entry: Mapping[str, Any]) -> Observation | Finding:
    word, at, part = str(entry.get("what", "")), str(entry.get("at", "")), str(entry.get("part", "all round"))
    seen = next((one for one in Seen if one.value == word), None)
    if seen is None:
        return _unread(
            f"“{word}” is nothing that a toile shows.", "Write one of: " + ", ".join(one.value for one in Seen) + "."
        )
    if at not in PLACES or part not in PARTS:
        return _unread(
            f"“{at}”, “{part}” is no place on a skirt.", f"Say at: {', '.join(PLACES)}; part: {', '.join(PARTS)}."
        )
    lengths: dict[str, float] = {}
    for key in ("amount", "pinned", "off_its_line"):
        value = _mm(entry.get(key))
        if isinstance(value, Unread):
            return _unread(value.why, value.attempt)
        lengths[key] = value
    amount = lengths["amount"] or 2 * lengths["pinned"]
    return Observation(seen, at, part, amount, entry.get("on_purpose") is True, lengths["off_its_line"])


def _mm(value: Any) -> float | Unread:
    if value is None:
        return 0.0
    if isinstance(value, int | float) and not isinstance(value, bool):
        return abs(float(value))
    return read_length(str(value))


def _unread(say: str, attempt: str) -> Finding:
    return Finding("toile-unread", Certainty.PROVEN, say, "It was left out.", attempt, where=Where(fact="toiles"))
