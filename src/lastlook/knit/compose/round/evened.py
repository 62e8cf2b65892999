"""A ribbed beginning in the round that takes whole repeats, and the round that evens its count out above."""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import to_repeat
from lastlook.knit.compose.craft.needle import Needle
from lastlook.knit.compose.craft.write import edging_words
from lastlook.knit.worked import Act, Shaping, Side

PLAIN = "stockinette"


def begun(asked: Asked, stitches: int, edging: int, rounds: int) -> tuple[Needle, str]:
    """Return a needle with its edging and so many plain rounds worked, and the words for them."""
    cast_on = to_repeat(stitches, asked.edging.repeat)
    needle = Needle(cast_on, Side.ROUND)
    needle.even(asked.edging.structure, edging)
    told = f"With smaller needles cast on {cast_on} sts. Join, being careful not to twist."
    told += f" {edging_words(asked.edging.structure, edging).replace(' rows', ' rounds')} Change to larger needles."
    told += " Work in stockinette st (k each round)."
    change = stitches - cast_on
    if change:
        act, word = (Act.INCREASE, "inc") if change > 0 else (Act.DECREASE, "dec")
        needle.row(PLAIN, (Shaping(act, "inside", abs(change)),))
        how = f"K across, {word} {abs(change)} sts evenly spaced"
        if abs(change) == 1:
            how = "K 1, m 1, k to end" if change > 0 else "K 1, k 2 tog, k to end"
        told += f" Next round: {how} -- {stitches} sts."
    left = rounds - (1 if change else 0)
    needle.even(PLAIN, left)
    return needle, f"{told} Knit {left} rounds."
