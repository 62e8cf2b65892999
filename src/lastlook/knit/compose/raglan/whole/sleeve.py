"""The sleeve of a seamless raglan, in rounds between underarm and cuff: where it is shaped, and in what words."""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import intervals, to_repeat
from lastlook.knit.compose.raglan.counts import RaglanCounts

INC_ROUND = "k 2, m 1, k to last 2 sts, m 1, k 2"
DEC_ROUND = "k 1, sl 1, k 1, psso, k to last 3 sts, k 2 tog, k 1"


def cuff_of(counts: RaglanCounts, asked: Asked) -> int:
    """Return the stitches of a cuff in rounds: whole repeats of its edging, no more than the sleeve has."""
    repeat = asked.edging.repeat
    cuff = to_repeat(counts.cuff, repeat)
    return cuff if cuff <= counts.sleeve else max(repeat, counts.sleeve // repeat * repeat)


def sleeve_shapings(times: int, rows: int, free: int) -> list[int]:
    """Return in which rounds above the cuff both edges are shaped; the first two and the last `free` stay plain."""
    out = [0] * rows
    room = rows - 2 - free if rows - 2 - free >= 2 * times else rows - 3
    step = 2 if room >= 2 * times else 1
    table = intervals(times, room, step)
    if times and not table:
        raise ValueError(f"{times} shapings don't go into {rows} rounds")
    spot = 2
    for every, often in table:
        for _ in range(often):
            out[spot] = 1
            spot += every
    return out
