"""What one size comes to: it adds up, it does not, something must be chosen, or something is not known yet.

Not known yet stands only where words were not understood that may hide stitches, with no printed count after them
that bears the piece out; what is said of making up, or after a piece has ended, hides nothing.
"""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.finding import SourceText, Span
from lastlook.knit.assemble import Plan
from lastlook.knit.choose import Choice, Outcome
from lastlook.knit.needle import may_move
from lastlook.knit.prove import leans
from lastlook.knit.reading import ADDS_UP, DOES_NOT, NEEDS_ANSWER, NOT_KNOWN
from lastlook.piece import Meets, Seam


def verdict(outcome: Outcome, decided: Sequence[Choice], hidden: bool) -> str:
    """Return what the leaflet comes to in the size that was worked."""
    troubles = [one for hands in outcome.pieces.values() for one in hands.troubles]
    troubles += leans(outcome.pieces)
    apart = [seam for seam in outcome.seams if seam.meets is Meets.NO]
    if any(not one.doubted and not one.follows for one in troubles) or any(
        not in_doubt(outcome, seam) for seam in apart
    ):
        return DOES_NOT
    if any(one.asked for one in decided):
        return NEEDS_ANSWER
    made = any(hands.parts for hands in outcome.pieces.values())
    return NOT_KNOWN if not made or hidden or troubles or apart else ADDS_UP


def is_hidden(made: Plan, unread: Sequence[Span], outcome: Outcome, source: SourceText) -> bool:
    """Whether words that were not understood may hide stitches of a piece."""
    missing = set(unread)
    for task in made.tasks:
        hands = outcome.pieces.get(task.name.lower())
        if task.crochet:
            continue  # Crochet is followed only where it borders a knitted piece; its own counts are compared there.
        if hands is not None:
            if hands.hidden or hands.dark:
                return True
        elif any(step.span in missing and may_move(source.words(step.span)) for step in task.steps):
            return True
    return False


def in_doubt(outcome: Outcome, seam: Seam) -> bool:
    """Whether words of one of the two pieces of a seam were not understood."""
    names = {seam.mate.a.piece.lower(), seam.mate.b.piece.lower(), seam.mate.b.piece.lower().split()[-1]}
    names |= {"back", "front", "left front", "right front", "sleeve"} if "body" in names else set()
    return any(hands.unread for name, hands in outcome.pieces.items() if name in names)
