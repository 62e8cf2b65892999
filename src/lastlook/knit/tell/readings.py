"""Unclear words: which reading was taken and why, or the question where several agree with all that is printed."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Certainty, Cure, Edit, Finding, Where
from lastlook.knit.choose import Choice
from lastlook.knit.tell.wording import counted, deep
from lastlook.quantity import Gauge, Units


@dataclass(frozen=True)
class Tape:
    """What turns rows into a depth on the maker's tape, and the size it is told for."""

    gauge: Gauge | None = None
    units: Units = Units.INCHES
    size: int = 0
    named: str = ""
    """The size's name; empty where there is only one."""


def of_choices(choices: list[Choice], tape: Tape) -> list[Finding]:
    """Return a note for each reading that was decided, and a question for each that was not."""
    return [_question(one, tape) if one.asked else _note(one, tape) for one in choices]


def _listed(one: Choice, tape: Tape) -> tuple[str, ...]:
    best = min(score for score in one.scores if score == score)
    out = []
    for number, option in enumerate(one.point.options):
        score = one.scores[number]
        state = "not tried" if score != score else "agrees with all that is printed" if score == 0 else (
            "agrees as well as any" if score <= best else "does not agree with what is printed or sewn to it")  # fmt: skip
        out.append(f"{number + 1}. {option.meaning} ({state}{_effect(one, number, tape)})")
    return tuple(out)


def _effect(one: Choice, number: int, tape: Tape) -> str:
    """Say what a reading changes: the rows of the piece, its depth and its stitches."""
    if len(one.shapes) <= number or len(one.shapes[number]) <= tape.size:  # type: ignore[arg-type]
        return ""
    shape = one.shapes[number][tape.size]  # type: ignore[index]
    for name, parts in shape[0]:
        if name == one.point.piece.lower() and parts:
            rows, stitches = parts[-1] if len(parts) > 1 else parts[0]
            which = f" in size {tape.named}" if tape.named else ""
            told = deep(parts[0][0] if len(parts) == 1 else rows, tape.gauge, tape.units)
            return f"; {one.point.piece}{which} {told} and ends with {counted(stitches, 'stitch')}"
    return ""


def _note(one: Choice, tape: Tape) -> Finding:
    agreeing = [number + 1 for number, score in enumerate(one.scores) if score <= one.scores[one.taken - 1]]
    meaning = one.point.options[one.taken - 1].meaning
    phrase = one.point.key.split(": ", 1)[1]
    if one.by_maker:
        why = "You chose this reading."
    elif len(agreeing) == 1:
        why = "Only this reading agrees with the counts that are printed and with the pieces that are sewn to this one."
    else:
        why = "The counts and the seams are the same either way; only the rows on which the shaping falls move."
    return Finding(
        kind="reading-taken", certainty=Certainty.NOTE, say=f"{one.point.piece}: “{phrase}” is read as {meaning}.", why=why,
        where=Where(span=one.point.span, piece=one.point.piece, fact=f"readings.{one.point.key}"), readings=_listed(one, tape),
        checked=len(agreeing) == 1,
    )  # fmt: skip


def _question(one: Choice, tape: Tape) -> Finding:
    phrase = one.point.key.split(": ", 1)[1]
    fact = f"readings.{one.point.key}"
    cures = tuple(
        Cure(f"Read it as: {option.meaning}.", (Edit(fact, number + 1),))
        for number, option in enumerate(one.point.options)
        if one.scores[number] <= min(one.scores)
    )
    return Finding(
        kind="words-unclear", certainty=Certainty.UNKNOWN, say=f"{one.point.piece}: “{phrase}” can be meant in {len(cures)} ways.",
        why="Each of them agrees with every count that is printed and with every edge that is sewn to this one, and they do not give the same piece.",
        attempt="Choose the one that suits your measurements.", asks=True, where=Where(span=one.point.span, piece=one.point.piece, fact=fact),
        readings=_listed(one, tape), cures=cures,
    )  # fmt: skip
