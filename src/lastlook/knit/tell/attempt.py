"""A correction that was tried and works, in words and as an edit of the outfit's document."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Cure


@dataclass(frozen=True)
class Attempt:
    """What to read instead, as a sentence, with the cure that does it."""

    say: str
    cures: tuple[Cure, ...] = ()
