"""Mittens in the round, alike for both hands: a ribbed cuff, a thumb picked up round its opening, a pointed tip."""

from __future__ import annotations

from lastlook import wearer
from lastlook.finding import Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.body import Body
from lastlook.knit.compose.composed import (
    Composed,
    FinishedMeasure,
    cant_hold,
    edging_too_wide,
    not_composed,
    off_target,
    rows_unknown,
)
from lastlook.knit.compose.craft.evenly import to_repeat
from lastlook.knit.compose.raglan.leaflet import page_head, wrapped
from lastlook.knit.compose.round.evened import begun
from lastlook.knit.worked import Act, Ended, Shaping
from lastlook.quantity import Missing, Units, write_length

EASE_MM = 15.0
CUFF_MM = 60.0
THUMB_AT = 0.38
"""Where the thumb leaves the hand, over the hand's length: common practice, no source."""
THUMB_SHARE = 0.19
"""Stitches bound off for the thumb, of the hand's: common practice, no source."""
TIP_STITCHES = 8


def design_mittens(who: wearer.Wearer, asked: Asked) -> Composed:
    """Return mittens for a hand."""
    body = Body(who)
    girth, length = body.measured("hand_girth"), body.girth("hand_length")
    taken = who.taken("hand_girth")
    size = f"{write_length(taken.mm.best, Units.CM)} hand" if taken else "hers"
    if isinstance(asked.gauge.rows, Missing):
        return not_composed("Mittens", size, [rows_unknown(asked.gauge.rows)])
    if girth is None or length is None:
        return not_composed("Mittens", size, body.all_findings())
    g, r = asked.stitches_per_mm, asked.rows_per_mm
    hand = to_repeat((girth + EASE_MM) * g, 4)
    cuff, low = max(4, round(CUFF_MM * r)), max(4, round(length * THUMB_AT * r))
    tips = (hand - TIP_STITCHES) // 4
    high = round((length + 10.0) * r) - low - 2 - (2 * tips - 1)
    thumb = max(4, 2 * round(hand * THUMB_SHARE / 2))
    if high < 2:
        return not_composed("Mittens", size, [_too_short()])
    if asked.edging.repeat > hand:
        return not_composed("Mittens", size, [edging_too_wide(asked.edging.repeat, "the cuff", hand)])
    needle, start = begun(asked, hand, cuff, low)
    needle.row("stockinette", (Shaping(Act.BIND_OFF, "inside", thumb),))
    needle.row("stockinette", (Shaping(Act.CAST_ON, "inside", thumb),))
    needle.even("stockinette", high)
    lines = []
    for number in range(tips):
        half = needle.stitches // 2
        needle.row("stockinette", (Shaping(Act.DECREASE, "inside", 4),))
        between = f"k {half - 6}, " if half > 6 else ""
        row = f"(k 1, sl 1, k 1, psso, {between}k 2 tog, k 1) twice"
        lines.append(f"Next round: {row} -- {needle.stitches} sts.")
        if number < tips - 1:
            needle.row("stockinette")
            lines.append("Knit 1 round.")
    piece = needle.off("Mittens", Ended.DRAWN_UP, make=2)
    width, long = asked.gauge.width_mm(hand), asked.gauge.length_mm(len(piece.rows) - cuff)
    if isinstance(long, Missing):
        raise TypeError("mittens are composed only where the row gauge is known")
    measures = (
        FinishedMeasure("hand girth", girth + EASE_MM, width.best, width.plus_minus),
        FinishedMeasure("cuff to tip", length + 10.0, long.best, long.plus_minus),
    )
    page = _page(asked, size, start, (hand, high, thumb), (lines, _thumb(body, asked, thumb, length)))
    findings = (*body.all_findings(), *off_target(measures, 10.0))
    return Composed("Mittens", size, page, (piece,), (), measures, (), findings)


def _thumb(body: Body, asked: Asked, thumb: int, length: float) -> list[str]:
    around = 2 * thumb + 2
    rounds = max(6, round((body.maybe("thumb_length") or length * 0.3) * asked.rows_per_mm) - 3)
    return [
        f"With right side facing, pick up and k {around} sts around thumb opening. Knit {rounds} rounds.",
        f"Next round: (k 2 tog) {around // 2} times -- {around // 2} sts. Break yarn, draw through remaining"
        f" {around // 2} sts and fasten off.",
    ]


def _page(asked: Asked, size: str, start: str, counts: tuple[int, int, int], lines: tuple[list[str], list[str]]) -> str:
    hand, high, opening = counts
    tip, thumb = lines
    mitten = [
        "MITTENS (make 2)",
        start,
        f"Next round: K to last {opening} sts, bind off {opening} sts -- {hand - opening} sts.",
        f"Next round: K to end, cast on {opening} sts -- {hand} sts.",
        f"Knit {high} rounds.",
        "SHAPE TIP:",
        *tip,
        f"Break yarn, draw through remaining {TIP_STITCHES} sts and fasten off.",
    ]
    parts = ["MITTENS", *page_head(asked, size), "\n".join(mitten), "\n".join(["THUMBS (make 2)", *thumb])]
    return "\n\n".join(wrapped(part) for part in parts) + "\n"


def _too_short() -> Finding:
    return cant_hold(
        "The tip alone is longer than the hand above the thumb.",
        "Every other round takes four stitches, and there are not rounds enough.",
        "Measure the hand's length again.",
    )
