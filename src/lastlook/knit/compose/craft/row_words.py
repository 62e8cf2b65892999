"""One row of plain knitting in the trade's words, exact for its stitches and alike for all rows shaped alike."""

from __future__ import annotations

import re

from lastlook.knit.compose.craft.needle import begins
from lastlook.knit.worked import Act, Shaping, Side, WorkedRow

LEFT_LEAN = {
    (Side.RIGHT, 1): ("sl 1, k 1, psso", 2),
    (Side.RIGHT, 2): ("sl 1, k 2 tog, psso", 3),
    (Side.WRONG, 1): ("p 2 tog through back", 2),
    (Side.WRONG, 2): ("p 3 tog through back", 3),
}
RIGHT_LEAN = {
    (Side.RIGHT, 1): ("k 2 tog", 2),
    (Side.RIGHT, 2): ("k 3 tog", 3),
    (Side.WRONG, 1): ("p 2 tog", 2),
    (Side.WRONG, 2): ("p 3 tog", 3),
}
"""The words of a decrease and the stitches they take up, by the side that faces and how many it takes off."""


TEXTURED = "texture"
"""The structure of a row in the garment's own stitch pattern."""


def row_words(row: WorkedRow) -> str:
    """Return the row as a leaflet writes it, without its number: 'K 2, sl 1, k 1, psso, k to end'."""
    return _in_pattern(row, _plain_words(row)) if row.structure == TEXTURED else _plain_words(row)


def _in_pattern(row: WorkedRow, words: str) -> str:
    """Return a row of a stitch pattern: what is not an edge or a shaping goes on in pattern."""
    if not row.shapings:
        return "Pattern across"
    told = re.sub(r"\b[kp] (?=to (?:end|last))", "pattern ", words, flags=re.I)
    inside = any(one.edge == "inside" for one in row.shapings) and row.after > 1
    told = re.sub(r"^[KP] (?=\d)", "Pattern ", told) if inside else told
    return told[:1].upper() + told[1:]


def _plain_words(row: WorkedRow) -> str:
    verb = "p" if row.side is Side.WRONG else "k"
    first, last = begins(row.side), "left" if begins(row.side) == "right" else "right"
    start = [one for one in row.shapings if one.edge == first]
    end = [one for one in row.shapings if one.edge == last]
    inside = [one for one in row.shapings if one.edge == "inside"]
    if inside:
        return _drawn_in(row, verb) if row.after == 1 else _inside(row, inside[0], verb)
    if not row.shapings:
        return "Purl" if row.side is Side.WRONG else "Knit"
    opening, used = _at_start(row, start, verb)
    closing, kept = _at_end(row, end, verb)
    between = row.before - used - kept
    words = list(opening)
    if closing:
        words += _between(between, kept, verb) + closing
    elif between:
        words.append(f"{verb} to end")
    return _sentence(words)


def _drawn_in(row: WorkedRow, verb: str) -> str:
    if row.before == 2:
        return f"{verb.title()} 2 tog and fasten off"
    return f"{verb.title()} {row.before} tog and fasten off"


def _inside(row: WorkedRow, one: Shaping, verb: str) -> str:
    """Tell what happens in the middle of a row: stitches bound off at the center, or spread evenly."""
    if one.act in (Act.BIND_OFF, Act.HOLD):
        side = (row.before - one.stitches) // 2
        off = "bind off" if one.act is Act.BIND_OFF else "place on a holder"
        return f"{verb.title()} {side}, {off} {one.stitches} sts, {verb} to end"
    change = "inc" if one.act is Act.INCREASE else "dec"
    if one.stitches == 1:
        return f"{verb.title()} 1, {'m 1' if one.act is Act.INCREASE else f'{verb} 2 tog'}, {verb} to end"
    return f"{verb.title()} across, {change} {one.stitches} sts evenly spaced"


def _between(between: int, kept: int, verb: str) -> list[str]:
    if between <= 0:
        return []
    if between <= 3 and kept <= 3:
        return [f"{verb} {between}"]
    return [f"{verb} to last {kept} sts"]


def _at_start(row: WorkedRow, shapings: list[Shaping], verb: str) -> tuple[list[str], int]:
    words: list[str] = []
    used = 0
    for one in shapings:
        if one.act is Act.BIND_OFF:
            words.append(f"bind off {one.stitches} sts")
            used += one.stitches
        elif one.act is Act.DECREASE:
            inset = _inset(row, one)
            told, takes = _decrease(row.side, one, row.side is Side.RIGHT)
            words += ([f"{verb} {inset}"] if inset else []) + [told]
            used += inset + takes
        elif one.act is Act.INCREASE:
            words.append("inc 1 st in first st")
            used += 1
    return words, used


def _at_end(row: WorkedRow, shapings: list[Shaping], verb: str) -> tuple[list[str], int]:
    words: list[str] = []
    kept = 0
    for one in shapings:
        if one.act is Act.DECREASE:
            inset = _inset(row, one)
            told, takes = _decrease(row.side, one, row.side is Side.WRONG)
            words += [told] + ([f"{verb} {inset}"] if inset else [])
            kept += inset + takes
        elif one.act is Act.INCREASE:
            words.append("inc 1 st in last st")
            kept += 1
    return words, kept


def _inset(row: WorkedRow, shaping: Shaping) -> int:
    """Return the edge stitches outside a decrease: as wished, fewer where the row is too short for them."""
    need = sum(
        one.stitches + 1 if one.stitches <= 2 else 2 * one.stitches for one in row.shapings if one.act is Act.DECREASE
    )
    ends = sum(1 for one in row.shapings if one.act is Act.DECREASE and one.inset)
    off = sum(one.stitches for one in row.shapings if one.act is Act.BIND_OFF)
    return shaping.inset if row.before - off - need >= 2 * ends else 0


def _decrease(side: Side, shaping: Shaping, leans_left: bool) -> tuple[str, int]:
    if shaping.stitches > 2:
        two = "p 2 tog" if side is Side.WRONG else "k 2 tog"
        return f"({two}) {shaping.stitches} times", 2 * shaping.stitches
    table = LEFT_LEAN if leans_left else RIGHT_LEAN
    return table[Side.WRONG if side is Side.WRONG else Side.RIGHT, shaping.stitches]


def _sentence(words: list[str]) -> str:
    line = ", ".join(words)
    return line[:1].upper() + line[1:]
