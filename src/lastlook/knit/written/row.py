"""One row in our own words: from its counts, its side and its shapings alone."""

from __future__ import annotations

import re
from collections.abc import Iterable

from lastlook.knit.worked import Act, Shaping, Side, WorkedRow

FABRICS = {
    "stockinette": "stockinette st", "garter": "garter st", "plain": "garter st", "moss": "seed st",
    "reverse stockinette": "reverse stockinette st", "purl": "reverse stockinette st",
}  # fmt: skip
RIBBED = re.compile(r"rib (\d+)x(\d+)")
EVENLY = {Act.INCREASE: "inc", Act.DECREASE: "dec"}


def fabric_name(structure: str) -> str:
    """Return what plain rows are worked in."""
    rib = RIBBED.fullmatch(structure)
    return f"k {rib[1]}, p {rib[2]} rib" if rib else FABRICS.get(structure, "pattern")


def verb(row: WorkedRow) -> str:
    """Return what is done with a stitch that is not shaped."""
    name = row.structure
    if name.startswith("rib"):
        return "rib"
    if name in ("reverse stockinette", "purl"):
        return "k" if row.side is Side.WRONG else "p"
    if name in ("garter", "knit"):
        return "k"
    if name in ("stockinette", "plain", ""):
        return "p" if row.side is Side.WRONG else "k"
    return "patt"


def row_words(row: WorkedRow, ahead: int, parts: tuple[int, ...] = (), held: int = 0) -> str:
    """Write a row: what falls at its start, how it goes on, what falls at its end.

    `parts` are the groups that it leaves, or that it closes a gap between; `held` waits on a holder.
    """
    if row.before == 0:
        return f"pick up and k {row.gives} sts"
    how = verb(row)
    if len(parts) > 1 and row.used == ahead:
        return _parting(row, how, parts)
    first = "left" if row.side is Side.WRONG else "right"
    start = sorted((one for one in row.shapings if one.edge == first), key=lambda one: one.inset)
    end = sorted((one for one in row.shapings if one.edge not in (first, "inside")), key=lambda one: one.inset)
    inside = [one for one in row.shapings if one.edge == "inside"]
    if row.used < ahead:
        return _turned(row, how, [*start, *inside, *end], ahead)
    picked = sum(one.stitches for one in inside if one.act is Act.PICK_UP)
    if picked or (row.gives > row.used and not row.shapings):
        more = row.gives - row.used
        if held == more:
            return f"k the {held} sts from the spare needle on to the same needle"
        taken = f", k {held} sts from the holder" if 0 < held < more else ""
        return f"pick up and k {more - held if taken else more} sts{taken}, {how} to end"
    if len(inside) > 1 or (inside and (start or end)):
        return _placed(row, how, [*start, *inside, *end])
    opening, used = _at_start(start, how, row.side, 1)
    closing, kept = _at_end(end, how, row.side, 1)
    if used + kept > row.used:
        opening, used = _at_start(start, how, row.side, 0)
        closing, kept = _at_end(end, how, row.side, 0)
    between = row.used - used - kept
    if between < 0:
        return _crowded(row, how)
    if not (opening or closing or inside):
        return {"k": "knit", "p": "purl"}.get(how, f"{how} to end")
    middle = [f"{how} to last {kept} sts" if kept else f"{how} to end"] if between > 0 else []
    return ", ".join([*opening, *middle, *closing, *(_across(one) for one in inside)])


def _across(one: Shaping) -> str:
    if one.act in EVENLY:
        return f"{EVENLY[one.act]} {one.stitches} sts evenly"
    return {Act.BIND_OFF: "bind off", Act.HOLD: "hold", Act.CAST_ON: "cast on"}[one.act] + f" {one.stitches} sts"


def _parting(row: WorkedRow, how: str, parts: tuple[int, ...]) -> str:
    """'K 20, bind off 16 sts, k 20': what lies between two groups is bound off, held, or the second is only left."""
    gaps = [one for one in row.shapings if one.edge == "inside" and one.act in (Act.BIND_OFF, Act.HOLD, Act.CAST_ON)]
    words = [f"{how} {parts[0]}"]
    for number, count in enumerate(parts[1:]):
        if number < len(gaps):
            gap = gaps[number]
            words.append(_change(gap, how, row.side, "")[0])
        words.append(f"{how} {count}")
    return ", ".join(words)


def _turned(row: WorkedRow, how: str, shapings: Iterable[Shaping], ahead: int) -> str:
    """A row that turns before its end, with its shapings where they fell, counted from where it began."""
    words, at = [], 0
    first = "left" if row.side is Side.WRONG else "right"
    for one in sorted(shapings, key=lambda each: _place(each, first, ahead)):
        told, takes = _change(one, "p" if how == "p" else "k", row.side, "left" if one.lean == "left" else "right")
        place = _place(one, first, ahead)
        if place + takes > row.used:
            # What is passed over another stitch is placed where it is passed, behind both.
            place = max(at, place - takes)
        if place > at:
            words.append(f"{how} {place - at}")
        words.append(told)
        at = max(at, place) + takes
    if row.used > at:
        words.append(f"{how} {row.used - at}")
    return ", ".join([*words, "turn"])


def _placed(row: WorkedRow, how: str, shapings: list[Shaping]) -> str:
    """Shapings all over a row: each where it fell, or all of them evenly where their places are not known."""
    words, at = [], 0
    first = "left" if row.side is Side.WRONG else "right"
    base = "p" if how == "p" else "k"
    for one in sorted(shapings, key=lambda each: _place(each, first, row.used)):
        place = _place(one, first, row.used)
        told, takes = _change(one, base, row.side, "left" if one.lean == "left" else "right")
        if place < at or (one.edge == "inside" and not one.inset) or place + takes > row.used:
            return _all_evenly(row, how)
        words += [f"{how} {place - at}"] * (place > at) + [told]
        at = place + takes
    return ", ".join([*words, *([f"{how} to end"] if at < row.used else [])])


def _all_evenly(row: WorkedRow, how: str) -> str:
    change = row.gives - row.used
    verb = "inc" if change > 0 else "dec"
    return f"{how} to end, {verb} {abs(change)} sts evenly" if change else f"{how} to end"


def _place(one: Shaping, first: str, ahead: int) -> int:
    if one.edge in (first, "inside"):
        return one.inset
    return ahead - one.inset - one.stitches - 1


def _crowded(row: WorkedRow, how: str) -> str:
    """So few stitches are left that the shapings touch: take them together as they come."""
    gone = row.used - row.gives
    if gone > 0 and row.gives > 0:
        rest = row.gives - 1
        return f"{how} {rest}, k {gone + 1} tog" if rest else f"k {row.used} tog"
    return {"k": "knit", "p": "purl"}.get(how, f"{how} to end")


def _at_start(shapings: list[Shaping], how: str, side: Side, room: int) -> tuple[list[str], int]:
    words: list[str] = []
    used = 0
    for one in shapings:
        inset = max(one.inset - used, 0) if room else 0
        if room and one.act in EVENLY and one.lean is None and not one.inset and one.stitches == 1:
            inset = 1
        words += [f"{how} {inset}"] * bool(inset)
        told, takes = _change(one, "p" if how == "p" else "k", side, one.lean or _inward(side, at_start=1))
        words.append(told)
        used += inset + takes
    return words, used


def _at_end(shapings: list[Shaping], how: str, side: Side, room: int) -> tuple[list[str], int]:
    words: list[str] = []
    kept = 0
    for one in shapings:
        inset = max(one.inset - kept, 0) if room else 0
        if room and one.act in EVENLY and one.lean is None and not one.inset and one.stitches == 1:
            inset = 1
        told, takes = _change(one, "p" if how == "p" else "k", side, one.lean or _inward(side, at_start=0))
        words = [told, *[f"{how} {inset}"] * bool(inset), *words]
        kept += inset + takes
    return words, kept


def _inward(side: Side, *, at_start: int) -> str:
    """Return the lean of a decrease that follows its edge: to the left at the right edge."""
    at_right_edge = (side is not Side.WRONG) == bool(at_start)
    return "left" if at_right_edge else "right"


def _change(one: Shaping, base: str, side: Side, lean: str) -> tuple[str, int]:
    """Return the words of one shaping and how many stitches it takes up."""
    count = one.stitches
    if one.act is Act.BIND_OFF:
        return f"bind off {count} sts", count
    if one.act is Act.HOLD:
        return f"slip next {count} sts on a holder", count
    if one.act is Act.CAST_ON:
        return f"cast on {count} sts", 0
    if one.act is Act.PICK_UP:
        return f"pick up and k {count} sts", 0
    if one.act is Act.INCREASE:
        return ", ".join(["inc in next st"] * count), count
    if count > 2:
        return f"({base} 2 tog) {count} times", 2 * count
    if side is Side.WRONG and base == "p":
        return f"p {count + 1} tog" + (" tbl" if lean == "left" else ""), count + 1
    if lean == "left":
        return ("sl 1, k 1, psso" if count == 1 else "sl 1, k 2 tog, psso"), count + 1
    return f"k {count + 1} tog", count + 1
