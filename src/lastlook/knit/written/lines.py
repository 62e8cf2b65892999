"""The rows of one piece in lines: plain stretches in one sentence, every row that shapes or is patterned alone."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import groupby, pairwise

from lastlook.knit.worked import Act, Side, WorkedPiece, WorkedRow
from lastlook.knit.written.one_size import one_size
from lastlook.knit.written.own import own_words, told
from lastlook.knit.written.row import fabric_name, row_words

ONLY = "one size"
"""What the reader calls the size of a leaflet that names none."""
MOST_LISTED = 4000


@dataclass(frozen=True)
class Scope:
    """Which size is written, and whose words were found not to serve."""

    size: str
    sizes: int
    at: int
    plainly: frozenset[tuple[str, int]] = field(default_factory=frozenset)
    """Piece and row that are written in our own words, whatever the leaflet says."""

    @property
    def named(self) -> str:
        """Return 'size 36'; nothing where the leaflet has one size without a name."""
        return "" if self.size == ONLY else f"size {self.size}"

    def head(self, name: str, *more: str) -> str:
        """Return a head that names the size."""
        inside = "; ".join([*more, *([self.named] if self.named else [])])
        return f"{name} ({inside})" if inside else name


@dataclass
class Sheet:
    """The lines of one piece as they come."""

    scope: Scope
    lines: list[str] = field(default_factory=list)
    rounds: bool = False
    next_right: bool | None = None
    """Whether the next row is taken to be a right-side one by who reads this; None before the first row."""
    behind: int = 0
    held: int = 0
    """Stitches that wait on a holder for a later row of the same piece."""
    book: dict[int, str] = field(default_factory=dict)
    """The rows that are called by a number, in their own words."""
    again: list[int] = field(default_factory=list)
    """Rows that the words 'repeat rows 1 and 2' still stand for."""
    marks: dict[int, str] = field(default_factory=dict)
    goes_on: WorkedRow | None = None
    """The row after the one that is written."""

    def add(self, line: str) -> None:
        """Write a line."""
        self.lines.append(line)


def write_rows(sheet: Sheet, piece: WorkedPiece, divides: tuple[int, ...], crochet: bool) -> None:
    """Write the rows; a stretch ends at rounds, where a named part begins and where a row stands alone."""
    joins = piece.part_of is not None and len(divides) > 1
    last = piece.rows[0 if joins else -1].number if piece.rows else 0
    after = {a.number: b for a, b in pairwise(piece.rows)}
    stretches = groupby(piece.rows[:MOST_LISTED], key=lambda row: _stretch(sheet, row))
    for (mark, plain, _), rows in stretches:
        stretch = list(rows)
        if mark and sheet.marks.get(mark):
            sheet.add(sheet.scope.head(f"SHAPE {sheet.marks.pop(mark).upper()}"))
        _turned_to(sheet, stretch[0], crochet)
        if plain and not crochet and len(stretch) > 1 and not sheet.behind:
            sheet.add(_plain(stretch, _turn(sheet, stretch)))
            continue
        for row in stretch:
            _turn(sheet, [row])
            parting = divides if row.number == last and len(divides) > 1 else ()
            sheet.goes_on = after.get(row.number)
            sheet.add(_row(sheet, piece.name, row, parting, crochet))


def _stretch(sheet: Sheet, row: WorkedRow) -> tuple[int, str, bool]:
    """Return what a row belongs to: the named part it begins, and the fabric it is a plain row of."""
    marks = [at for at in sheet.marks if at < row.number]
    alone = row.shapings or row.before != row.after or row.used != row.before or fabric_name(row.structure) == "pattern"
    return max(marks, default=0), "" if alone else row.structure or "plain", row.side is Side.ROUND


def _turned_to(sheet: Sheet, row: WorkedRow, crochet: bool) -> None:
    rounds = row.side is Side.ROUND
    if rounds != sheet.rounds and not crochet:
        sheet.add("Join in a round." if rounds else "Work back and forth in rows.")
    sheet.rounds = rounds


def _turn(sheet: Sheet, rows: list[WorkedRow]) -> bool:
    """Turn as often as there are rows; say whether the last one then faces as it was worked."""
    if sheet.next_right is None:
        sheet.next_right = rows[0].side is not Side.WRONG
    facing = sheet.next_right
    if rows[0].side is not Side.ROUND:
        facing = sheet.next_right if len(rows) % 2 else not sheet.next_right
        sheet.next_right = not facing
    return facing == (rows[-1].side is Side.RIGHT)


def _plain(rows: list[WorkedRow], faces: bool) -> str:
    word = "Round" if rows[0].side is Side.ROUND else "Row"
    many = f"{len(rows)} {word.lower()}s"
    first, last = rows[0].number, rows[-1].number
    side = {Side.RIGHT: ", ending with a right-side row", Side.WRONG: ", ending with a wrong-side row"}
    turns = all(a.side is not b.side for a, b in pairwise(rows))
    ending = side.get(rows[-1].side, "") if turns and faces else ""
    return (
        f"{word}s {first} to {last}: Work {many} in {fabric_name(rows[0].structure)}{ending} -- {rows[-1].after} sts."
    )


def _row(sheet: Sheet, name: str, row: WorkedRow, divides: tuple[int, ...], crochet: bool) -> str:
    side = {Side.RIGHT: " (right side)", Side.WRONG: " (wrong side)", Side.ROUND: ""}[row.side]
    word = "Round" if row.side is Side.ROUND else "Row"
    ahead = row.before - sheet.behind
    words = _words(sheet, name, row, ahead, divides, crochet)
    sheet.behind = 0
    sheet.held += sum(one.stitches for one in row.shapings if one.act is Act.HOLD and not divides)
    count = row.after
    label = f"{word} {row.number}{side}: "
    waits = row.used - row.gives if not row.shapings and row.gives < row.used == ahead else 0
    if waits and not crochet:
        sheet.held += waits
        # What waits while the work goes back and forth out of a round is the instep of a sock.
        instep = " for the instep" if row.side is Side.ROUND or "heel" in sheet.marks.values() else ""
        held = f"Slip the last {waits} sts on a holder{instep} -- {count} sts."
        return f"{label}{_capital(words)} -- {row.used} sts.\n{held}"
    if row.used < ahead and not crochet and not _goes_on_whole(sheet):
        rest = ahead - row.used
        words = words if words.endswith("turn") else f"{words}, turn"
        if divides:
            return f"{label}{_capital(words)}; leave the remaining {rest} sts on a holder."
        sheet.behind = rest
    if (divides and row.after < row.before) or any(
        one.edge == "inside" and one.act is Act.BIND_OFF for one in row.shapings
    ):
        return f"{label}{_capital(words)}."
    return f"{label}{_capital(words)} -- {count} sts."


def _goes_on_whole(sheet: Sheet) -> bool:
    """Whether the next row takes up all stitches: then the work did not turn, part of the row lay behind it."""
    after = sheet.goes_on
    return after is not None and after.used == after.before


def _words(sheet: Sheet, name: str, row: WorkedRow, ahead: int, divides: tuple[int, ...], crochet: bool) -> str:
    scope = sheet.scope
    words = row.words.strip()
    if words and words != row.structure and (name, row.number) not in scope.plainly:
        short = one_size(words, scope.sizes, scope.at)
        if crochet:
            return short
        said = _said(sheet, short)
        own = own_words(row, said, ahead)
        if own is not None:
            return own
        if row.used < ahead and row.gives > row.used and _goes_on_whole(sheet):
            return said
    return row_words(row, ahead, divides, sheet.held)


def _said(sheet: Sheet, words: str) -> str:
    """Return what a row is told by, where it refers to another by that one's words."""
    one = told(words)
    if not one.like:
        sheet.again = []
        if 1 in one.numbers:
            sheet.book = {}
        sheet.book |= dict.fromkeys(one.numbers, one.body)
        return one.body
    sheet.again = sheet.again or list(one.like)
    return sheet.book.get(sheet.again.pop(0), words)


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
