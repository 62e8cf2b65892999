"""The ways in which unclear words can be read, each worked through: what the pieces come to either way.

Every way is worked with all else as the maker has it, in her size and at her gauge. A piece is listed only where
two ways differ on it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lastlook.finding import Finding
from lastlook.knit import SizeReading, WorkedPiece
from lastlook.outfit.garment.knitted import Knitted, in_size, read_in
from lastlook.quantity import Gauge, Missing

MARK = "readings."
SURE = " (agrees with all that is printed"


@dataclass(frozen=True)
class Comes:
    """What one piece comes to in one way."""

    piece: str
    rows: int
    end_stitches: int
    widest_sts: int
    long_mm: float | None
    """From cast-on to the last row; None where no row gauge is known."""
    wide_mm: float | None
    """At its widest, flat."""


@dataclass(frozen=True)
class Way:
    """One way to read the words."""

    number: int
    """From 1, as the outfit stores it."""
    meaning: str
    agrees: bool
    """Whether it agrees with all that is printed."""
    pieces: tuple[Comes, ...]


def ways_of(one: Knitted, finding: Finding) -> tuple[Way, ...]:
    """Return what each way to read a finding's words gives; nothing where there is no size, or no choice."""
    key = (finding.where.fact or "").partition(MARK)[2]
    if one.size is None or not finding.readings or not key:
        return ()
    worked = [_worked(one, key, number) for number in range(1, len(finding.readings) + 1)]
    named = [{piece.name: _comes(piece, one.working_gauge) for piece in size.pieces} if size else {} for size in worked]
    names = list(dict.fromkeys(name for pieces in named for name in pieces))
    apart = [name for name in names if len({pieces.get(name) for pieces in named}) > 1]
    return tuple(
        Way(number, _meaning(told), SURE in told, tuple(pieces[name] for name in apart if name in pieces))
        for number, (told, pieces) in enumerate(zip(finding.readings, named, strict=True), 1)
    )


def _worked(one: Knitted, key: str, number: int) -> SizeReading | None:
    plan = replace(one.plan, readings=(*((k, n) for k, n in one.plan.readings if k != key), (key, number)))
    gauge = one.gauge if isinstance(one.gauge, Gauge) else None
    reading = read_in(one.reading.source.text, gauge, plan)
    size, _ = in_size(reading, plan, one.size.size if one.size else "", one.gauge)
    return size


def _comes(piece: WorkedPiece, gauge: Gauge | None) -> Comes:
    rows, widest = len(piece.rows), max((row.after for row in piece.rows), default=0)
    long = gauge.length_mm(rows) if gauge else Missing("the gauge", "Knit a swatch.")
    wide = gauge.width_mm(widest).best if gauge else None
    return Comes(piece.name, rows, piece.end_stitches, widest, None if isinstance(long, Missing) else long.best, wide)


def _meaning(told: str) -> str:
    """Return a way without its number and without what was said of it.

    >>> _meaning("2. 6 in all (agrees as well as any)")
    '6 in all'
    """
    return told.partition(". ")[2].rpartition(" (")[0] or told
