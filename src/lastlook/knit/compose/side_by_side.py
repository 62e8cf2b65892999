"""Two pieces worked at once from one sheet: every row of both, open like a book, with what differs set out.

Seen from the right side the piece named first lies on the right and is worked first on right-side rows; on
wrong-side rows the other comes first. A bind-off that falls one row later on the mirrored piece is right.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lastlook.knit.compose.alter.shape.divided import set_out
from lastlook.knit.compose.craft.row_words import row_words
from lastlook.knit.worked import Act, Side, WorkedPiece, WorkedRow
from lastlook.quantity import Gauge

CROWD = 1.6
"""Stitches lie this much closer on a needle than in the fabric: common practice, no source."""


@dataclass(frozen=True)
class Pair:
    """Some rows of both pieces that read alike."""

    first_row: int
    last_row: int
    side: str
    words: tuple[str, str]
    after: tuple[int, int]
    note: str


def side_by_side(pieces: Sequence[WorkedPiece], names: tuple[str, str]) -> tuple[Pair, ...] | str:
    """Return both pieces row by row; a sentence where one of them is not there."""
    plain = set_out(pieces)
    found = [next((one for one in plain if one.name.lower() == name.lower()), None) for name in names]
    first, second = found
    if first is None or second is None:
        missing = names[0] if first is None else names[1]
        return f"The leaflet has no piece “{missing}”; its pieces are: {', '.join(one.name for one in plain)}."
    out: list[Pair] = []
    for number in range(max(len(first.rows), len(second.rows))):
        pair = _pair(number + 1, _row(first, number), _row(second, number))
        if out and _alike(out[-1], pair):
            last = out[-1]
            out[-1] = Pair(last.first_row, pair.last_row, "", last.words, pair.after, "")
        else:
            out.append(pair)
    return tuple(out)


def needle_note(pieces: Sequence[WorkedPiece], gauge: Gauge, needle_mm: float) -> str:
    """Return whether both pieces find room on one needle, and where to part them if not."""
    most = sum(max((row.before for row in piece.rows), default=0) for piece in pieces)
    width = gauge.width_mm(most).best / CROWD
    if width <= needle_mm:
        return f"Both together have {most} stitches at most, and find room on a needle of {needle_mm / 10:.0f} cm."
    return (
        f"Both together have {most} stitches at most, about {width / 10:.0f} cm when pushed together: more than a"
        f" needle of {needle_mm / 10:.0f} cm holds. Use a circular one, or part the pieces where they are widest."
    )


def _row(piece: WorkedPiece, number: int) -> WorkedRow | None:
    return piece.rows[number] if number < len(piece.rows) else None


def _pair(number: int, first: WorkedRow | None, second: WorkedRow | None) -> Pair:
    row = first or second
    side = row.side.value if row else ""
    words = tuple(_words(one) for one in (first, second))
    after = tuple(one.after if one else 0 for one in (first, second))
    return Pair(number, number, side, (words[0], words[1]), (after[0], after[1]), _note(first, second))


def _words(row: WorkedRow | None) -> str:
    if row is None:
        return "done"
    if not row.shapings and row.structure != "stockinette":
        return row.structure
    return row_words(row)


def _note(first: WorkedRow | None, second: WorkedRow | None) -> str:
    off = [bool(row and any(one.act is Act.BIND_OFF for one in row.shapings)) for row in (first, second)]
    if off[0] != off[1]:
        return (
            "only one binds off here; the other does so in the next row, at the start of its own edge, which is right"
        )
    return ""


def _alike(last: Pair, pair: Pair) -> bool:
    """Whether a row goes on as the rows before it: nothing shaped on either piece."""
    plain = all(word in ("Knit", "Purl") or word.startswith(("rib", "garter")) for word in pair.words)
    same = all(
        a.split()[0] == b.split()[0] or {a, b} == {"Knit", "Purl"} for a, b in zip(last.words, pair.words, strict=True)
    )
    return plain and same and not last.note and last.after == pair.after


def told(pairs: Sequence[Pair], names: tuple[str, str]) -> str:
    """Return the sheet as text."""
    lines = [f"Right-side rows: {names[0]} first, then {names[1]}; wrong-side rows the other way round.", ""]
    for one in pairs:
        rows = f"Row {one.first_row}" if one.first_row == one.last_row else f"Rows {one.first_row}-{one.last_row}"
        side = f" ({one.side})" if one.side and one.side != Side.ROUND.value else ""
        if one.first_row != one.last_row:
            words = "even" if "rib" not in one.words[0] else one.words[0]
            lines.append(f"{rows}: {words} -- {one.after[0]} | {one.after[1]} sts")
            continue
        lines.append(f"{rows}{side}:")
        lines += [
            f"    {name}: {word} -- {count}" for name, word, count in zip(names, one.words, one.after, strict=True)
        ]
        if one.note:
            lines.append(f"    ({one.note})")
    return "\n".join(lines)
