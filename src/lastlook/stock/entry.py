"""One entry of the stock as it is typed: a table of words, read key by key, with what can't be taken.

Every key is read once; what is left unread at the end is a key that nobody knows.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from lastlook.finding import Certainty, Finding, Where
from lastlook.quantity import Missing, Units, Unread, read_length, read_weight
from lastlook.quantity.length import read_number

TRUE_WORDS = frozenset({"yes", "true", "1", "so"})
FALSE_WORDS = frozenset({"no", "false", "0", "not"})


@dataclass
class Entry:
    """A table that is being read; `findings` fills as it goes."""

    kind: str
    """What it describes: 'yarn', 'cloth'."""
    name: str
    table: Mapping[str, object]
    known: set[str] = field(default_factory=set)
    findings: list[Finding] = field(default_factory=list)

    @property
    def fact(self) -> str:
        """Return the dotted path of this entry in the outfit's document."""
        return f"stock.{self.kind}.{self.name}"

    def text(self, key: str, otherwise: str = "") -> str:
        """Return what is typed under a key."""
        self.known.add(key)
        value = self.table.get(key)
        return otherwise if value is None else str(value).strip()

    def length_mm(self, key: str, most_mm: float, bare: Units | None = None) -> float | None:
        """Return a length above nothing and up to `most_mm`."""
        return self._amount(key, most_mm, lambda text: read_length(text, bare), "mm")

    def grams(self, key: str, most_g: float) -> float | None:
        """Return a weight above nothing."""
        return self._amount(key, most_g, read_weight, "g")

    def number(self, key: str, most: float) -> float | None:
        """Return a number above nothing."""
        return self._amount(key, most, _read_count, "")

    def yes_or_no(self, key: str) -> bool | None:
        """Return True, False, or None where nothing is said."""
        text = self.text(key).lower()
        if not text or text in TRUE_WORDS | FALSE_WORDS:
            return None if not text else text in TRUE_WORDS
        self.unread(key, Unread(text, f"“{text}” is neither yes nor no.", "Write yes or no."))
        return None

    def unread(self, key: str, what: Unread) -> None:
        """Note that the value of a key can't be taken."""
        self.findings.append(
            Finding(
                "stock-unread",
                Certainty.PROVEN,
                f"What stands under “{key}” of {self.kind} “{self.name}” can't be taken: {_lower(what.why)}",
                "What is at hand limits every piece, so nothing is assumed here.",
                what.attempt,
                where=Where(fact=f"{self.fact}.{key}"),
            )
        )

    def close(self) -> tuple[Finding, ...]:
        """Return all findings, those on keys that nobody reads last."""
        for key in self.table:
            if key not in self.known and key != "name":
                self.findings.append(_no_such_key(self, key))
        return tuple(self.findings)

    def _amount(self, key: str, most: float, read: Callable[[str], float | Unread], unit: str) -> float | None:
        text = self.text(key)
        if not text:
            return None
        value = read(text)
        if isinstance(value, Unread):
            self.unread(key, value)
            return None
        if 0 < value <= most:
            return value
        limit = f"{most:g} {unit}".strip()
        why = f"“{text}” does not lie between nothing and {limit}."
        self.unread(key, Unread(text, why, "Look at the figure and its unit again."))
        return None


def missing(entry: Entry, what: str, find_out: str) -> Missing:
    """Return a fact of an entry that nobody has given."""
    return Missing(f"{what} of {entry.name}", find_out)


def _read_count(text: str) -> float | Unread:
    value = read_number(text)
    return Unread(text, f"“{text}” is no number.", "Write a number like 8 or 7 1/2.") if value is None else value


def _lower(sentence: str) -> str:
    return sentence[:1].lower() + sentence[1:]


def _no_such_key(entry: Entry, key: str) -> Finding:
    return Finding(
        "stock-key-unknown",
        Certainty.PROVEN,
        f"“{key}” is nothing that is known of a {entry.kind} (“{entry.name}”).",
        "A misspelt key would be passed over, and its fact missed.",
        f"Use one of: {', '.join(sorted(entry.known))}.",
        where=Where(fact=f"{entry.fact}.{key}"),
    )
