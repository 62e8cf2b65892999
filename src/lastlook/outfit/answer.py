"""The answer to a question, and the last look before a step that can't be taken back.

An answer is *yes* or *no* only if it is so over the whole range; *tight*, with its chance, where the range
straddles the limit; *not known yet* only where a fact is missing. A question is answered in *parts* (the
pullover, the skirt, the yarn); the weakest part answers for the whole.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from lastlook.finding import Certainty, Finding
from lastlook.quantity import Spread


class Answer(Enum):
    """What can be said, the weakest first."""

    NO = "no"
    NOT_KNOWN_YET = "not known yet"
    TIGHT = "tight"
    YES = "yes"


class Step(Enum):
    """A step that can't be taken back."""

    CAST_ON = "cast on"
    CUT = "cut"
    SEW_UP = "sew up"
    PRESS = "press"


WEAKEST_FIRST = tuple(Answer)


@dataclass(frozen=True)
class Part:
    """What one part of the outfit answers to one question."""

    subject: str
    """'Pullover', 'Skirt waist seam', 'Green wool'."""
    answer: Answer
    because: str
    findings: tuple[Finding, ...] = ()
    chance: float | None = None
    """Chance, 0 to 1, where the answer is tight."""


@dataclass(frozen=True)
class Answered:
    """One of the three questions, answered by its parts."""

    question: str
    parts: tuple[Part, ...]

    @property
    def weakest(self) -> Part:
        """Return the part that answers for the whole; of two tight ones the less likely."""
        return min(self.parts, key=lambda part: (WEAKEST_FIRST.index(part.answer), part.chance or 0.0))

    @property
    def answer(self) -> Answer:
        """Return the answer for the whole."""
        return self.weakest.answer if self.parts else Answer.NOT_KNOWN_YET

    @property
    def chance(self) -> float | None:
        """Return the chance that all of it holds, taking the tight parts as independent."""
        if self.answer is not Answer.TIGHT:
            return None
        product = 1.0
        for part in self.parts:
            product *= 1.0 if part.chance is None else part.chance
        return product

    @property
    def because(self) -> str:
        """Return why, in one sentence."""
        return self.weakest.because if self.parts else "Nothing has been planned yet."

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Return all that the parts have to say, in order, nothing twice."""
        return tuple(dict.fromkeys(finding for part in self.parts for finding in part.findings))


@dataclass(frozen=True)
class LastLook:
    """What stands open before one step."""

    before: Step
    piece: str | None
    open: tuple[Finding, ...]
    proven: tuple[str, ...] = ()
    """What is proven, as sentences."""
    cautions: tuple[str, ...] = ()
    """What can hurt in this step, as sentences."""


@dataclass(frozen=True)
class Verdict:
    """The three answers and the last looks."""

    adds_up: Answered
    fits: Answered
    enough: Answered
    last_looks: tuple[LastLook, ...]

    def is_yes(self) -> bool:
        """Whether all three answers are yes."""
        return all(one.answer is Answer.YES for one in (self.adds_up, self.fits, self.enough))


def within(value: Spread, low: float | None, high: float | None) -> tuple[Answer, float | None]:
    """Say whether a value lies between two limits (either may be None), over its whole range.

    >>> within(Spread(100, 98, 102), 95, 105)
    (<Answer.YES: 'yes'>, None)
    """
    floor = float("-inf") if low is None else low
    roof = float("inf") if high is None else high
    if value.low >= floor and value.high <= roof:
        return Answer.YES, None
    if value.high < floor or value.low > roof:
        return Answer.NO, None
    chance = value.chance_at_most(roof) - (1 - value.chance_at_least(floor))
    return Answer.TIGHT, max(0.0, min(1.0, chance))


def answer_of(findings: tuple[Finding, ...]) -> Answer:
    """Return what findings alone say of a part: a proven trouble is a no, a question or a gap is not known yet."""
    if any(one.certainty is Certainty.PROVEN for one in findings):
        return Answer.NO
    if any(one.asks or one.certainty is Certainty.UNKNOWN for one in findings):
        return Answer.NOT_KNOWN_YET
    return Answer.YES
