"""One thing the program has to say.

A finding's kind names the trouble, never the cure, and is stable: every kind has its page.
A *cure* is a remedy that can be applied as it stands: a sentence and the edits of the outfit's document.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from lastlook.finding.where import NOWHERE, Where


class Certainty(Enum):
    """How sure the program is of what it says."""

    PROVEN = "proven"
    DOUBTFUL = "doubtful"
    UNKNOWN = "unknown"
    NOTE = "note"


Plain = str | int | float | bool


@dataclass(frozen=True)
class Edit:
    """One change of the outfit's document: the dotted path of a fact, and its new value.

    A path that ends in `.+` adds an entry to a list; such an entry is a row of (key, value) pairs.
    """

    fact: str
    value: Plain | tuple[tuple[str, Plain], ...]


@dataclass(frozen=True)
class Cure:
    """What would put it right, and the edits that do it."""

    say: str
    edits: tuple[Edit, ...]


@dataclass(frozen=True)
class Finding:
    """A kind, how sure, one sentence that stands alone, why, and what to try."""

    kind: str
    certainty: Certainty
    say: str
    why: str
    attempt: str | None = None
    """What to try, as a sentence; None where nothing helps."""
    checked: bool = False
    """Whether the program tried `attempt` and it works."""
    asks: bool = False
    """Whether the maker has to choose."""
    where: Where = NOWHERE
    size: str | None = None
    readings: tuple[str, ...] | None = None
    """Where words can be meant in several ways: each way, with what it changes."""
    cures: tuple[Cure, ...] = ()
