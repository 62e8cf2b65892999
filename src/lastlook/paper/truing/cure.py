"""Alterations that close a seam, solved exactly and tried before they are offered; the hip is left as it is.

A *remedy* is a sentence and the alterations that do it. Amounts at darts mean both legs together.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from lastlook.paper.alter import Alteration, BandLength, DartWidth, Lengthen, TiltWaist, Widen, alter
from lastlook.paper.alter.width import is_side
from lastlook.paper.drafted import Drafted
from lastlook.paper.paper_piece import PaperPiece
from lastlook.paper.seams import EXACT_MM, Join, length_mm, walk_all
from lastlook.paper.solve import solve
from lastlook.paper.tenths import tenths
from lastlook.piece import Meets, Seam

DIGITS = 3
"""Amounts are offered to a thousandth of a mm, so that what is offered does close the seam."""
SAFE_EDGE_MM = 12.7
"""Half an inch on each of four side edges is safe (from memory of a textbook limit)."""
DART_RANGE_MM = (10.0, 30.0)
"""A dart below 1 cm is dropped, one above 3 cm is split (from memory of textbooks)."""
FURTHEST_MM = 60.0
SMALL_MM = 5.0
"""A side seam that differs by less is put right at the waist; more is a length that one piece did not get."""
WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
Make = Callable[[float], tuple[Alteration, ...]]


@dataclass(frozen=True)
class Remedy:
    """What would close a seam."""

    say: str
    alterations: tuple[Alteration, ...]
    within_limits: bool


def waist_remedies(drafted: Drafted, join: Join, seam: Seam, over_mm: float) -> tuple[Remedy, ...]:
    """Return the ways to leave the skirt top `over_mm` longer than the band, those within the trade's limits first."""
    names = {name.piece for name in join.a}
    tops = [piece for piece in drafted.pieces if piece.name in names]
    found = [_at_sides(drafted, join, tops, over_mm), _at_darts(drafted, join, tops, over_mm)]
    if len(join.b) == 1:
        by = round(seam.difference - over_mm, DIGITS)
        words = "longer" if by > 0 else "shorter"
        say = f"cut {join.b[0].piece} {tenths(abs(by))} mm {words}"
        found.append(Remedy(say, (BandLength(join.b[0].piece, by),), within_limits=False))
    good = [one for one in found if one is not None and _closes(drafted, one)]
    return tuple(sorted(good, key=lambda one: not one.within_limits))


def side_remedies(drafted: Drafted, join: Join, seam: Seam) -> tuple[Remedy, ...]:
    """Return the ways to make two side seams equal: at the waist of one, or at the hem of the other."""
    longer, shorter = (join.a[0], join.b[0]) if seam.difference > 0 else (join.b[0], join.a[0])
    by = abs(seam.difference)

    def lower(mm: float) -> tuple[Alteration, ...]:
        return (TiltWaist(longer.piece, -mm, longer.edge),)

    def lengthen(mm: float) -> tuple[Alteration, ...]:
        return (Lengthen(shorter.piece, mm),)

    at_waist = _solved(drafted, join, lower, 0.0, 2 * by + 1)
    at_hem = _solved(drafted, join, lengthen, 0.0, 2 * by + 1)
    out = []
    if at_waist is not None:
        say = f"lower the waist edge of {longer.piece} by {tenths(at_waist)} mm at the {longer.edge}"
        out.append(Remedy(say, lower(at_waist), by <= SMALL_MM))
    if at_hem is not None:
        say = f"lengthen {shorter.piece} by {tenths(at_hem)} mm at the hem"
        out.append(Remedy(say, lengthen(at_hem), by > SMALL_MM))
    good = [one for one in out if _equal(alter(drafted, one.alterations), join)]
    return tuple(sorted(good, key=lambda one: not one.within_limits))


def _at_sides(drafted: Drafted, join: Join, tops: list[PaperPiece], over_mm: float) -> Remedy | None:
    """Take in or let out every side edge at the waist, running out to nothing at the hip."""
    edges = [(piece, side.name) for piece in tops for side in piece.sides if is_side(side.name)]
    count = sum(piece.times for piece, _ in edges)
    if not edges or any(piece.centre is not None or piece.level("hip") is None for piece, _ in edges):
        return None

    def make(mm: float) -> tuple[Alteration, ...]:
        return tuple(Widen(piece.name, mm, "waist", name) for piece, name in edges)

    by = _solved(drafted, join, make, -FURTHEST_MM, FURTHEST_MM, over_mm)
    if by is None:
        return None
    level = levelled(drafted, make(by))
    if level:
        by = _solved(drafted, join, lambda mm: (*make(mm), *level), by - 1, by + 1, over_mm) or by
    verb = "take" if by < 0 else "let"
    way = "off" if by < 0 else "out at"
    say = f"{verb} {tenths(abs(by))} mm {way} each of the {_number(count)} side-seam edges at the waist"
    return Remedy(say, (*make(by), *level), abs(by) <= SAFE_EDGE_MM)


def levelled(drafted: Drafted, moved: tuple[Alteration, ...]) -> tuple[Alteration, ...]:
    """Return what makes the side seams equal again after the sides were moved: a hair at the longer one's waist."""
    after = alter(drafted, moved)
    extra: list[Alteration] = []
    for join, seam in zip(after.joins, walk_all(after.joins, after.pieces, after.easing), strict=False):
        sides = len(join.a) == len(join.b) == 1 and is_side(join.a[0].edge) and is_side(join.b[0].edge)
        if sides and seam.meets is Meets.NO and abs(seam.difference) < SMALL_MM:
            remedies = side_remedies(after, join, seam)
            extra += remedies[0].alterations if remedies else ()
    return tuple(extra)


def _at_darts(drafted: Drafted, join: Join, tops: list[PaperPiece], over_mm: float) -> Remedy | None:
    """Make every dart wider or narrower by the same amount, half of it at each leg."""
    darts = [(piece, number) for piece in tops for number, _ in enumerate(piece.darts, 1)]
    count = sum(piece.times for piece, _ in darts)
    if not darts:
        return None
    widths = [dart.intake_mm for piece in tops for dart in piece.darts]

    def make(mm: float) -> tuple[Alteration, ...]:
        return tuple(DartWidth(piece.name, mm, number) for piece, number in darts)

    by = _solved(drafted, join, make, 1.5 - min(widths), FURTHEST_MM - max(widths), over_mm)
    if by is None:
        return None
    how = "wider" if by > 0 else "narrower"
    say = f"make each of the {_number(count)} darts {tenths(abs(by))} mm {how}, {tenths(abs(by) / 2)} mm a leg"
    within = all(DART_RANGE_MM[0] <= width + by <= DART_RANGE_MM[1] for width in widths)
    return Remedy(say, make(by), within)


def _solved(drafted: Drafted, join: Join, make: Make, low: float, high: float, over_mm: float = 0.0) -> float | None:
    """Return the amount at which the seam differs by `over_mm`, None where none does."""

    def over(mm: float) -> float:
        pieces = alter(drafted, make(mm)).pieces
        return length_mm(join.a, join, pieces) - length_mm(join.b, join, pieces) - over_mm

    amount = solve(over, low, high)
    return None if amount is None else round(amount, DIGITS)


def _closes(drafted: Drafted, remedy: Remedy) -> bool:
    """Whether every seam that met still does and the altered set has nothing more to say."""
    after = alter(drafted, remedy.alterations)
    if len(after.findings) > len(drafted.findings):
        return False
    before = {str(seam.mate.a): seam.meets for seam in drafted.seams}
    broken = [one for one in after.seams if one.meets is Meets.NO and before.get(str(one.mate.a)) is not Meets.NO]
    fewer = sum(one.meets is Meets.NO for one in after.seams) < sum(one.meets is Meets.NO for one in drafted.seams)
    return fewer and not broken


def _equal(after: Drafted, join: Join) -> bool:
    return abs(length_mm(join.a, join, after.pieces) - length_mm(join.b, join, after.pieces)) <= EXACT_MM


def _number(count: int) -> str:
    return WORDS[count] if count < len(WORDS) else str(count)
