"""A garment to be knitted, derived: its leaflet read and worked at the wearer's gauge, its yarn forecast.

A piece that was made replaces its plan: its real rows stand in every seam, its weight in the forecast.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from lastlook import knit
from lastlook.finding import Finding
from lastlook.knit import LeafletReading, SizeReading, WorkedPiece
from lastlook.knit.compose.alter import Changes, alter
from lastlook.knit.yarn import Forecast, Weighed, forecast, stitches_of_all
from lastlook.outfit.garment.follow import follow
from lastlook.outfit.garment.knitted_shape import Heights, heights
from lastlook.outfit.outfit import Knitting, MadePiece, Outfit, made_of
from lastlook.piece import Edge, Seam, walk
from lastlook.quantity import Gauge, Missing, Spread
from lastlook.stock import Swatch, Yarn


@dataclass(frozen=True)
class Knitted:
    """What a knitting comes to."""

    plan: Knitting
    reading: LeafletReading
    size: SizeReading | None
    """The leaflet worked in the size that was chosen; None where none was, or it has no such size."""
    gauge: Gauge | Missing
    """The wearer's own where a swatch was counted; Missing otherwise, whatever the leaflet prints."""
    yarn: Yarn | None
    swatch: Swatch | None
    made: tuple[MadePiece, ...]
    seams: tuple[Seam, ...]
    forecast: Forecast | Missing
    altered: tuple[Finding, ...] = ()
    """What altering the leaflet has to say."""

    @property
    def working_gauge(self) -> Gauge | None:
        """Return the gauge that lengths are turned into rows with: her own, else the printed one."""
        return self.gauge if isinstance(self.gauge, Gauge) else self.reading.gauge

    @property
    def pieces(self) -> tuple[WorkedPiece, ...]:
        """Return the worked pieces of the chosen size."""
        return self.size.pieces if self.size else ()

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Return what the reader says of the chosen size, with cures that point into this outfit."""
        wanted = (None, self.size.size if self.size else None)
        return (*(self._here(one) for one in self.reading.findings if one.size in wanted), *self.altered)

    def shape(self, piece: WorkedPiece) -> Heights | None:
        """Return a piece at the heights that matter, as made where it was made."""
        return heights(piece, made_of(self.made, piece.name))

    def _here(self, finding: Finding) -> Finding:
        cures = tuple(
            replace(cure, edits=tuple(replace(edit, fact=self._fact(edit.fact)) for edit in cure.edits))
            for cure in finding.cures
        )
        return replace(finding, cures=cures)

    def _fact(self, fact: str) -> str:
        return f"knitting.{self.plan.name}.{fact}" if fact.startswith(("readings.", "corrections.")) else fact


def knitted(outfit: Outfit, plan: Knitting) -> Knitted:
    """Return what a knitting comes to."""
    swatch = outfit.swatch(plan.swatch)
    gauge: Gauge | Missing = (
        swatch.gauge
        if swatch
        else Missing("gauge", "Knit a swatch 15 cm square in this wool, wash and dry it, and count it.")
    )
    text = outfit.document.text(plan.leaflet) or ""
    reading = read_in(text, gauge if isinstance(gauge, Gauge) else None, plan)
    made = tuple(one for one in outfit.made if one.garment in (plan.name, ""))
    yarn = outfit.yarn(plan.yarn)
    size, altered = in_size(reading, plan, _size(reading, plan), gauge)
    if size is not None and made:
        size, followed = follow(size, made)
        altered = (*altered, *followed)
    lack = Missing("the yarn", "Name a lot of the stock.")
    out = Knitted(plan, reading, size, gauge, yarn, swatch, made, (), lack, altered)
    return replace(out, seams=_seams(out), forecast=_forecast(out))


def in_size(
    reading: LeafletReading, plan: Knitting, name: str, gauge: Gauge | Missing
) -> tuple[SizeReading | None, tuple[Finding, ...]]:
    """Return a size with what the maker wants longer or wider, and what there is to say of it."""
    size = reading.by_size.get(name)
    if size is None or not (plan.longer or plan.wider) or reading.gauge is None:
        return size, ()
    tall = wide = 1.0
    printed = reading.gauge
    if isinstance(gauge, Gauge) and isinstance(gauge.rows, Spread) and isinstance(printed.rows, Spread):
        tall, wide = gauge.rows.best / printed.rows.best, gauge.stitches.best / printed.stitches.best
    changes = Changes(
        longer_mm={place: mm * tall for place, mm in plan.longer},
        wider_mm={place: mm * wide for place, mm in plan.wider},
    )
    composed = alter(reading, size, changes)
    if not composed.pieces:
        return size, composed.findings
    return replace(size, pieces=composed.pieces, seams=composed.seams), composed.findings


def read_in(text: str, gauge: Gauge | None, plan: Knitting) -> LeafletReading:
    """Read a leaflet in every size, told with the figures of the size that was chosen."""
    reading = read_once(text, gauge, plan.readings, plan.corrections, None)
    if plan.size is None or len(reading.sizes) < 2 or plan.size not in reading.sizes:
        return reading
    told = read_once(text, gauge, plan.readings, plan.corrections, plan.size)
    return replace(reading, findings=told.findings)


@lru_cache(maxsize=64)
def read_once(
    text: str,
    gauge: Gauge | None,
    readings: tuple[tuple[str, int], ...],
    corrections: tuple[tuple[str, str], ...],
    size: str | None,
) -> LeafletReading:
    """Read a leaflet, in one size if it is named; the same text, gauge, choices and size are read only once."""
    return knit.read(text, size=size, gauge=gauge, choices=dict(readings), corrections=dict(corrections))


def _size(reading: LeafletReading, plan: Knitting) -> str:
    if plan.size is None and len(reading.sizes) == 1:
        return reading.sizes[0]
    return plan.size or ""


def _seams(one: Knitted) -> tuple[Seam, ...]:
    """Walk every seam again with the rows of the pieces that were made."""
    if one.size is None or not one.made:
        return one.size.seams if one.size else ()
    out = []
    for seam in one.size.seams:
        a = _edge(one, seam, seam.mate.a.piece, seam.mate.a.edge, seam.a_length)
        b = _edge(one, seam, seam.mate.b.piece, seam.mate.b.edge, seam.b_length)
        out.append(walk(seam.mate, a, b) or seam)
    return tuple(out)


def _edge(one: Knitted, seam: Seam, piece: str, edge: str, planned: float) -> Edge:
    """Return an edge with the rows that were really worked: below the underarm and above it are told apart."""
    name = seam.mate.a if seam.mate.a.piece == piece and seam.mate.a.edge == edge else seam.mate.b
    length = planned
    made = made_of(one.made, piece)
    worked = one.size.piece(piece) if one.size else None
    if made and worked and seam.mate.unit.value == "rows":
        plan, fact = heights(worked), heights(worked, made)
        if plan and fact:
            below = fact.rows_to_underarm - plan.rows_to_underarm
            above = (fact.rows - fact.rows_to_underarm) - (plan.rows - plan.rows_to_underarm)
            length += above if "raglan" in edge or "armhole" in edge else below
    rows = int(length) if seam.mate.unit.value == "rows" else None
    sts = int(length) if seam.mate.unit.value == "stitches" else None
    return Edge(name, rows=rows, stitches=sts, mm=length if rows is None and sts is None else None)


def _forecast(one: Knitted) -> Forecast | Missing:
    if one.yarn is None:
        return Missing("the yarn it is knitted in", "Name a lot of the stock.")
    if one.size is None:
        return Missing("the size to be knitted", "Choose one of the leaflet's sizes.")
    if one.working_gauge is None:
        return Missing("the gauge", "Knit a swatch, wash and dry it, and count it.")
    pieces = stitches_of_all(one.pieces)
    weighed = [Weighed(made.piece, made.grams) for made in one.made if made.grams is not None]
    return forecast(pieces, one.working_gauge, one.yarn, one.swatch, weighed)
