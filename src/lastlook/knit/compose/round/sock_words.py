"""A sock as a leaflet: on three needles, heel on the first and third, instep on the second."""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.write import edging_words
from lastlook.knit.compose.raglan.leaflet import page_head, wrapped
from lastlook.knit.compose.round.sock_work import Counts

LEFT = "sl 1, k 1, psso"


def sock_page(counts: Counts, asked: Asked, size: str) -> str:
    """Return the leaflet."""
    lines = ["SOCKS (make 2)", *_leg(counts, asked), *_flap(counts), *_turn(counts), *_gussets(counts), *_toe(counts)]
    return "\n\n".join(wrapped(part) for part in ["SOCKS", *page_head(asked, size), "\n".join(lines)]) + "\n"


def _leg(counts: Counts, asked: Asked) -> list[str]:
    quarter, half = counts.around // 4, counts.heel
    rib = edging_words(asked.edging.structure, counts.cuff_rounds).replace(" rows", " rounds")
    return [
        f"With smaller needles cast on {counts.around} sts. Divide on 3 needles: {quarter} sts on first needle,"
        f" {half} sts on second needle and {quarter} sts on third needle. Join, being careful not to twist. {rib}"
        f" Change to larger needles. Work in stockinette st (k each round). Knit {counts.leg_rounds} rounds.",
    ]


def _flap(counts: Counts) -> list[str]:
    half = counts.heel
    return [
        f"HEEL: K {counts.around // 4} sts of first needle on to third needle -- {half} sts on heel needle. Divide"
        f" remaining {half} sts on 2 needles and leave for instep. Turn and work on heel sts only:",
        f"Row 1 (wrong side): Sl 1, p {half - 1}.",
        "Row 2: * Sl 1, k 1; repeat from * across.",
        f"Repeat last 2 rows {half // 2 - 1} times more -- {half} rows.",
    ]


def _turn(counts: Counts) -> list[str]:
    """Return the turned heel in full: each row takes one stitch beyond the gap, and one more between."""
    lines = [f"TURN HEEL: Row 1 (wrong side): P {counts.purled}, p 2 tog, p 1, turn."]
    for number in range(2, counts.turn_rows + 1):
        verb, dec = ("k", LEFT) if number % 2 == 0 else ("p", "p 2 tog")
        end = f" -- {counts.heel_left} sts" if number == counts.turn_rows else ", turn"
        lines.append(f"Row {number}: Sl 1, {verb} {counts.between + number - 2}, {dec}, {verb} 1{end}.")
    return lines


def _gussets(counts: Counts) -> list[str]:
    side, half, left = counts.picked, counts.heel, counts.heel_left // 2
    more, times = counts.gusset_decreases - 1, counts.gusset_decreases
    again = {0: "", 1: "Repeat last 2 rounds once more"}.get(more, f"Repeat last 2 rounds {more} times more")
    shaped = [
        f"Round 1: First needle: k to last 3 sts, k 2 tog, k 1. Second needle: k. Third needle: k 1, {LEFT}, k to end.",
        "Round 2: Knit.",
        *([f"{again} -- {counts.around} sts."] if again else []),
    ]
    return [
        f"GUSSETS: With same needle pick up and k {side} sts along side of heel; with second needle k {half} instep"
        f" sts; with third needle pick up and k {side} sts along other side of heel and k {left} of the heel sts."
        f" There are now {side + left} sts on first needle, {half} sts on second and {side + left} sts on third --"
        f" {2 * (side + left) + half} sts.",
        *(shaped if times else []),
        f"FOOT: Knit {counts.foot_rounds} rounds.",
    ]


def _toe(counts: Counts) -> list[str]:
    more, left = counts.toe_decreases - 1, counts.toe_left
    again = {0: "", 1: "Repeat last 2 rounds once more"}.get(more, f"Repeat last 2 rounds {more} times more")
    return [
        "TOE: Round 1: First needle: k to last 3 sts, k 2 tog, k 1. Second needle: k 1,"
        f" {LEFT}, k to last 3 sts, k 2 tog, k 1. Third needle: k 1, {LEFT}, k to end.",
        "Round 2: Knit.",
        *([f"{again} -- {left} sts."] if again else []),
        f"K {left // 4} sts of first needle on to third needle. Break yarn and weave the {left // 2} sole sts and"
        f" {left // 2} instep sts together.",
    ]
