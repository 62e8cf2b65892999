"""A raglan's counts worked row by row: back, front or fronts, and sleeves, with their edges and mates.

Raglan rows are counted from the first row of the underarm bind-off, so that a front that has to bind off one row
later is as long. Every piece begins with a right-side row and every edging has even rows.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.craft.edging import edged, in_fabric
from lastlook.knit.compose.craft.evenly import intervals, left_over_rows
from lastlook.knit.compose.craft.ladder import slope
from lastlook.knit.compose.craft.needle import Needle, bind_off, dec, inc
from lastlook.knit.compose.raglan.counts import RaglanCounts
from lastlook.knit.worked import Act, Ended, Shaping, WorkedPiece
from lastlook.piece import Edge, EdgeName, Mate, Unit

PLAIN = "stockinette"
HANDS = {"left": "right", "right": "left"}
"""The front's edge as seen from its right side lies on the other side of the wearer."""


class LowerCounts(Protocol):
    """What a body piece needs to know below the underarm."""

    @property
    def hem(self) -> int: ...
    @property
    def back(self) -> int: ...
    @property
    def rib_rows(self) -> int: ...
    @property
    def side_rows(self) -> int: ...


def raglan_pieces(counts: RaglanCounts, asked: Asked) -> tuple[WorkedPiece, ...]:
    """Return every piece of the garment."""
    if asked.opening == "cardigan":
        fronts: tuple[WorkedPiece, ...] = (_half_front(counts, asked, "left"), _half_front(counts, asked, "right"))
    else:
        fronts = _front(counts, asked)
    pieces = (_back(counts, asked), *fronts, _sleeve(counts, asked))
    return tuple(in_fabric(piece, asked) for piece in pieces)


def raglan_mates(counts: RaglanCounts, asked: Asked) -> tuple[Mate, ...]:
    """Return which edges are sewn together."""
    out = []
    for side in ("left", "right"):
        front = f"{side.title()} Front" if asked.opening == "cardigan" else "Front"
        out.append(_mate("Back", f"{side} side", front, f"{side} side", Unit.ROWS))
        for piece, edge in (("Back", "back"), (front, "front")):
            out.append(_mate(piece, f"{side} raglan", "Sleeves", f"{edge} raglan", Unit.ROWS))
            out.append(_mate(piece, f"{side} underarm", "Sleeves", f"{edge} underarm", Unit.STITCHES))
    return tuple(out)


def _mate(a: str, a_edge: str, b: str, b_edge: str, unit: Unit) -> Mate:
    return Mate(EdgeName(a, a_edge), EdgeName(b, b_edge), unit, 2.0 if unit is Unit.ROWS else 0.0)


def lower(counts: LowerCounts, asked: Asked, hem: int, edges: Sequence[str]) -> Needle:
    """Work edging and side of a body piece, its side edges shaped as on every other."""
    needle = edged(asked, hem, counts.rib_rows)
    change = (counts.back - counts.hem) // 2
    shape_sides(needle, change, counts.side_rows - counts.rib_rows, edges)
    needle.mark("underarm")
    return needle


def shape_sides(needle: Needle, change: int, rows: int, edges: Sequence[str], free: int = 0) -> None:
    """Work so many rows with `change` increases (decreases if below nothing) at each edge, spread evenly.

    The last `free` rows stay plain unless the increases need them.
    """
    times = abs(change)
    room = rows - free if rows - free >= 2 * times else rows
    step = 2 if room >= 2 * times else 1
    table = [every for every, count in intervals(times, room, step) for _ in range(count)]
    act = inc if change > 0 else dec
    for every in table:
        needle.row(PLAIN, tuple(act(edge) for edge in edges))
        needle.even(PLAIN, every - 1)
    needle.even(PLAIN, rows - room + left_over_rows(times, room, step) if times else rows)


def _back(counts: RaglanCounts, asked: Asked) -> WorkedPiece:
    needle = lower(counts, asked, counts.hem, ("left", "right"))
    _underarms(needle, counts.underarm)
    _slopes(needle, counts.body_slope.takes, counts.body_slope.takes)
    needle.mark("neck")
    edges = [*_side_edges("Back", counts), *_raglan_edges("Back", counts, ("left", "right"))]
    edges.append(Edge(EdgeName("Back", "neck"), stitches=needle.stitches))
    return needle.off("Back", Ended.BOUND_OFF, edges)


def _sleeve(counts: RaglanCounts, asked: Asked) -> WorkedPiece:
    needle = edged(asked, counts.cuff, counts.cuff_rows)
    change = (counts.sleeve - counts.cuff) // 2
    rows = counts.sleeve_rows - counts.cuff_rows
    shape_sides(needle, change, rows, ("left", "right"), counts.sleeve_free_rows)
    needle.mark("underarm")
    _underarms(needle, counts.underarm)
    _slopes(needle, counts.sleeve_slope.takes, counts.sleeve_slope.takes)
    edges = _raglan_edges("Sleeves", counts, ("front", "back"))
    edges.append(Edge(EdgeName("Sleeves", "seam"), rows=counts.sleeve_rows))
    edges.append(Edge(EdgeName("Sleeves", "top"), stitches=needle.stitches))
    return needle.off("Sleeves", Ended.BOUND_OFF, edges, make=2)


def _front(counts: RaglanCounts, asked: Asked) -> tuple[WorkedPiece, ...]:
    """Work the front of a pullover up to the neck, and the two sides above it."""
    needle = lower(counts, asked, counts.hem, ("left", "right"))
    _underarms(needle, counts.underarm)
    takes = counts.body_slope.takes
    start = counts.raglan_rows - counts.neck_rows
    _slopes(needle, takes[:start], takes[:start])
    needle.mark("neck")
    edges = [*_side_edges("Front", counts), *_raglan_edges("Front", counts, ("left", "right"))]
    whole = needle.off("Front", Ended.OPEN, edges)
    side = (needle.stitches - counts.neck_center) // 2
    neck = _neck_takes(counts, asked.neck, 2)
    first = _neck_side("right", side, takes[start:], neck)
    second = _neck_side("left", side, takes[start:], neck)
    return whole, first, second


def _neck_side(arm: str, stitches: int, takes: Sequence[int], neck: Sequence[int]) -> WorkedPiece:
    """Work one side of the front neck: its arm edge as the raglan goes on, its neck edge from the next
    right-side row.

    `arm` is where the arm edge lies in the fabric seen from its right side.
    """
    needle = Needle(stitches)
    _arm_and_neck(needle, arm, takes, neck)
    name = "Front, left side" if arm == "right" else "Front, right side"
    piece = needle.off(name, Ended.FASTENED_OFF)
    return WorkedPiece(
        name,
        "Front",
        1,
        None,
        piece.rows,
        piece.end_stitches,
        piece.ended,
        (),
        (Edge(EdgeName(name, "neck"), rows=len(piece.rows), stitches=0),),
        (),
    )


def _half_front(counts: RaglanCounts, asked: Asked, hand: str) -> WorkedPiece:
    """Work one front of a cardigan; `hand` is the wearer's, the arm edge lies on the other side of the fabric."""
    arm, name = HANDS[hand], f"{hand.title()} Front"
    needle = lower(counts, asked, counts.front_hem, (arm,))
    if arm == "left":
        needle.row(PLAIN)
    needle.row(PLAIN, (bind_off(arm, counts.underarm),))
    if arm == "right":
        needle.row(PLAIN)
    takes = counts.body_slope.takes
    start = counts.raglan_rows - counts.neck_rows
    neck = HANDS[arm]
    row_of_bind_off = start - 1 if neck == "left" else start - 2
    for number in range(start):
        shapings = _takes(arm, takes[number], needle.stitches)
        if number == row_of_bind_off and counts.neck_center:
            shapings = (bind_off(neck, counts.neck_center), *shapings)
        if number == row_of_bind_off:
            needle.mark("neck")
        needle.row(PLAIN, shapings)
    _arm_and_neck(needle, arm, takes[start:], _neck_takes(counts, asked.neck, 0))
    edges = [
        Edge(EdgeName(name, f"{hand} side"), rows=counts.side_rows),
        *_raglan_edges(name, counts, (hand,)),
        Edge(EdgeName(name, "front"), rows=counts.side_rows + 2 + start),
        Edge(EdgeName(name, "neck"), rows=counts.neck_rows, stitches=counts.neck_center),
    ]
    return needle.off(name, Ended.FASTENED_OFF, edges)


def _neck_takes(counts: RaglanCounts, neck: str, first: int) -> tuple[int, ...]:
    """Return what the neck edge loses in each row from its start: at once in a round neck, evenly in a V."""
    rows, decreases = counts.neck_rows - first, counts.neck_decreases
    spread = slope(decreases, rows) if neck == "v" else None
    takes = spread.takes if spread else (1, 0) * decreases + (0,) * (rows - 2 * decreases)
    return (0,) * first + takes


def _arm_and_neck(needle: Needle, arm: str, takes: Sequence[int], neck_takes: Sequence[int]) -> None:
    """Decrease at the arm edge and at the neck edge as told, and end on one stitch."""
    neck = HANDS[arm]
    for take, neck_take in zip(takes, neck_takes, strict=True):
        shapings = list(_takes(arm, take, needle.stitches))
        if neck_take:
            shapings.append(dec(neck, neck_take, 0))
        needle.row(PLAIN, shapings)
    needle.row(PLAIN, (Shaping(Act.DECREASE, "inside", needle.stitches - 1),))


def _underarms(needle: Needle, stitches: int) -> None:
    needle.row(PLAIN, (bind_off("right", stitches),))
    needle.row(PLAIN, (bind_off("left", stitches),))


def _slopes(needle: Needle, left: Sequence[int], right: Sequence[int]) -> None:
    for takes in zip(left, right, strict=True):
        shapings = [one for edge, take in zip(("left", "right"), takes, strict=True) for one in _takes(edge, take, 99)]
        needle.row(PLAIN, shapings)


def _takes(edge: str, take: int, stitches: int) -> tuple[Shaping, ...]:
    return (dec(edge, take, 2 if stitches >= 8 else 0),) if take else ()


def _side_edges(name: str, counts: RaglanCounts) -> list[Edge]:
    return [Edge(EdgeName(name, f"{hand} side"), rows=counts.side_rows) for hand in ("left", "right")]


def _raglan_edges(name: str, counts: RaglanCounts, edges: Sequence[str]) -> list[Edge]:
    out = []
    for edge in edges:
        out.append(Edge(EdgeName(name, f"{edge} raglan"), rows=counts.raglan_rows + 2))
        out.append(Edge(EdgeName(name, f"{edge} underarm"), stitches=counts.underarm))
    return out
