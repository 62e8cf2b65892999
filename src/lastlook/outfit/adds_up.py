"""Does it add up? The printed instructions, the stitch counts, the seams that must meet."""

from __future__ import annotations

from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit.answer import Answer, Answered, Part, answer_of
from lastlook.outfit.derive import Derived
from lastlook.outfit.garment.knitted import Knitted
from lastlook.outfit.garment.sewn import Sewn
from lastlook.outfit.names import title
from lastlook.outfit.outfit import made_of
from lastlook.piece import Meets, Seam

QUESTION = "Does it add up?"


def adds_up(derived: Derived) -> Answered:
    """Return the answer, garment by garment."""
    told = _told(derived)
    return Answered(
        QUESTION,
        (
            *told,
            *(_knitted(one) for one in derived.knitted),
            *(_sewn(one) for one in derived.sewn),
        ),
    )


def _told(derived: Derived) -> tuple[Part, ...]:
    """Return a part for what in the document could not be taken."""
    findings = derived.outfit.findings
    if answer_of(findings) is Answer.YES:
        return ()
    first = next(one for one in findings if one.certainty is not Certainty.NOTE or one.asks)
    return (Part("What was written down", answer_of(findings), first.say, findings),)


def _knitted(one: Knitted) -> Part:
    name = title(one.plan.name)
    if one.size is None:
        finding = _no_size(one)
        return Part(name, Answer.NOT_KNOWN_YET, finding.say, (finding, *one.findings))
    findings = (*one.findings, *(_apart(one, seam) for seam in _broken(one)))
    answer = answer_of(findings)
    if answer is Answer.YES and one.size.verdict != "adds up":
        answer = Answer.NO if one.size.verdict == "does not add up" else Answer.NOT_KNOWN_YET
    return Part(name, answer, _because(one, answer, findings), findings)


def _because(one: Knitted, answer: Answer, findings: tuple[Finding, ...]) -> str:
    if answer is Answer.NO:
        return next((find.say for find in findings if find.certainty is Certainty.PROVEN), "It does not add up.")
    if answer is Answer.NOT_KNOWN_YET:
        open_ = (find for find in findings if find.asks or find.certainty is Certainty.UNKNOWN)
        return next((find.say for find in open_), "Not all of the leaflet could be worked.")
    counts = sum(len(piece.stated) for piece in one.pieces)
    return (
        f"All {counts} printed counts of size {one.size.size if one.size else ''} agree with the rows as worked, "
        f"and all {len(one.seams)} seams meet."
    )


def _no_size(one: Knitted) -> Finding:
    sizes = ", ".join(one.reading.sizes) or "none that could be read"
    asked = f"size {one.plan.size} is none of them" if one.plan.size else "none was chosen"
    return Finding(
        "size-unknown",
        Certainty.UNKNOWN,
        f"{title(one.plan.name)} can't be worked yet: the leaflet has the sizes {sizes}, and {asked}.",
        "Every count hangs on the size.",
        "Choose one of the sizes; the one nearest to you in the bust is the place to start.",
        where=Where(piece=one.plan.name, fact=f"knitting.{one.plan.name}.size"),
    )


def _broken(one: Knitted) -> tuple[Seam, ...]:
    """Return seams that the plan closed and the made pieces opened."""
    planned = {seam.mate: seam.meets for seam in one.size.seams} if one.size else {}
    return tuple(seam for seam in one.seams if seam.meets is Meets.NO and planned.get(seam.mate) is not Meets.NO)


def _apart(one: Knitted, seam: Seam) -> Finding:
    """Return the finding that a made piece left its mate behind, and how the mate follows."""
    a_made = made_of(one.made, seam.mate.a.piece) is not None
    made, plan = (seam.mate.a, seam.mate.b) if a_made else (seam.mate.b, seam.mate.a)
    fact, planned = (seam.a_length, seam.b_length) if a_made else (seam.b_length, seam.a_length)
    unit = seam.mate.unit.value
    longer = "more" if fact > planned else "fewer"
    both = made_of(one.made, plan.piece) is not None
    came = "came out at" if both else "is planned at"
    attempt = (
        f"Ease the longer edge in, or rip the {abs(fact - planned):g} {unit} back."
        if both
        else f"Work {abs(fact - planned):g} {unit} {longer} along this edge of {plan.piece}, which is not made yet."
    )
    return Finding(
        "made-differs",
        Certainty.PROVEN,
        f"{made} came out at {fact:g} {unit}; {plan} {came} {planned:g}, {abs(fact - planned):g} apart.",
        "The two edges are sewn together, and what is made is a fact.",
        attempt,
        where=Where(piece=plan.piece, edge=plan.edge),
    )


def _sewn(one: Sewn) -> Part:
    name = title(one.plan.name)
    findings = (*one.drafted.findings, *one.findings)
    answer = answer_of(findings)
    if not one.drafted.pieces:
        said = findings[0].say if findings else f"{name} has no pieces yet."
        return Part(name, Answer.NO if answer is Answer.NO else Answer.NOT_KNOWN_YET, said, findings)
    if answer is Answer.YES and any(seam.meets is Meets.NO for seam in one.drafted.seams):
        answer = Answer.NO
    if answer is Answer.YES:
        return Part(name, answer, f"All {len(one.drafted.seams)} seams of the {one.plan.name} meet.", findings)
    first = next(find for find in findings if find.certainty in (Certainty.PROVEN, Certainty.UNKNOWN) or find.asks)
    return Part(name, answer, first.say, findings)
