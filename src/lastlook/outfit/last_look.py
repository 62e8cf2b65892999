"""The last look: before each step that can't be taken back, what is proven, doubtful and unknown."""

from __future__ import annotations

from lastlook.finding import Certainty, Finding
from lastlook.outfit.answer import Answer, Answered, LastLook, Part, Step
from lastlook.outfit.derive import Derived
from lastlook.outfit.names import title

CAUTIONS = {
    Step.CAST_ON: (
        "Count needles and pins out and in; one left in a garment finds a hand.",
        "Rest your hands before they ache; a long row is not worth a sore wrist.",
    ),
    Step.CUT: (
        "Close the cutter's blade after every cut, cut away from you, and keep the other hand behind the ruler.",
        "Lay the whole table clear, and the pins where they are counted.",
    ),
    Step.SEW_UP: (
        "Do not sew over pins, and account for every piece of a needle that breaks.",
        "No cord or drawstring at the neck or hood of a child's garment; local rules say more.",
    ),
    Step.PRESS: (
        "Try the iron on the swatch first; stand it on its heel, and unplug it when you leave the room.",
        "Loose, napped or gauzy cloth near a fire burns fast; nightwear has rules of its own where you live.",
    ),
}
"""Common practice, no source; where rules or a qualified person say otherwise, they are right."""


def last_looks(derived: Derived, adds_up: Answered, fits: Answered, enough: Answered) -> tuple[LastLook, ...]:
    """Return what stands open before casting on, cutting, sewing up and pressing."""
    out: list[LastLook] = []
    parts = (*adds_up.parts, *fits.parts, *enough.parts)
    for one in derived.knitted:
        lots = {title(one.plan.yarn)} if one.plan.yarn else set()
        out.append(_look(Step.CAST_ON, one.plan.name, _about(parts, one.plan.name, lots)))
    for sewn in derived.sewn:
        cloths = {title(sewn.plan.cloth)} if sewn.plan.cloth else set()
        out.append(_look(Step.CUT, sewn.plan.name, _about(parts, sewn.plan.name, cloths)))
    for name in [*(one.plan.name for one in derived.knitted), *(one.plan.name for one in derived.sewn)]:
        seams = tuple(part for part in adds_up.parts if _speaks_of(part, name, set()))
        out.append(_look(Step.SEW_UP, name, seams))
    if out:
        out.append(LastLook(Step.PRESS, None, _unwashed(derived), (), CAUTIONS[Step.PRESS]))
    return tuple(out)


def _about(parts: tuple[Part, ...], name: str, others: set[str]) -> tuple[Part, ...]:
    return tuple(part for part in parts if _speaks_of(part, name, others))


def _speaks_of(part: Part, name: str, others: set[str]) -> bool:
    return part.subject.startswith(title(name)) or part.subject in others or part.subject.startswith("What was")


def _look(step: Step, piece: str, parts: tuple[Part, ...]) -> LastLook:
    open_ = tuple(
        dict.fromkeys(
            finding
            for part in parts
            for finding in part.findings
            if finding.certainty is not Certainty.NOTE or finding.asks
        )
    )
    proven = tuple(part.because for part in parts if part.answer is Answer.YES)
    return LastLook(step, piece, open_, proven, CAUTIONS[step])


def _unwashed(derived: Derived) -> tuple[Finding, ...]:
    """Return what is not known of how yarn and cloth take water and heat."""
    out = []
    for one in derived.knitted:
        if one.swatch is None or one.swatch.washed is not True:
            said = f"How the yarn of the {one.plan.name} takes water and heat is not known yet."
            why = "Old wool can felt, bleed or stretch; a swatch shows it where nothing is lost."
            attempt = "Wash and steam the swatch first."
            out.append(Finding("press-untried", Certainty.UNKNOWN, said, why, attempt))
    return tuple(out)
