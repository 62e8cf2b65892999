"""Printed counts, needles, buttonholes and markers: what is said beside what is worked."""

from __future__ import annotations

import re

from lastlook.finding import Span
from lastlook.knit.needle.live import Live
from lastlook.knit.needle.sight import regain
from lastlook.knit.needle.state import Count, Hands
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Step

SLIPPED = re.compile(r"(?i)\bslip (?:the )?last (\d+)(?: ?[(\[]([\d ,–-]+)[)\]])? st")
ARRANGED = re.compile(r"(?i)\b(?:these|the|all) (\d+)\b")
"""'Arrange these 18 sts. on three needles'."""


def compare(hands: Hands, span: Span, stated: int, worked: int, what: str = "") -> bool:
    """Put a printed count beside the worked one; a difference is told once."""
    hands.counts.append(Count(span, stated, worked, hands.live.number, what))
    if stated == worked:
        regain(hands, stated)
        return True
    difference = worked - stated
    if difference not in hands.off_by:
        hands.trouble("count-short" if difference < 0 else "count-over", span, worked, stated, what)
        hands.off_by.add(difference)
    return False


def go_on_with(hands: Hands, stated: int) -> None:
    """After words that were not understood the printed count says where the piece stands."""
    live = hands.live
    if not hands.blind or len(hands.lives) != 1 or live.ended != "open" or live.behind or not stated:
        return
    hands.hidden = True
    live.n = stated
    if live.rows:
        last = live.rows[-1]
        last.used, last.gives, last.after = last.before, stated, stated
    hands.off_by.clear()


def printed(hands: Hands, step: Step) -> None:
    """Check a printed count."""
    if not isinstance(step, say.Printed):
        return
    if not hands.parts:
        return
    hands.done(step)
    stated = hands.at(step.n)
    if step.of == "difference":
        last = hands.live.rows[-1] if hands.live.rows else None
        worked = abs(last.after - last.before) if last else 0
        if worked == stated:
            compare(hands, step.span, stated, worked, "difference")
        return
    if step.of == "rows":
        _rows(hands, step, stated)
        return
    if step.of in ("part", "needle"):
        _part(hands, step, stated)
        return
    if step.of == "" and stated != hands.live.n and hands.held and stated == _all(hands):
        compare(hands, step.span, stated, stated, step.of)
        return
    if len(hands.lives) > 1:
        _of_groups(hands, step, stated)
        return
    if hands.live.ended == "on holder" and step.of == "" and stated != hands.live.n and _joins(hands, stated):
        compare(hands, step.span, stated, stated, step.of)
        return
    if not compare(hands, step.span, stated, hands.live.n, step.of) and step.of == "":
        go_on_with(hands, stated)


def _joins(hands: Hands, stated: int) -> bool:
    """'Slip both pieces on the needles, making 112': two alike, or this one with those that wait."""
    n = hands.live.n
    others = [count for name, count in hands.world.holders.items() if name != hands.name.lower()]
    if stated not in (2 * n, n + sum(others)):
        return False
    hands.live.ended = "joined"
    new = Live(stated, base=max(live.number for live in hands.parts), rounds=True, name=hands.name)
    hands.parts.append(new)
    hands.lives, hands.live = [new], new
    return True


def _of_groups(hands: Hands, step: say.Printed, stated: int) -> None:
    """Where the work is parted a count is that of each group, or of all together."""
    total = sum(live.n for live in hands.lives)
    nearest = min((live.n for live in hands.lives), key=lambda n: abs(n - stated))
    if abs(total - stated) < abs(nearest - stated):
        compare(hands, step.span, stated, total, step.of)
        return
    for live in list(hands.lives):
        hands.live = live
        compare(hands, step.span, stated, live.n, step.of)


def _all(hands: Hands) -> int:
    return hands.live.n + sum(live.n for live in hands.held) + sum(hands.kept.values())


def _rows(hands: Hands, step: say.Printed, stated: int) -> None:
    """'-- 28 rows': the rows of the section, or of the whole piece."""
    start = hands.sections.get(hands.section, 1)
    in_section = hands.live.number - start + 1
    worked = stated if hands.live.number == stated else in_section
    compare(hands, step.span, stated, worked, "rows")


def _part(hands: Hands, step: say.Printed, stated: int) -> None:
    """A count on one needle or of held stitches; compared where there is such a group."""
    if step.of == "part" and hands.counted and hands.slipped and hands.live.rounds:
        compare(hands, step.span, stated, hands.counted + hands.slipped, "part")
        hands.counted = hands.slipped = 0
    elif stated == hands.live.n:
        compare(hands, step.span, stated, stated, step.of)
    else:
        near = [live.n for live in hands.held] + list(hands.kept.values())
        worked = stated if stated in near else None
        if worked is not None:
            compare(hands, step.span, stated, stated, step.of)
        elif step.of == "part":
            hands.claimed = (step.span, stated)


def count_off(hands: Hands, words: str) -> None:
    """'K 14, slip the last 14 of the round to the same needle': both together are the heel's."""
    said = SLIPPED.search(words)
    if said is None or not hands.counted:
        return
    values = [int(said[1]), *(int(one) for one in re.findall(r"\d+", said[2] or ""))]
    hands.slipped = values[hands.world.size] if len(values) == hands.world.sizes else values[0]


def needles(hands: Hands, step: Step) -> None:
    """Stitches divided over needles sum to what there is."""
    if not isinstance(step, say.Needles):
        return
    hands.done(step)
    said = ARRANGED.search(hands.words_of(step.span)) if hands.parts and not step.parts else None
    if said is not None:
        compare(hands, step.span, int(said[1]), hands.live.n, "needles")
    if step.parts and hands.parts:
        hands.needle_parts = [hands.at(part) for part in step.parts]
        total = sum(hands.at(part) for part in step.parts)
        if compare(hands, step.span, total, hands.live.n, "needles"):
            spans = step.spans if len(step.spans) == len(step.parts) else (step.span,) * len(step.parts)
            _by_heel(hands, step, spans)
            for part, span in zip(step.parts, spans, strict=True):
                hands.counts.append(Count(span, hands.at(part), hands.at(part), hands.live.number, "needle"))


def _by_heel(hands: Hands, step: say.Needles, spans: tuple[Span, ...]) -> None:
    """The last needle of a gusset holds what was picked up last and the part of the heel knitted on to it."""
    picked = [count for source, count in hands.picked if "heel" in source or "side" in source]
    if len(step.parts) == 3 and hands.heel_taken and picked:
        compare(hands, spans[-1], hands.at(step.parts[-1]), picked[-1] + hands.heel_taken, "needle")
        hands.heel_taken = 0


def buttonholes(hands: Hands, step: Step) -> None:
    """Remember how many buttonholes there are, and whether their rows fit in."""
    if not isinstance(step, say.Buttonholes):
        return
    hands.done(step)
    if step.n is not None:
        hands.holes = hands.at(step.n)
    if step.first is not None and step.every is not None and step.n is not None:
        last = hands.at(step.first) + (hands.at(step.n) - 1) * hands.at(step.every)
        hands.fixed_rows.append((step.span, last))
        if hands.parts and last > hands.live.number and not hands.lengths_unknown:
            hands.trouble("buttonholes-do-not-fit", step.span, last, hands.live.number)


def marker(hands: Hands, step: Step) -> None:
    """Remember where a marker hangs at the edge."""
    if isinstance(step, say.Marker):
        hands.done(step)
        if step.mm is not None:
            hands.marker_mm = step.mm.at(hands.world.size)
        elif hands.parts:
            hands.marker_row = hands.live.number
