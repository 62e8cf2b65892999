"""One piece of a seamless raglan in the making: its rows in words and in counts together.

The five *parts* of a row lie between the markers: right front, right sleeve, back, left sleeve, left front. A row,
like a round, begins at the front edge of the right front, so that nothing moves when the neck is divided.
"""

from __future__ import annotations

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.evenly import intervals
from lastlook.knit.compose.craft.needle import Needle
from lastlook.knit.compose.craft.told import ToldRow, passages
from lastlook.knit.compose.raglan.counts import RaglanCounts
from lastlook.knit.compose.raglan.whole.yoke import Pair, words
from lastlook.knit.worked import Act, Shaping, Side
from lastlook.piece import Edge, EdgeName, Mate, Unit

PLAIN = "stockinette"
BODIES = (0, 2, 4)
SLEEVES = (1, 3)
PLACED = ", place a marker, "


class Knitting:
    """The body and yoke on one needle, with what was told of it."""

    def __init__(self, cast_on: int, side: Side, parts: list[int]) -> None:
        self.needle = Needle(cast_on, side)
        self.parts = parts
        self.lines: list[str] = []
        self._told: list[ToldRow] = []

    @property
    def stitches(self) -> int:
        """Return the stitches on the needle."""
        return self.needle.stitches

    @property
    def row(self) -> str:
        """Return what the next pass is called."""
        return "round" if self.needle.side is Side.ROUND else "row"

    def work(self, told: str, shapings: tuple[Shaping, ...] = ()) -> None:
        """Work one row of stockinette; `told` is empty where it is plain."""
        side = self.needle.side
        self.needle.row(PLAIN, shapings)
        self._told.append(ToldRow(told, side, self.stitches))

    def even(self, rows: int) -> None:
        """Work so many rows plain."""
        for _ in range(rows):
            self.work("")

    def say(self, line: str) -> None:
        """Tell what was worked so far, then a line of its own."""
        self.lines += passages(self._told)
        self._told = []
        if line:
            self.lines.append(line)

    def edging(self, structure: str, rows: int) -> None:
        """Work an edging; the page says so itself."""
        self.needle.even(structure, rows)

    def join(self) -> None:
        """Go on in rounds."""
        self.needle.joined()

    def open(self) -> None:
        """Go on in rows, the next with the right side facing."""
        self.needle.opened()

    def pair(self, pair: Pair, way: str) -> None:
        """Work the two rows of a pair."""
        for spot in (0, 1):
            self.yoke_row(way, (pair.body[spot], pair.sleeve[spot], pair.neck if spot == 0 else 0))

    def yoke_row(
        self, way: str, shapings: tuple[int, int, int], told: str | None = None, more: tuple[Shaping, ...] = ()
    ) -> None:
        """Work one row with its shapings at every body, sleeve and neck edge."""
        body, sleeve, neck = shapings
        act, sign = (Act.INCREASE, 1) if way == "inc" else (Act.DECREASE, -1)
        inside = 4 * (body + sleeve)
        marks = [Shaping(act, edge, neck) for edge in ("right", "left") if neck]
        marks += [Shaping(act, "inside", inside)] if inside else []
        self.work(words(self.needle.side, way, shapings) if told is None else told, (*marks, *more))
        for spot in SLEEVES:
            self.parts[spot] += sign * 2 * sleeve
        for spot in BODIES:
            self.parts[spot] += sign * (2 * body if spot == 2 else body + neck)

    def markers(self) -> str:
        """Return a row that sets the four markers."""
        verb = "p" if self.needle.side is Side.WRONG else "k"
        return PLACED.join(f"{verb} {part}" for part in self.parts)


def side_shapings(change: int, rows: int) -> list[int]:
    """Return what each side edge gains in each row, hem up; the first two rows stay plain."""
    out = [0] * rows
    room = rows - 2
    step = 2 if room >= 2 * abs(change) else 1
    spot = 2
    for every, times in intervals(abs(change), room, step):
        for _ in range(times):
            out[spot] = 1 if change > 0 else -1
            spot += every
    return out


def side_words(side: Side, change: int) -> str:
    """Return a row that widens or narrows the body beside both side markers."""
    verb = "p" if side is Side.WRONG else "k"
    if change > 0:
        core = f"{verb} to 1 st before marker, m 1, {verb} 1, slip marker, {verb} 1, m 1"
    else:
        first, second = ("k 2 tog", "sl 1, k 1, psso") if verb == "k" else ("p 2 tog through back", "p 2 tog")
        core = f"{verb} to 3 sts before marker, {first}, {verb} 1, slip marker, {verb} 1, {second}"
    return f"* {core}; repeat from * once more, {verb} to end"


def lower_body(knitting: Knitting, shapings: list[int]) -> None:
    """Work the body between hem and underarm."""
    for change in shapings:
        act = Act.INCREASE if change > 0 else Act.DECREASE
        told = side_words(knitting.needle.side, change) if change else ""
        knitting.work(told, (Shaping(act, "inside", 4),) if change else ())


def evened(knitting: Knitting, to: int) -> None:
    """Work one row that brings the count to what the edging takes."""
    change = to - knitting.stitches
    if not change:
        knitting.work("")
        return
    act = Act.INCREASE if change > 0 else Act.DECREASE
    verb = "p" if knitting.needle.side is Side.WRONG else "k"
    told = f"{verb} across, {'inc' if change > 0 else 'dec'} {abs(change)} sts evenly spaced"
    if abs(change) == 1:
        told = f"{verb} 1, {'m 1' if change > 0 else f'{verb} 2 tog'}, {verb} to end"
    knitting.work(told, (Shaping(act, "inside", abs(change)),))


def whole_edges(name: str, counts: RaglanCounts) -> list[Edge]:
    """Return where body and sleeves meet: held stitches, and those cast on or held at the underarm."""
    out = []
    for hand in ("left", "right"):
        out.append(Edge(EdgeName(name, f"{hand} sleeve"), stitches=counts.sleeve - 2 * counts.underarm))
        out.append(Edge(EdgeName(name, f"{hand} underarm"), stitches=2 * counts.underarm))
    return out


def sleeve_edges(counts: RaglanCounts) -> list[Edge]:
    """Return the sleeve's side of the same."""
    return [
        Edge(EdgeName("Sleeves", "top"), stitches=counts.sleeve - 2 * counts.underarm),
        Edge(EdgeName("Sleeves", "underarm"), stitches=2 * counts.underarm),
    ]


def whole_mates(asked: Asked) -> tuple[Mate, ...]:
    """Return which stitches of body and sleeves are the same ones, and which are joined."""
    name = piece_name(asked)
    return tuple(
        Mate(EdgeName(name, f"{hand} {a}"), EdgeName("Sleeves", b), Unit.STITCHES)
        for hand in ("left", "right")
        for a, b in (("sleeve", "top"), ("underarm", "underarm"))
    )


def piece_name(asked: Asked) -> str:
    """Return what the piece that is body and yoke is called."""
    return "Yoke and body" if asked.construction == "neck down" else "Body and yoke"
