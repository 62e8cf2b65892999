"""A ribbed hat in the round, brim to crown: wedges drawn together at the top, as many as fit the head."""

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
from lastlook.knit.compose.raglan.leaflet import page_head, wrapped
from lastlook.knit.compose.round.evened import begun
from lastlook.knit.worked import Act, Ended, Shaping
from lastlook.quantity import Missing, Units, write_length

WEDGES = (8, 7, 9, 6)
"""How many wedges a crown may have, the usual first."""
STRETCH = 0.95
"""A hat is a twentieth smaller than the head, so that it stays on: common practice, no source."""
HEIGHT_SHARE = 0.36
"""Brim to crown over the head's girth, where the height was not measured: common practice, no source."""
BRIM_MM = 50.0
HALF_CM_MM = 5.0


def design_hat(who: wearer.Wearer, asked: Asked) -> Composed:
    """Return a hat for a head."""
    body = Body(who)
    head = body.measured("head_girth")
    taken = who.taken("head_girth")
    size = f"{write_length(taken.mm.best, Units.CM)} head" if taken else "hers"
    if isinstance(asked.gauge.rows, Missing):
        return not_composed("Hat", size, [rows_unknown(asked.gauge.rows)])
    if head is None:
        return not_composed("Hat", size, body.all_findings())
    g, r = asked.stitches_per_mm, asked.rows_per_mm
    girth = head * STRETCH
    wedges, each = _wedges(girth * g)
    if asked.edging.repeat > wedges * each:
        return not_composed("Hat", size, [edging_too_wide(asked.edging.repeat, "the brim", wedges * each)])
    height = body.maybe("head_height") or head * HEIGHT_SHARE
    crown = 2 * (each - 1) - 1
    brim = max(4, round(BRIM_MM * r))
    straight = round(height * r) - crown - brim
    if straight < 2:
        return not_composed("Hat", size, [_too_low()])
    needle, start = begun(asked, wedges * each, brim, straight)
    lines = []
    for left in range(each - 2, -1, -1):
        needle.row("stockinette", (Shaping(Act.DECREASE, "inside", wedges),))
        lead = f"(k {left}, k 2 tog) {wedges} times" if left else f"(k 2 tog) {wedges} times"
        lines.append(f"Next round: {lead[:1] + lead[1:]} -- {needle.stitches} sts.")
        if left:
            needle.row("stockinette")
            lines.append("Knit 1 round.")
    piece = needle.off("Hat", Ended.DRAWN_UP)
    measures = _measures(asked, girth, height, wedges * each, len(piece.rows))
    parts = [
        "HAT",
        *page_head(asked, size),
        "\n".join(
            [
                "HAT",
                start,
                "SHAPE CROWN:",
                *lines,
                f"Break yarn, draw through remaining {wedges} sts and fasten off.",
            ]
        ),
    ]
    page = "\n\n".join(wrapped(part) for part in parts) + "\n"
    findings = (*body.all_findings(), *off_target(measures, 2 * HALF_CM_MM))
    return Composed("Hat", size, page, (piece,), (), measures, (), findings)


def _wedges(stitches: float) -> tuple[int, int]:
    """Return how many wedges of how many stitches come nearest to a count, even in all for the rib."""
    table = [(abs(round(stitches / one) * one - stitches) + 0.1 * rank, one) for rank, one in enumerate(WEDGES)]
    even = [(miss, one) for miss, one in table if round(stitches / one) * one % 2 == 0]
    wedges = min(even)[1] if even else WEDGES[0]
    return wedges, max(3, round(stitches / wedges))


def _measures(asked: Asked, girth: float, height: float, stitches: int, rounds: int) -> tuple[FinishedMeasure, ...]:
    width, length = asked.gauge.width_mm(stitches), asked.gauge.length_mm(rounds)
    if isinstance(length, Missing):
        raise TypeError("a hat is composed only where the row gauge is known")
    return (
        FinishedMeasure("girth", girth, width.best, width.plus_minus),
        FinishedMeasure("brim to crown", height, length.best, length.plus_minus),
    )


def _too_low() -> Finding:
    return cant_hold(
        "The crown alone is higher than the hat.",
        "The wedges take two rounds for each of their stitches.",
        "Measure the head's height, or work at a gauge with more rows.",
    )
