"""One level at which a garment is judged by the body: what the body has, what is wanted, what it gets."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit.answer import Answer, Part, within
from lastlook.outfit.outfit import Ease, Manner
from lastlook.quantity import Missing, Origin, Spread, write_length
from lastlook.wearer import NAMES, Measure


@dataclass(frozen=True)
class Level:
    """A girth or a length of the assembled garment against the body and the ease wanted."""

    garment: str
    name: str
    """'bust', 'upper arm', 'hip'."""
    measure: str
    """The ISO 8559-1 name of the body's measure."""
    body: Measure | Missing
    ease: Ease
    gets: Spread | Missing
    """Of the assembled garment, in mm."""
    flat: Spread | None = None
    """Width of the piece lying flat, before the seams take their stitches, in mm."""

    @property
    def over(self) -> Spread | Missing:
        """Return how much more than the body the garment has, in mm."""
        if isinstance(self.body, Missing):
            return self.body
        if isinstance(self.gets, Missing):
            return self.gets
        return self.gets - self.body.mm

    @property
    def answer(self) -> tuple[Answer, float | None]:
        """Return the answer at this level, with its chance where it is tight; an assumed body proves only a yes."""
        over = self.over
        if isinstance(over, Missing):
            return Answer.NOT_KNOWN_YET, None
        answer, chance = within(over, self.ease.low_mm, self.ease.high_mm)
        if answer is not Answer.YES and self.is_assumed():
            return Answer.NOT_KNOWN_YET, None
        return answer, chance

    def is_assumed(self) -> bool:
        """Whether nobody measured the body there, and mean figures stand in its place."""
        return isinstance(self.body, Measure) and self.body.origin is Origin.ASSUMED


def judged(level: Level, manner: Manner, attempt: str | None = None) -> Part:
    """Return what a level answers, with the finding that goes with it."""
    answer, chance = level.answer
    because = _because(level, answer, manner)
    if answer is Answer.YES:
        return Part(f"{level.garment} at the {level.name}", answer, because)
    kinds = {
        Answer.NO: ("ease-off", Certainty.PROVEN),
        Answer.TIGHT: ("ease-doubtful", Certainty.DOUBTFUL),
        Answer.NOT_KNOWN_YET: ("fit-unknown", Certainty.UNKNOWN),
    }
    kind, certainty = kinds[answer]
    tried = None if answer is Answer.NOT_KNOWN_YET and not level.is_assumed() else attempt
    finding = Finding(kind, certainty, because, _why(level, manner), tried or _settle(level), where=_where(level))
    return Part(f"{level.garment} at the {level.name}", answer, because, (finding,), chance)


def _where(level: Level) -> Where:
    return Where(piece=level.garment, fact=f"wearer.measures.{level.measure}")


def _because(level: Level, answer: Answer, manner: Manner) -> str:
    over = level.over
    if isinstance(over, Missing):
        garment = level.garment[:1].lower() + level.garment[1:]
        return f"Whether the {garment} fits at the {level.name} is not known yet: no {over.what} was given."
    if answer is Answer.NOT_KNOWN_YET:
        return _assumed(level, manner)
    return f"{level.garment} at the {level.name} has {comparison(over.best, manner)}{_verdict(level, over, manner)}"


def _assumed(level: Level, manner: Manner) -> str:
    assert isinstance(level.body, Measure)
    garment = level.garment[:1].lower() + level.garment[1:]
    low, high = (write_length(mm, manner.units) for mm in (level.body.mm.low, level.body.mm.high))
    return (
        f"Whether the {garment} fits at the {level.name} is not known yet: you are there between {low} and {high}, "
        f"{level.body.how}."
    )


def comparison(mm: float, manner: Manner) -> str:
    """Return an ease in words: '4 cm more than you'."""
    shown = write_length(abs(mm), manner.units)
    return f"{shown} {'more' if mm >= 0 else 'less'} than you"


def _verdict(level: Level, over: Spread, manner: Manner) -> str:
    low = write_length(level.ease.low_mm, manner.units)
    give = "" if over.is_certain() else f", give or take {write_length(over.plus_minus, manner.units)}"
    if level.ease.is_open:
        return f"{give}; {_at_least(level.ease.low_mm, manner)} is wanted."
    high = write_length(level.ease.high_mm, manner.units)
    wanted = f"{low} to {high}" if low != high else low
    if level.ease.high_mm <= 0:
        wanted = f"{high.removeprefix('-')} to {low.removeprefix('-')} less"
    if level.ease.low_mm < 0 < level.ease.high_mm:
        wanted = f"anything from {low.removeprefix('-')} less to {high} more"
    return f"{give}; {wanted} is wanted."


def _at_least(low_mm: float, manner: Manner) -> str:
    if low_mm >= 0:
        return f"{write_length(low_mm, manner.units)} or more"
    return f"no more than {write_length(-low_mm, manner.units)} less"


def _why(level: Level, manner: Manner) -> str:
    if isinstance(level.body, Missing) or isinstance(level.gets, Missing):
        lack = level.body if isinstance(level.body, Missing) else level.gets
        assert isinstance(lack, Missing)
        return f"Without the {lack.what} nothing can be said of this level."
    origin = "" if level.body.origin is Origin.MEASURED else f" ({level.body.how})"
    return (
        f"It comes out at {write_length(level.gets.best, manner.units)}; you are "
        f"{write_length(level.body.mm.best, manner.units)} there{origin}."
    )


def _settle(level: Level) -> str:
    for fact in (level.body, level.gets):
        if isinstance(fact, Missing):
            return fact.find_out
    if level.is_assumed():
        return NAMES[level.measure].take
    if isinstance(level.body, Measure) and level.body.origin is Origin.ESTIMATED:
        return f"Measure it: an estimate of the {level.measure.replace('_', ' ')} leaves most of the doubt."
    return "Choose another size, or change how much ease is wanted there."
