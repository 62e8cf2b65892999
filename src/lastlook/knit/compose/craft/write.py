"""A worked piece written down in the trade's notation, long repeats told once.

Rows that read alike are gathered: increases as 'inc 1 st each end of 7th row, then every 8th row 5 times',
decreases as short numbered lists that repeat. A printed count closes every passage, so that the page can be
proven.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.knit.compose.craft.evenly import ordinal, times_words
from lastlook.knit.compose.craft.needle import begins
from lastlook.knit.compose.craft.row_words import TEXTURED, row_words
from lastlook.knit.worked import Act, Ended, Side, WorkedPiece, WorkedRow

FABRICS = ("stockinette", TEXTURED)
EVENED = "evened"
"""The structure of an edging's last row where it brings the count to what the fabric above wants."""
MARKED = "ARMHOLES: Place a marker at each end of last row."
"""How an armhole begins that nothing is bound off for."""
LONGEST_LIST = 10
"""Rows in a numbered list that repeats; a slower cadence is told in words."""


@dataclass(frozen=True)
class Passage:
    """Some rows and the words for them."""

    words: str
    rows: int


def write_rows(rows: Sequence[WorkedRow]) -> list[str]:
    """Return the sentences for rows of stockinette."""
    out: list[str] = []
    spot = 0
    while spot < len(rows):
        passage = _passage(rows[spot:])
        out.append(passage.words)
        spot += passage.rows
    return out


def _passage(rows: Sequence[WorkedRow]) -> Passage:
    if _is_bind_off(rows[0]):
        return _bound_off(rows)
    if not rows[0].shapings:
        ahead = next((spot for spot, row in enumerate(rows) if row.shapings), len(rows))
        if ahead < len(rows) and _is_slow(rows, ahead):
            return _in_words(rows, ahead)
        return _plain(rows[:ahead])
    if _is_slow(rows, 0):
        return _in_words(rows, 0)
    return _list(rows)


def _plain(rows: Sequence[WorkedRow]) -> Passage:
    textured = rows[0].structure == TEXTURED
    if len(rows) == 1:
        return Passage("Work 1 row in pattern." if textured else f"{row_words(rows[0])} 1 row.", 1)
    end = "ending with a p row" if rows[-1].side is Side.WRONG else "ending with a k row"
    if textured:
        end = "ending with a wrong-side row" if rows[-1].side is Side.WRONG else "ending with a right-side row"
    return Passage(f"Work even{' in pattern' if textured else ''} for {len(rows)} rows, {end}.", len(rows))


def _is_bind_off(row: WorkedRow) -> bool:
    return any(one.act is Act.BIND_OFF for one in row.shapings)


def _is_slow(rows: Sequence[WorkedRow], first: int) -> bool:
    """Whether shaping is told in words: increases of one at the edges, and decreases far apart."""
    row = rows[first]
    if any(one.stitches != 1 or one.edge == "inside" for one in row.shapings):
        return False
    acts = {one.act for one in row.shapings}
    if acts == {Act.INCREASE}:
        return True
    following = next((spot for spot in range(first + 1, len(rows)) if rows[spot].shapings), first)
    return acts == {Act.DECREASE} and following - first > LONGEST_LIST


def _bound_off(rows: Sequence[WorkedRow]) -> Passage:
    first = next(one for one in rows[0].shapings if one.act is Act.BIND_OFF).stitches
    count = 1
    while count < len(rows) and _bare_bind_off(rows[count], first) and _bare_bind_off(rows[count - 1], first):
        count += 1
    if count > 1:
        return Passage(f"Bind off {first} sts at beg of next {count} rows -- {rows[count - 1].after} sts.", count)
    return Passage(f"Next row: {row_words(rows[0])} -- {rows[0].after} sts.", 1)


def _bare_bind_off(row: WorkedRow, stitches: int) -> bool:
    return len(row.shapings) == 1 and _is_bind_off(row) and row.shapings[0].stitches == stitches


def _in_words(rows: Sequence[WorkedRow], first: int) -> Passage:
    """Tell shapings that come at the same edges with plain rows between."""
    pattern = _signature(rows[first])
    spots = [first]
    for spot in range(first + 1, len(rows)):
        if not rows[spot].shapings:
            continue
        if _signature(rows[spot]) != pattern:
            break
        spots.append(spot)
    table = _runs([b - a for a, b in itertools.pairwise(spots)])
    where = _where(rows[first])
    start = "next row" if first == 0 else f"{ordinal(first + 1)} row"
    told = "".join(
        f", then every {'other' if every == 2 else ordinal(every)} row {times_words(times)}"
        if every > 1
        else f", then every row {times_words(times)}"
        for every, times in table
    )
    last = rows[spots[-1]]
    verb = "Inc" if rows[first].shapings[0].act is Act.INCREASE else "Dec"
    return Passage(f"{verb} 1 st {where} of {start}{told} -- {last.after} sts.", spots[-1] + 1)


def _runs(gaps: Sequence[int]) -> list[tuple[int, int]]:
    out: list[tuple[int, int]] = []
    for gap in gaps:
        if out and out[-1][0] == gap:
            out[-1] = (gap, out[-1][1] + 1)
        else:
            out.append((gap, 1))
    return out


def _where(row: WorkedRow) -> str:
    if len(row.shapings) == 2:
        return "each end"
    return "at beg" if row.shapings[0].edge == begins(row.side) else "at end"


def _signature(row: WorkedRow) -> tuple[object, ...]:
    marks = sorted((one.edge, one.act.value, one.stitches) for one in row.shapings)
    return (row.side if len(marks) == 1 else None, *marks)


def _list(rows: Sequence[WorkedRow]) -> Passage:
    """Tell decreases as numbered rows, with the period that covers most rows."""
    words = [row_words(row) if not _is_bind_off(row) else "" for row in rows]
    best = (1, 1)
    for period in range(2, min(LONGEST_LIST, len(rows)) + 1, 2):
        if "" in words[:period]:
            break
        times = 1
        while words[:period] == words[period * times : period * (times + 1)]:
            times += 1
        if period * times > best[0] * best[1] and (times > 1 or period == 2):
            best = (period, times)
    period, times = best
    if period == 1:
        count = "" if rows[0].after == 1 else f" -- {rows[0].after} sts"
        return Passage(f"Next row: {words[0]}{count}.", 1)
    return Passage(_numbered(rows[:period], words[:period], times, rows[period * times - 1].after), period * times)


def _numbered(rows: Sequence[WorkedRow], words: Sequence[str], times: int, after: int) -> str:
    if times == 1:
        lines = [f"Next row: {line}." for line in words]
        lines[0] = lines[0].removesuffix(".") + f" -- {rows[0].after} sts."
        return "\n".join(lines)
    lines = [f"Row {number}: {line}." for number, line in enumerate(words, 1)]
    return "\n".join([*lines, f"Repeat last {len(rows)} rows {_more(times - 1)} -- {after} sts."])


def _more(times: int) -> str:
    return {1: "once more", 2: "twice more"}.get(times, f"{times} times more")


def write_piece(piece: WorkedPiece, needles: tuple[str, str] = ("smaller", "larger")) -> list[str]:
    """Return the paragraphs of a piece that begins with its edging."""
    start = f"With {needles[0]} needles cast on {piece.cast_on} sts."
    edging = next((spot for spot, row in enumerate(piece.rows) if row.structure in FABRICS), len(piece.rows))
    marks = dict(piece.landmarks)
    underarm = marks.get("underarm", len(piece.rows))
    lower = " ".join(write_rows(piece.rows[edging:underarm]))
    opening = f"{start} {_edging(piece.rows[:edging])} Change to {needles[1]} needles."
    if edging < len(piece.rows) and piece.rows[edging].structure == TEXTURED:
        more = any(one.act is Act.INCREASE for row in piece.rows[edging:underarm] for one in row.shapings)
        taken = " Take the new sts into pattern as they come." if more else ""
        first = f"{opening} Work in pattern as follows: {lower}{taken}"
    else:
        first = f"{opening} Beginning with a k row, work in stockinette st as follows: {lower}"
    shoulder = max(underarm, marks.get("shoulder", len(piece.rows)))
    heading = upper_heading(piece)
    if heading == "SHAPE ARMHOLES:" and not any(_is_bind_off(row) for row in piece.rows[underarm : underarm + 2]):
        heading = MARKED
    upper = _headed(heading, write_rows(piece.rows[underarm:shoulder]))
    top = _headed("SHAPE SHOULDERS:", write_rows(piece.rows[shoulder:]))
    return [first, *upper, *top, *ending(piece)]


def _edging(rows: Sequence[WorkedRow]) -> str:
    """Return the sentences for an edging, and for the row that evens its count out to the fabric's."""
    last = rows[-1]
    if last.structure != EVENED:
        return edging_words(rows[0].structure, len(rows))
    return f"{edging_words(rows[0].structure, len(rows) - 1)} Next row: {row_words(last)} -- {last.after} sts."


def _headed(head: str, lines: list[str]) -> list[str]:
    return [f"{head} {lines[0]}".strip(), *lines[1:]] if lines else []


def upper_heading(piece: WorkedPiece) -> str:
    """Return the heading of what comes above the underarm, by what its edges are called."""
    names = " ".join(edge.name.edge for edge in piece.edges)
    table = (("raglan", "SHAPE RAGLAN:"), ("cap", "SHAPE CAP:"), ("armhole", "SHAPE ARMHOLES:"))
    return next((words for word, words in table if word in names), "")


def edging_words(structure: str, rows: int) -> str:
    """Return the sentence for so many rows of an edging; a hem's last two are its fold."""
    if structure == "hem":
        return f"Work in stockinette st for {rows - 2} rows. P 1 row on right side for turning ridge. P 1 row."
    rib = re.fullmatch(r"rib (\d+)x(\d+)", structure)
    told = f"in ribbing of k {rib.group(1)}, p {rib.group(2)}" if rib else "in garter st"
    return f"Work {told} for {rows} row{'s' if rows != 1 else ''}."


def ending(piece: WorkedPiece) -> list[str]:
    """Return the sentence that takes the piece off the needle."""
    if piece.ended is Ended.BOUND_OFF:
        return [f"Bind off remaining {piece.end_stitches} sts."]
    if piece.ended is Ended.FASTENED_OFF and piece.end_stitches > 1:
        return [f"Next row: K {piece.end_stitches} tog and fasten off."]
    if piece.ended is Ended.ON_HOLDER:
        return [f"Place remaining {piece.end_stitches} sts on a stitch holder."]
    return []
