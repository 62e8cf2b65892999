"""What words that were not understood may hide, and from where on the counts are certain again.

Words that name nothing which moves stitches hide nothing. Where a printed count, or a row that uses up the needle
exactly, agrees with what was worked, nothing before it is hidden any more: whatever was not understood left the count
as it is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from lastlook.finding import Span
from lastlook.knit.needle.state import Hands
from lastlook.leaflet.instruction import Nothing, Step, Unread

MOVES = re.compile(
    r"(?i)\b(?:k|p|m|o|yo|sl|skp|ssk|psso|knit\w*|purl\w*|pearl|seam|inc\w*|dec\w*|narrow\w*|widen\w*|cast\w*|bind\w*|"
    r"bound|tog|together|over|slip\w*|make|pick\w*|raise\w*|turn\w*|rep|repeat\w*|sts?|stitch\w*|rows?|rounds?|rnds?|"
    r"leave|leaving|hold\w*|drop\w*|divid\w*|continue\w*|times)\b|\b(?:k|p)\d"
)
SHAPES = re.compile(
    r"(?i)\b(?:rais\w+|pick\w*|tak(?:e|ing|en) (?:in|up)|inc\w*|dec\w*|narrow\w*|widen\w*|cast\w*|bind\w*|tog|together|"
    r"repeat\w*|drop\w*|instead|except\w*|omit\w*|less|fewer|more|without|both sides|each side|other side|"
    r"intak\w*|tak\w+ off|let off|leav\w+(?! (?:an?|about|\d+|[\w½¼¾-]+)[ -].{0,16}(?:end|inch|ins\b|opening|cm)))\b"
)
PROSE = ("prose", "manner", "aside", "hem")
"""Kinds of words that move no stitch as far as is known."""
LEAST_BORNE = 3
"""A count smaller than this may agree by chance."""


def may_move(words: str) -> bool:
    """Whether words name anything that could change how many stitches there are."""
    return MOVES.search(words) is not None


def lose(hands: Hands, span: Span) -> None:
    """Words were not understood: from here on a count may be another one."""
    if _is_over(hands) or not may_move(hands.words_of(span)):
        return
    hands.unread = True
    hands.dark.append(span)


def doubt(hands: Hands, span: Span) -> None:
    """Prose that speaks of shaping: a count that differs after it may come from it."""
    if not _is_over(hands) and SHAPES.search(hands.words_of(span)):
        hands.dim.append(span)


def regain(hands: Hands, count: int) -> None:
    """A count was borne out: what came before it left it as it is, and what was told before it was no misreading."""
    if count >= LEAST_BORNE:
        hands.dark.clear()
        hands.dim.clear()
        hands.troubles = [replace(one, far=False) if one.far else one for one in hands.troubles]


def restart(hands: Hands, count: int) -> None:
    """'Until 40 stitches remain' says where the piece stands, whatever came before; it bears nothing out."""
    if count >= LEAST_BORNE:
        hands.dark.clear()
        hands.dim.clear()
        hands.troubles = [replace(one, far=False, blind=True) if one.far else one for one in hands.troubles]


def clouded(steps: Sequence[Step], text: str) -> list[bool]:
    """Return, for each step, whether words of its own sentence, or of the one after it, were not understood.

    What follows a row may be its tail; a row or a piece that is told anew begins a sentence that is not.
    """
    out = [False] * len(steps)
    first = before = 0
    for spot in range(1, len(steps) + 1):
        if spot < len(steps) and "." not in text[steps[spot - 1].span.end : steps[spot].span.start]:
            continue
        cloud = any(_is_unclear(step, text) for step in steps[first:spot])
        out[first:spot] = [cloud] * (spot - first)
        if any(isinstance(step, Unread) for step in steps[first:spot]):
            out[before:first] = [True] * (first - before)
        before, first = first, spot
    return out


def _is_unclear(step: Step, text: str) -> bool:
    if isinstance(step, Nothing):
        return step.why in PROSE and SHAPES.search(text[step.span.start : step.span.end]) is not None
    return isinstance(step, Unread)


def is_bound_off(hands: Hands) -> bool:
    """Whether nothing of the piece is on a needle or a holder any more."""
    gone = ("bound off", "fastened off", "drawn up")
    return (
        bool(hands.parts)
        and not hands.held
        and hands.flanks is None
        and all(live.ended in gone for live in hands.lives)
    )


def _is_over(hands: Hands) -> bool:
    """Whether the piece has ended, so that what follows touches none of its stitches."""
    return bool(hands.parts) and not hands.held and all(live.ended != "open" for live in hands.lives)
