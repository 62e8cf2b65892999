"""A lay in words: what is left over first, then what it uses, then whatever stands open."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.finding import say
from lastlook.lay.choices import Choice, Fitted
from lastlook.lay.placement import Lay
from lastlook.lay.rest import headline
from lastlook.lay.wanted import Problem


def in_words(problem: Problem, lay: Lay) -> str:
    """Return what a maker is told about a lay."""
    if not lay.fits:
        return "\n\n".join(["It does not all fit.", *(say(one) for one in lay.findings)])
    lines = [headline(lay.left_over)]
    length = problem.cloth.length_mm
    of = f" of {length / 10:.1f} cm" if length else ""
    lines.append(f"It uses {lay.used_length_mm / 10:.1f} cm{of}; {len(lay.placements)} placements, proven.")
    lines += [say(one) for one in lay.findings]
    return "\n".join(lines)


def choices_in_words(choices: Sequence[Choice]) -> list[str]:
    """Return what would make it fit, the least loss first, a line each."""
    if not choices:
        return []
    lines = [f"  - {one.concession.say} It then takes {one.lay.used_length_mm / 10:.1f} cm." for one in choices]
    return ["", "What would make it fit, each proven by a lay of its own:", *lines]


def longer_in_words(longer: Fitted | None) -> list[str]:
    """Return by how much the pieces could be longer, a line, or none where nobody asked."""
    if longer is None:
        return []
    if longer.amount_mm <= 0:
        return ["No longer pieces were found to fit."]
    return [f"It could be {longer.amount_mm / 10:.1f} cm longer; that is proven by a lay of its own."]
