"""A worked size written down clean: one size, row by row, in the maker's own English, units and hand.

Plain stretches are one sentence; every row that shapes stands alone with the count it leaves. For a left-handed knitter
the work is mirrored: rows begin at the other edge, so left pieces and edges change places with right ones.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum
from itertools import groupby

from lastlook.knit.reading import LeafletReading
from lastlook.knit.worked import Act, Shaping, Side, WorkedPiece, WorkedRow
from lastlook.quantity import Missing, Units, write_length


class English(Enum):
    """Whose words are used."""

    AMERICAN = "US"
    BRITISH = "British"


class Hand(Enum):
    """Which hand holds the working needle."""

    RIGHT = "right"
    LEFT = "left"


@dataclass(frozen=True)
class Manner:
    """How it is written."""

    english: English = English.AMERICAN
    units: Units = Units.INCHES
    hand: Hand = Hand.RIGHT


BRITISH = (
    ("bind off", "cast off"), ("Bind off", "Cast off"), ("stockinette st", "stocking stitch"),
    ("seed st", "moss stitch"),
    ("GAUGE", "TENSION"), ("Work even", "Work straight"),
)  # fmt: skip
FABRICS = {
    "stockinette": "stockinette st", "garter": "garter st", "plain": "garter st", "moss": "seed st",
    "reverse stockinette": "reverse stockinette st", "purl": "reverse stockinette st",
}  # fmt: skip
EVENLY = {Act.INCREASE: "inc", Act.DECREASE: "dec"}
MOST_LISTED = 4000


def write(reading: LeafletReading, size: str, manner: Manner | None = None) -> str:
    """Return the instructions of one size, row by row; the size is named on every piece."""
    how = manner or Manner()
    one = reading.by_size.get(size)
    if one is None:
        return ""
    at, many = list(reading.sizes).index(size), len(reading.sizes)
    lines = [reading.title or "Leaflet", f"SIZE: {size}", _gauge(reading, how), ""]
    for piece in one.pieces:
        lines += [*_piece(piece, size, (at, many)), ""]
    text = "\n".join(lines).strip() + "\n"
    text = _mirrored(text) if how.hand is Hand.LEFT else text
    if how.english is English.BRITISH:
        for american, british in BRITISH:
            text = text.replace(american, british)
    return text


def _gauge(reading: LeafletReading, how: Manner) -> str:
    gauge = reading.gauge
    if gauge is None:
        return "GAUGE: not given."
    span = 25.4 if how.units is Units.INCHES else 100.0
    stitches = gauge.stitches.best * span / 100
    rows = (
        ""
        if isinstance(gauge.rows, Missing)
        else f"; {round(gauge.rows.best * span / 100, 1):g} rows = {write_length(span, how.units)}"
    )
    return f"GAUGE: {round(stitches, 1):g} sts = {write_length(span, how.units)}{rows}."


def _piece(piece: WorkedPiece, size: str, place: tuple[int, int]) -> list[str]:
    make = f"make {piece.make}; " if piece.make > 1 else ""
    lines = [f"{piece.name.upper()} ({make}size {size})"]
    if piece.cast_on and not piece.part_of and not _picked(piece):
        lines.append(f"Cast on {piece.cast_on} sts.")
    for plain, rows in groupby(piece.rows[:MOST_LISTED], key=_stretch):
        stretch = list(rows)
        lines.append(_plain(stretch) if plain else "")
        if not plain:
            lines[-1:] = [_row(row, place) for row in stretch]
    lines.append(_end(piece))
    return [line for line in lines if line]


def _picked(piece: WorkedPiece) -> bool:
    return bool(piece.rows) and piece.rows[0].before == 0


def _stretch(row: WorkedRow) -> str:
    """Return what a plain row belongs to; '' for one that stands alone."""
    if row.shapings or row.before != row.after or row.structure == "pattern":
        return ""
    return row.structure


def _plain(rows: list[WorkedRow]) -> str:
    fabric = rows[0].structure
    if len(rows) == 1 and fabric in ("reverse stockinette", "purl") and rows[0].side is Side.WRONG:
        return f"Row {rows[0].number} (wrong side): Purl -- {rows[0].after} sts."
    rib = re.fullmatch(r"rib (\d+)x(\d+)", fabric)
    name = f"k {rib.group(1)}, p {rib.group(2)} rib" if rib else FABRICS.get(fabric, "pattern")
    word = "round" if rows[0].side is Side.ROUND else "row"
    many = f"{len(rows)} {word}{'s' if len(rows) > 1 else ''}"
    return f"Work {many} in {name} -- {rows[-1].after} sts."


def _row(row: WorkedRow, place: tuple[int, int]) -> str:
    side = {Side.RIGHT: " (right side)", Side.WRONG: " (wrong side)", Side.ROUND: ""}[row.side]
    word = "Round" if row.side is Side.ROUND else "Row"
    return f"{word} {row.number}{side}: {_words(row, place)} -- {row.after} sts."


def _words(row: WorkedRow, place: tuple[int, int]) -> str:
    told = _one_size(row.words, place)
    label = re.match(r"(?i)^(?:[^:]{0,40}(?:row|round|rnd)[^:]{0,30}[:.]\s*[-—–]*|)\s*(.*)$", told, re.S)
    body = (label.group(1) if label else told).strip(" .;,")
    if body and body != row.structure and re.search(r"(?i)\b(?:k|p|knit|purl|rib|work|yo|sl|pick)\b|\*", body):
        return body
    return _shaped(row)


def _shaped(row: WorkedRow) -> str:
    """Write a row from its shapings: what falls at its start, how it goes on, what falls at its end."""
    acts = {one.act for one in row.shapings if one.edge == "inside"}
    if len(acts) == 1 and acts <= EVENLY.keys() and all(one.edge == "inside" for one in row.shapings):
        across = "rib" if row.structure.startswith("rib") else "p" if _is_purled(row) else "k"
        return f"{across} across, {EVENLY[acts.pop()]} {sum(one.stitches for one in row.shapings)} sts evenly spaced"
    first, last = ("left", "right") if row.side is Side.WRONG else ("right", "left")
    verb = "p" if _is_purled(row) else "k"
    start = [_one(one, verb, "start") for one in row.shapings if one.edge == first]
    end = [_one(one, verb, "end") for one in row.shapings if one.edge == last]
    inside = [_inside(one) for one in row.shapings if one.edge not in ("left", "right")]
    rest = 3 if end else 0
    middle = f"{verb} to last {rest} sts" if rest else f"{verb} to end"
    return ", ".join([*start, middle, *end, *inside])


def _is_purled(row: WorkedRow) -> bool:
    return row.side is Side.WRONG and row.structure in ("stockinette", "")


def _one(one: Shaping, verb: str, where: str) -> str:
    if one.act is Act.BIND_OFF:
        return f"bind off {one.stitches} sts"
    if one.act is Act.CAST_ON:
        return f"cast on {one.stitches} sts"
    together = f"{verb} {one.stitches + 1} tog"
    if one.act is Act.DECREASE:
        lean = "sl 1, k 1, psso" if where == "start" and verb == "k" and one.stitches == 1 else together
        return f"{verb} 1, {lean}" if where == "start" else f"{lean}, {verb} 1"
    return f"{verb} 1, inc in next st" if where == "start" else f"{verb} 1, inc in next st, {verb} 1"


def _inside(one: Shaping) -> str:
    words = {Act.INCREASE: "increasing", Act.DECREASE: "decreasing", Act.BIND_OFF: "binding off", Act.HOLD: "holding",
             Act.PICK_UP: "picking up", Act.CAST_ON: "casting on"}  # fmt: skip
    return f"{words[one.act]} {one.stitches} sts within the row"


def _one_size(words: str, place: tuple[int, int]) -> str:
    """Return words with every list of figures brought down to the one of this size."""
    at, many = place
    if many < 2:
        return words

    def value(match: re.Match[str]) -> str:
        values = [match.group(1), *re.findall(r"\d+(?:[ -]\d/\d|[½¼¾])?", match.group(2))]
        return values[at] if len(values) == many else match.group(0)

    return re.sub(r"(\d+(?:[½¼¾])?)\s*[(\[]((?:\s*\d[\d ½¼¾/]*[-,;]?)+)[)\]]", value, words)


def _end(piece: WorkedPiece) -> str:
    ends = {
        "bound off": f"Bind off {piece.end_stitches} sts.",
        "fastened off": "Fasten off.",
        "on holder": f"Leave {piece.end_stitches} sts on a holder.",
        "drawn up": f"Break yarn, draw through {piece.end_stitches} sts and fasten off.",
    }
    return ends.get(piece.ended.value, "")


def _mirrored(text: str) -> str:
    """Change left and right for a knitter who works the other way."""
    swap = {"left": "right", "right": "left", "Left": "Right", "Right": "Left", "LEFT": "RIGHT", "RIGHT": "LEFT"}
    return re.sub(r"\b(left|right|Left|Right|LEFT|RIGHT)\b(?! side\b)", lambda match: swap[match.group(1)], text)
