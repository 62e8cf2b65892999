"""Seams that do not meet, in tenths of a mm, with the alterations that close them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from lastlook.finding import Certainty, Cure, Edit, Finding, Where
from lastlook.paper.alter import Alteration, write_alteration
from lastlook.paper.drafted import Drafted
from lastlook.paper.easing import Easing
from lastlook.paper.seams import Fullness, Join, mate_of, walk_all
from lastlook.paper.tenths import tenths
from lastlook.paper.truing.cure import Remedy, side_remedies, waist_remedies
from lastlook.piece import Meets, Seam

JUST_MM = 0.05
"""What is offered stays this far inside the easing limit."""


def open_seams(drafted: Drafted, facts: str) -> tuple[Finding, ...]:
    """Return a finding for every seam that does not meet, or meets only by an easing that is in doubt."""
    out: list[Finding] = []
    for join in drafted.joins:
        for seam in walk_all((join,), drafted.pieces, drafted.easing):
            if seam.meets is Meets.NO:
                out.append(_open(drafted, join, seam, facts))
            elif seam.meets is Meets.BY_EASING and not drafted.easing.is_known():
                out.append(_doubtful(seam, drafted.easing))
    return tuple(out)


def _open(drafted: Drafted, join: Join, seam: Seam, facts: str) -> Finding:
    eased = join.fullness is Fullness.EASED
    spare = mate_of(join, drafted.pieces, drafted.easing).allowed if seam.difference > 0 else 0.0
    sure = max(0.0, spare - JUST_MM) if drafted.easing.is_known() else 0.0
    remedies = waist_remedies(drafted, join, seam, sure) if eased else side_remedies(drafted, join, seam)
    longer, shorter = (seam.mate.a, seam.mate.b) if seam.difference > 0 else (seam.mate.b, seam.mate.a)
    say = (
        f"{_name(longer.piece)} is {tenths(abs(seam.difference))} mm longer at the {longer.edge} than {shorter.piece}."
    )
    if eased and seam.difference > 0:
        say = f"The skirt top is {tenths(seam.difference)} mm longer than the band."
    elif eased:
        say = f"The skirt top is {tenths(-seam.difference)} mm shorter than the band."
    return Finding(
        "edges-differ",
        Certainty.PROVEN,
        say,
        _why(seam, eased, spare, drafted.easing),
        _attempt(remedies, seam.difference - sure if sure else 0.0),
        checked=bool(remedies),
        asks=len(remedies) > 1,
        where=Where(piece=longer.piece, edge=longer.edge),
        cures=tuple(_cure(remedy, facts) for remedy in remedies),
    )


def _why(seam: Seam, eased: bool, spare: float, easing: Easing) -> str:
    darts = " with darts closed" if eased else ""
    lengths = f"{seam.mate.a} measures {tenths(seam.a_length)} mm{darts}, {seam.mate.b} {tenths(seam.b_length)} mm."
    if not eased:
        return lengths
    if seam.difference < 0:
        return f"{lengths} A band can't be eased onto a shorter skirt."
    if spare and easing.is_known():
        return f"{lengths} A test strip of this cloth allows {tenths(spare)} mm to be eased; the rest must go."
    if spare:
        return f"{lengths} {_fibre(easing)} might ease {spare:.0f} mm, which only a test strip can show."
    return f"{lengths} How much this cloth eases is not known, so nothing is counted on."


def _fibre(easing: Easing) -> str:
    return easing.of[:1].upper() + easing.of[1:] if easing.of else "This cloth"


def _attempt(remedies: Sequence[Remedy], rest: float) -> str | None:
    if not remedies:
        return "Look at both edges again: no single alteration closes this."
    ways = [remedy.say for remedy in remedies]
    lead = f"{tenths(rest)} mm must go: " if rest else ""
    text = lead + "; or ".join(ways) + "."
    return text[:1].upper() + text[1:]


def _cure(remedy: Remedy, facts: str) -> Cure:
    say = remedy.say[:1].upper() + remedy.say[1:] + "."
    return Cure(say, tuple(edit(alteration, facts) for alteration in remedy.alterations))


def edit(alteration: Alteration, facts: str) -> Edit:
    """Return the edit that adds an alteration to the list of them in the outfit's document."""
    return Edit(f"{facts}alterations.+", tuple(_rows(write_alteration(alteration).items())))


def _rows(items: Iterable[tuple[str, object]]) -> Iterable[tuple[str, str | int | float | bool]]:
    for key, value in items:
        if isinstance(value, str | int | float | bool):
            yield key, value


def _doubtful(seam: Seam, easing: Easing) -> Finding:
    return Finding(
        "easing-untested",
        Certainty.DOUBTFUL,
        f"The skirt top is {tenths(seam.difference)} mm longer than the band; that this cloth eases it is in doubt.",
        f"{_fibre(easing)} is said to ease {easing.share * 100:.0f} % (from memory of textbooks), here "
        f"{tenths(seam.mate.allowed)} mm; cloths of one fibre differ.",
        "Ease a strip of 280 mm onto 254 mm of the same cloth (11 in onto 10 in), press it and look.",
        where=Where(piece=seam.mate.a.piece, edge=seam.mate.a.edge),
    )


def _name(piece: str) -> str:
    return piece[:1].upper() + piece[1:]
