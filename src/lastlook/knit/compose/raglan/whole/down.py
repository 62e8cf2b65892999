"""A raglan in one piece from the neck down: back and forth until the neck is as deep as it should be, then joined
by the stitches cast on for its front; sleeves from the stitches that were held.
"""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import to_repeat
from lastlook.knit.compose.raglan.counts import WHOLE_FRONT_KEEPS, RaglanCounts
from lastlook.knit.compose.raglan.whole.knitting import (
    PLAIN,
    Knitting,
    evened,
    lower_body,
    piece_name,
    side_shapings,
    sleeve_edges,
    whole_edges,
)
from lastlook.knit.compose.raglan.whole.section import Section, ended
from lastlook.knit.compose.raglan.whole.sleeve import DEC_ROUND, cuff_of, sleeve_shapings
from lastlook.knit.compose.raglan.whole.yoke import Yoke, words, yoke_of
from lastlook.knit.worked import Act, Ended, Shaping, Side


def neck_down(counts: RaglanCounts, asked: Asked) -> tuple[Section, ...]:
    """Return body and sleeves of a raglan worked from the neck down."""
    return _yoke_and_body(counts, asked), _sleeves(counts, asked)


def _yoke_and_body(counts: RaglanCounts, asked: Asked) -> Section:
    yoke, keeps = yoke_of(counts, asked.neck), WHOLE_FRONT_KEEPS
    parts = [keeps, counts.sleeve_top, counts.back_neck, counts.sleeve_top, keeps]
    knitting = Knitting(sum(parts), Side.WRONG, parts)
    knitting.lines.append(f"With larger needles cast on {sum(parts)} sts.")
    setting = knitting.markers()
    knitting.needle.row(PLAIN)
    knitting.say(f"Next row (wrong side): P{setting[1:]}.")
    for pair in reversed(yoke.pairs[yoke.below_neck :]):
        knitting.pair(pair, "inc")
    knitting.needle.mark("neck")
    _close_neck(knitting, yoke, counts.neck_center, asked)
    for pair in reversed(yoke.pairs[: yoke.below_neck - 1]):
        knitting.pair(pair, "inc")
    knitting.needle.mark("underarm")
    _divide(knitting, counts)
    rows = counts.side_rows - counts.rib_rows
    worked_up = side_shapings((counts.back - counts.hem) // 2, rows)
    downwards = [0] * rows
    for spot, change in enumerate(worked_up):
        if change:
            downwards[rows - spot] = -change
    lower_body(knitting, downwards[1:-1])
    flat = knitting.needle.side is not Side.ROUND
    evened(knitting, to_repeat(knitting.stitches, asked.edging.repeat, asked.edging.extra if flat else 0))
    knitting.say("")
    knitting.lines.append(f"Change to smaller needles. {ended(knitting, asked, counts.rib_rows)}")
    name = piece_name(asked)
    piece = knitting.needle.off(name, Ended.BOUND_OFF, whole_edges(name, counts))
    return Section(name.upper(), tuple(knitting.lines), piece)


def _close_neck(knitting: Knitting, yoke: Yoke, center: int, asked: Asked) -> None:
    """Cast on the front of the neck: at once, and join, or half at each front edge of a cardigan."""
    pair = yoke.pairs[yoke.below_neck - 1]
    for spot, hand in ((0, "left"), (1, "right")):
        shapings = (pair.body[spot], pair.sleeve[spot], 0)
        told = words(knitting.needle.side, "inc", shapings)
        more: tuple[Shaping, ...] = ()
        if center and (spot == 0 or asked.opening == "cardigan"):
            to_end = told or f"{'k' if spot == 0 else 'p'} to end"
            told, more = f"{to_end}, cast on {center} sts", (Shaping(Act.CAST_ON, hand, center),)
        knitting.yoke_row("inc", shapings, told, more)
        if more:
            knitting.parts[4 if spot == 0 else 0] += center
        if spot == 0 and asked.opening == "pullover":
            knitting.say("Join in a round, being careful not to twist.")
            knitting.join()


def _divide(knitting: Knitting, counts: RaglanCounts) -> None:
    right, sleeve, back, _, left = knitting.parts
    knitting.say(f"Remove the markers on the next {knitting.row}.")
    under = f"cast on {counts.underarm} sts, place a marker, cast on {counts.underarm} sts"
    held = [f"slip next {sleeve} sts on to a stitch holder for {hand} sleeve, {under}" for hand in ("right", "left")]
    told = f"k {right}, {held[0]}, k {back}, {held[1]}, k {left}"
    knitting.work(
        told,
        (Shaping(Act.HOLD, "inside", 2 * sleeve), Shaping(Act.CAST_ON, "inside", 4 * counts.underarm)),
    )


def _sleeves(counts: RaglanCounts, asked: Asked) -> Section:
    under, held = counts.underarm, counts.sleeve - 2 * counts.underarm
    knitting = Knitting(counts.sleeve, Side.ROUND, [])
    picked = f"pick up and k {under} sts along underarm"
    knitting.needle.row(PLAIN)
    knitting.say(
        f"With larger needles, beginning at center of underarm, {picked}, k {held} sts from sleeve holder, {picked}"
        f" -- {counts.sleeve} sts. Join in a round."
    )
    rows = counts.sleeve_rows - counts.cuff_rows
    cuff = cuff_of(counts, asked)
    shapings = sleeve_shapings((counts.sleeve - cuff) // 2, rows, counts.sleeve_free_rows)
    for change in reversed(shapings[1:-1]):
        edges = tuple(Shaping(Act.DECREASE, edge, 1) for edge in ("right", "left")) if change else ()
        knitting.work(DEC_ROUND if change else "", edges)
    evened(knitting, cuff)
    knitting.say("")
    knitting.lines.append(f"Change to smaller needles. {ended(knitting, asked, counts.cuff_rows)}")
    piece = knitting.needle.off("Sleeves", Ended.BOUND_OFF, sleeve_edges(counts), make=2)
    return Section("SLEEVES (make 2)", tuple(knitting.lines), piece)
