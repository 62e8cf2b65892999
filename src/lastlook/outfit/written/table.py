"""Tables of facts as they stand in the outfit's document, read key by key; what nobody reads is said."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from lastlook.finding import Certainty, Finding, Where
from lastlook.quantity import Units, Unread, read_length, read_weight

Table = Mapping[str, Any]


def table(main: Table, key: str, findings: list[Finding], path: str = "") -> Table:
    """Return the table under a key, an empty one where there is none; `path` is where `main` stands."""
    value = main.get(key, {})
    if isinstance(value, dict):
        return value
    said = f"“{key}” is {value!r}, not a table of facts."
    findings.append(unread(path + key, said, f"Begin it with [{path}{key}]."))
    return {}


def strangers(facts: Table, known: tuple[str, ...], path: str) -> tuple[Finding, ...]:
    """Return a finding for every key that nobody reads."""
    return tuple(
        Finding(
            "fact-unknown",
            Certainty.PROVEN,
            f"“{key}” is nothing that an outfit knows" + (f" under {path.rstrip('.')}." if path else "."),
            "A misspelt name would be passed over, and its fact missed.",
            f"Use one of: {', '.join(known)}.",
            where=Where(fact=f"{path}{key}"),
        )
        for key in facts
        if key not in known
    )


def unread(fact: str, why: str, attempt: str) -> Finding:
    """Return the finding that a fact can't be taken as it stands."""
    return Finding(
        "fact-unread",
        Certainty.PROVEN,
        why,
        "Nothing is assumed in its place.",
        attempt,
        where=Where(fact=fact),
    )


def one_of(facts: Table, key: str, known: tuple[str, ...], path: str, findings: list[Finding]) -> str:
    """Return a word that is one of those known, the first of them where none is given."""
    value = str(facts.get(key, known[0]))
    if value in known:
        return value
    said = f"The {key} “{value}” is none of {', '.join(known)}."
    findings.append(unread(path + key, said, f"Write {' or '.join(known)}."))
    return known[0]


def length_mm(facts: Table, key: str, units: Units, path: str, findings: list[Finding]) -> float | None:
    """Return a length in mm, None where none is given or it can't be read."""
    return _amount(facts, key, read_length(str(facts.get(key, "")), units), path, findings)


def grams(facts: Table, key: str, path: str, findings: list[Finding]) -> float | None:
    """Return a weight in g, None where none is given or it can't be read."""
    return _amount(facts, key, read_weight(str(facts.get(key, ""))), path, findings)


def count(facts: Table, key: str, path: str, findings: list[Finding]) -> int | None:
    """Return a whole number from 0, None where none is given or it can't be read."""
    value = facts.get(key)
    if isinstance(value, str) and value.isascii() and value.isdigit() and len(value) < 10:
        value = int(value)
    if value is None or (isinstance(value, int) and not isinstance(value, bool) and value >= 0):
        return value
    findings.append(unread(path + key, f"“{value}” is no count.", "Write a whole number."))
    return None


def _amount(facts: Table, key: str, value: float | Unread, path: str, findings: list[Finding]) -> float | None:
    if key not in facts:
        return None
    if isinstance(value, Unread):
        findings.append(unread(path + key, value.why, value.attempt))
        return None
    return value
