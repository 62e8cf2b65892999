"""Rows of one fabric in the trade's words, whatever the fabric is: flat or in the round, shaped or not.

Stockinette is told stitch by stitch; every other fabric is kept to, and only what shapes it is told.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from lastlook.knit.compose.alter.shape.holes import is_eyelet, pocket
from lastlook.knit.compose.craft.evenly import ordinal, times_words
from lastlook.knit.compose.craft.needle import begins
from lastlook.knit.compose.craft.write import write_rows
from lastlook.knit.worked import Act, Shaping, Side, WorkedRow

NAMES = {"stockinette": "stockinette st", "garter": "garter st", "moss": "seed st", "seed": "seed st"}
VERBS = {Act.DECREASE: "dec", Act.INCREASE: "inc", Act.BIND_OFF: "bind off", Act.CAST_ON: "cast on"}


def fabric(structure: str) -> str:
    """Return a fabric as a leaflet names it.

    >>> fabric("rib 2x1")
    'ribbing of k 2, p 1'
    """
    rib = re.fullmatch(r"rib (\d+)x(\d+)", structure)
    if rib:
        return f"ribbing of k {rib.group(1)}, p {rib.group(2)}"
    if structure.startswith("rib"):
        return "ribbing"
    named = NAMES.get(structure, structure)
    return named if named.split()[-1] in ("st", "stitch", "pattern") else f"{named} st"


def run(rows: Sequence[WorkedRow]) -> list[str]:
    """Return the sentences for rows of one fabric."""
    structure, turning = rows[0].structure, rows[0].side is not Side.ROUND
    many = "row" if turning else "round"
    if not any(row.shapings for row in rows):
        return [_even(structure, len(rows), many)]
    lead = f"Work in {fabric(structure)} as follows:"
    if structure == "stockinette" and turning and _told_by_stitch(rows):
        return [lead, *(_plainly(words) for words in write_rows(rows))]
    return [lead, *_kept_to(rows, many)]


def _plainly(words: str) -> str:
    """Return a passage whose single plain rows are told as such, so that no label runs on into what follows."""
    return words.replace("Next row: Purl.", "Purl 1 row.").replace("Next row: Knit.", "Knit 1 row.")


def _even(structure: str, rows: int, many: str) -> str:
    return f"Work in {fabric(structure)} for {rows} {many}{'' if rows == 1 else 's'}."


def _told_by_stitch(rows: Sequence[WorkedRow]) -> bool:
    """Whether every shaping is of a kind that is told stitch by stitch."""
    told = all(_is_told(one) and len(row.shapings) <= 2 for row in rows for one in row.shapings)
    along = sum(1 for row in rows for one in row.shapings if one.edge == "inside")
    return told and along < 2 and not any(is_eyelet(row) for row in rows)


def _is_told(one: Shaping) -> bool:
    if one.edge == "inside":
        return one.act in (Act.INCREASE, Act.DECREASE) and not one.inset
    return one.act in (Act.DECREASE, Act.BIND_OFF) or (one.act is Act.INCREASE and one.stitches == 1)


def _kept_to(rows: Sequence[WorkedRow], many: str) -> list[str]:
    """Tell plain rows as rows worked even, and shaped ones by what is taken or given where."""
    out: list[str] = []
    spot = 0
    while spot < len(rows):
        ahead = next((at for at in range(spot, len(rows)) if rows[at].shapings), len(rows))
        if ahead > spot:
            out.append(f"Work even for {ahead - spot} {many}{'' if ahead - spot == 1 else 's'}.")
        spot = ahead
        if spot < len(rows):
            words, used = _shaped(rows, spot, many)
            out.append(words)
            spot += used
    return out


def _shaped(rows: Sequence[WorkedRow], spot: int, many: str) -> tuple[str, int]:
    """Return the words for a shaped row, and how many rows they cover."""
    row = rows[spot]
    if _is_pair(rows, spot):
        pairs = 1
        while _is_pair(rows, spot + 2 * pairs) and rows[spot + 2 * pairs].shapings[0].stitches == _off(row):
            pairs += 1
        last = rows[spot + 2 * pairs - 1]
        return f"Bind off {_off(row)} sts at beg of next {2 * pairs} rows -- {last.after} sts.", 2 * pairs
    if _is_cadence(row):
        return _cadence(rows, spot, many)
    if is_eyelet(row):
        return f"Next {many} (buttonhole row): {_eyelet(row)}.", 1
    if _is_hole_row(row):
        return f"Next {many} (buttonhole row): {sentence(row)}.", 1
    return f"Next {many}: {sentence(row)} -- {row.after} sts.", 1


def _off(row: WorkedRow) -> int:
    return row.shapings[0].stitches


def _is_pair(rows: Sequence[WorkedRow], spot: int) -> bool:
    """Whether two rows bind off as many stitches, each at its beginning."""
    two = rows[spot : spot + 2]
    bare = [row for row in two if len(row.shapings) == 1 and row.shapings[0].act is Act.BIND_OFF]
    at_start = all(row.shapings[0].edge == begins(row.side) and row.side is not Side.ROUND for row in bare)
    return len(bare) == 2 and at_start and _off(bare[0]) == _off(bare[1])


def _is_cadence(row: WorkedRow) -> bool:
    acts = {one.act for one in row.shapings}
    singles = all(one.stitches == 1 and one.edge != "inside" for one in row.shapings)
    return singles and len(acts) == 1 and acts <= {Act.DECREASE, Act.INCREASE}


def _cadence(rows: Sequence[WorkedRow], spot: int, many: str) -> tuple[str, int]:
    """Tell shapings of one at the same edges, at one distance, in one sentence."""
    row, spots = rows[spot], [spot]
    for at in range(spot + 1, len(rows)):
        if not rows[at].shapings:
            continue
        gap = spots[1] - spots[0] if len(spots) > 1 else at - spot
        if _mark(rows[at]) != _mark(row) or at - spots[-1] != gap:
            break
        spots.append(at)
    verb = "Dec" if row.shapings[0].act is Act.DECREASE else "Inc"
    told = f"{verb} 1 st {_where(row)} of next {many}"
    if len(spots) > 1:
        gap = spots[1] - spots[0]
        every = f"every {many}" if gap == 1 else f"every {'other' if gap == 2 else ordinal(gap)} {many}"
        told += f", then {every} {times_words(len(spots) - 1)}"
    return f"{told} -- {rows[spots[-1]].after} sts.", spots[-1] - spot + 1


def _mark(row: WorkedRow) -> tuple[object, ...]:
    marks = sorted((one.edge, one.act.value, one.stitches) for one in row.shapings)
    return (row.side if len(marks) == 1 else None, *marks)


def _where(row: WorkedRow) -> str:
    if len(row.shapings) == 2:
        return "each end"
    return "at beg" if row.shapings[0].edge == begins(row.side) else "at end"


def sentence(row: WorkedRow) -> str:
    """Tell one row: what happens at its beginning, along it, and at its end."""
    inside = [one for one in row.shapings if one.edge == "inside"]
    if inside:
        return _along(row, inside[0])
    first = begins(row.side)
    start = [_at_beg(row, one) for one in row.shapings if one.edge == first]
    end = [_at_end(row, one) for one in row.shapings if one.edge != first]
    told = ", ".join([*start, *(end or ["work to end"])])
    return told[:1].upper() + told[1:]


def _at_beg(row: WorkedRow, one: Shaping) -> str:
    verb = "p" if row.side is Side.WRONG else "k"
    if one.act is Act.DECREASE:
        return f"{verb} {one.stitches + 1} tog"
    if one.act is Act.INCREASE:
        return f"inc {one.stitches} st{'' if one.stitches == 1 else 's'} in first st"
    return f"{VERBS[one.act]} {one.stitches} sts"


def _at_end(row: WorkedRow, one: Shaping) -> str:
    verb = "p" if row.side is Side.WRONG else "k"
    if one.act is Act.DECREASE:
        return f"work to last {one.stitches + 1} sts, {verb} {one.stitches + 1} tog"
    if one.act is Act.INCREASE:
        return f"work to last st, inc {one.stitches} st{'' if one.stitches == 1 else 's'} in last st"
    return f"work to end, {VERBS[one.act]} {one.stitches} sts"


def _is_hole_row(row: WorkedRow) -> bool:
    """Whether a row binds off a buttonhole; its count isn't told, since the next row casts on again."""
    return any(one.edge == "inside" and one.act is Act.BIND_OFF and one.inset for one in row.shapings)


def _verb(row: WorkedRow) -> str:
    if row.structure == "stockinette":
        return "p" if row.side is Side.WRONG else "k"
    return "rib" if row.structure.startswith("rib") else "k" if row.structure == "garter" else "work"


def _eyelet(row: WorkedRow) -> str:
    one, verb = row.shapings[0], _verb(row)
    inset = min(each.inset for each in row.shapings)
    if one.edge == begins(row.side) or one.edge == "inside":
        told = f"{verb} {inset}, yo, k 2 tog, {verb} to end"
    else:
        told = f"{verb} to last {inset + 2} sts, yo, k 2 tog, {verb} {inset}"
    return told[:1].upper() + told[1:]


def _hole(row: WorkedRow, one: Shaping) -> str:
    verb = _verb(row)
    if one.act is Act.BIND_OFF:
        told = f"{verb} {one.inset}, bind off {one.stitches} sts, {verb} to end"
    else:
        told = f"{verb} to last {one.inset} sts, cast on {one.stitches} sts, {verb} {one.inset}"
    return told[:1].upper() + told[1:]


def _along(row: WorkedRow, one: Shaping) -> str:
    across = "Rib across" if row.structure.startswith("rib") else "Work across"
    if row.structure == "stockinette":
        across = "P across" if row.side is Side.WRONG else "K across" if row.side is Side.RIGHT else "K around"
    if one.act in (Act.INCREASE, Act.DECREASE):
        return f"{across}, {VERBS[one.act]} {one.stitches} sts evenly spaced"
    if pocket(row):
        side = (row.before - one.stitches) // 2
        lining = f"work across {one.stitches} sts of pocket lining"
        return f"Work {side} sts, slip next {one.stitches} sts on to a stitch holder, {lining}, work to end"
    if one.act is Act.CAST_ON or one.inset:
        return _hole(row, one)
    side = (row.before - one.stitches) // 2
    off = "bind off" if one.act is Act.BIND_OFF else "place on a holder"
    return f"Work {side} sts, {off} {one.stitches} sts, work to end"
