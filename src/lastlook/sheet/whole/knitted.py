"""The sheets of a knitted garment: its booklet, its pieces two at once, its drawings."""

from __future__ import annotations

import re
from dataclasses import replace

from lastlook import knit, outfit
from lastlook.outfit import Step
from lastlook.piece import EdgeName, Meets, Seam
from lastlook.quantity import Gauge, Missing, Units, write_length
from lastlook.sheet.booklet import Knitting, ToKnit, booklet
from lastlook.sheet.draw.knitted import Knitted, draw_knitted
from lastlook.sheet.knitting.handed import outline_in, piece_in
from lastlook.sheet.knitting.row_words import written
from lastlook.sheet.manner import Manner
from lastlook.sheet.pair import Pair, pair
from lastlook.sheet.pdf import pdf
from lastlook.sheet.svg import svg
from lastlook.sheet.whole.naming import File, plain, whose

TENTH = 0.1
SEAM_ORDER = (("shoulder",), ("raglan", "armhole", "cap"), ("underarm",), ("side", "seam"))
"""Order of seams (common practice, no source)."""
MEETS = {
    Meets.EXACTLY: "as it should be",
    Meets.BY_EASING: "eased in",
    Meets.ON_PURPOSE: "longer on purpose",
    Meets.NO: "which do not meet",
}
FOUR_INCHES = 1.016
"""Four inches, in units of 10 cm."""


def knitted_files(
    derived: outfit.Derived, judged: outfit.Verdict, one: outfit.Knitted, manner: Manner
) -> list[File] | str:
    """Return the files of a knitted garment, or why there are none yet."""
    plan = _knitting(derived, judged, one, manner)
    if isinstance(plan, str):
        return plan
    name = plain(one.plan.name)
    return [
        (f"{name}-booklet.pdf", pdf(booklet(plan, manner))),
        *_pairs(plan, name, manner),
        *_drawings(plan, name, manner),
    ]


def _knitting(derived: outfit.Derived, judged: outfit.Verdict, one: outfit.Knitted, manner: Manner) -> Knitting | str:
    """Return what a booklet says, or why there is none yet."""
    if not one.pieces or one.size is None:
        return f"No booklet of {one.plan.name} yet: its leaflet gives no pieces in a size that was chosen."
    gauge = one.working_gauge
    sizes = one.reading.sizes
    spot = sizes.index(one.size.size) if one.size.size in sizes else 0
    pieces = tuple(
        ToKnit(written(piece, len(sizes), spot, one.reading.source.text), knit.outline(piece, gauge) if gauge else None)
        for piece in one.pieces
        if piece.rows
    )
    looks = tuple(
        look for look in judged.last_looks if look.piece == one.plan.name and look.before in (Step.CAST_ON, Step.SEW_UP)
    )
    return Knitting(
        one.reading.title or one.plan.name.capitalize(),
        f"Size {one.size.size}, {whose(derived.outfit)}",
        pieces,
        gauge,
        tuple(_facts(derived, judged, one, manner)),
        looks,
        tuple(_seams(one)),
    )


def _facts(
    derived: outfit.Derived, judged: outfit.Verdict, one: outfit.Knitted, manner: Manner
) -> list[tuple[str, str]]:
    out = []
    if one.yarn:
        name = one.yarn.name.replace("-", " ")
        parts = [part for part in judged.enough.parts if part.subject.lower().replace("-", " ") == name.lower()]
        out += [("Yarn", part.because) for part in parts[:1]]
    gauge = one.working_gauge
    out.append(("Gauge", gauge_words(gauge, manner) if gauge else "not known yet"))
    if one.swatch and one.swatch.needle:
        out.append(("Needles", one.swatch.needle))
    out += [("Comes out", said) for said in _levels(derived, one, manner)]
    return out


def gauge_words(gauge: Gauge, manner: Manner) -> str:
    """Return a gauge in words, over 10 cm or over four inches."""
    inches = manner.units is Units.INCHES
    times, over = (FOUR_INCHES, "4 inches") if inches else (1.0, "10 cm")
    rows = "rows not counted yet" if isinstance(gauge.rows, Missing) else f"{_near(gauge.rows.best * times)} rows"
    return f"{_near(gauge.stitches.best * times)} stitches and {rows} to {over}, {gauge.origin.value}"


def _near(count: float) -> str:
    """Return a count to a half, as it is counted on a swatch."""
    halves = round(count * 2)
    return f"{halves // 2 or ''}½" if halves % 2 else f"{halves // 2}"


def _levels(derived: outfit.Derived, one: outfit.Knitted, manner: Manner) -> list[str]:
    said = []
    for level in outfit.fit_table(derived):
        if level.garment.lower() != one.plan.name.lower() or isinstance(level.gets, Missing):
            continue
        give = "" if level.gets.is_certain() else f", give or take {write_length(level.gets.plus_minus, manner.units)}"
        over = level.over
        more = "" if isinstance(over, Missing) else f"; {outfit.comparison(over.best, derived.outfit.manner)}"
        said.append(f"{level.name} {write_length(level.gets.best, manner.units)}{give}{more}")
    return said


def _seams(one: outfit.Knitted) -> list[str]:
    """Return the seams to sew in the order of making up, each with both lengths."""
    said = []
    for seam in sorted(one.seams, key=_turn):
        unit = seam.mate.unit.value
        a, b = f"{seam.a_length:g}", f"{seam.b_length:g}"
        how = f"{a} {unit} on either side" if a == b else f"{a} to {b} {unit}, {MEETS[seam.meets]}"
        said.append(f"Join {_edge(seam.mate.a)} to {_edge(seam.mate.b)}: {how}.")
    return said


def _turn(seam: Seam) -> int:
    """Return when a seam's turn comes: shoulders, sleeves into the body, underarms, then the long seams."""
    name = f"{seam.mate.a.edge} {seam.mate.b.edge}".lower()
    return next((spot for spot, words in enumerate(SEAM_ORDER) if any(word in name for word in words)), 99)


def _edge(name: EdgeName) -> str:
    return f"the {name.edge} of {name.piece}"


def _pairs(plan: Knitting, name: str, manner: Manner) -> list[tuple[str, bytes]]:
    """Return a sheet for every two pieces that may be worked side by side: fronts, sleeves."""
    out = []
    for a, b in pairs_of(tuple(one.piece for one in plan.pieces)):
        both = pair(Pair(plan.title, plan.size, a, b, plan.gauge), manner)
        out.append((f"{name}-{plain(a.name)}-and-{plain(b.name)}.pdf", pdf(both)))
    return out


def pairs_of(pieces: tuple[knit.WorkedPiece, ...]) -> list[tuple[knit.WorkedPiece, knit.WorkedPiece]]:
    """Return the pieces that are each other's mirror by name, and those that are made twice."""
    out = []
    for piece in pieces:
        if "left" in piece.name.lower():
            mirrored = re.sub("left", "right", piece.name, flags=re.I).lower()
            out += [(piece, other) for other in pieces if other.name.lower() == mirrored]
        elif piece.make == 2:
            out.append((replace(piece, name=f"First {piece.name}"), replace(piece, name=f"Second {piece.name}")))
    return out


def _drawings(plan: Knitting, name: str, manner: Manner) -> list[tuple[str, bytes]]:
    out = []
    for one in plan.pieces:
        if one.outline is not None and plan.gauge is not None and not isinstance(plan.gauge.rows, Missing):
            piece, outline = piece_in(one.piece, manner.hand), outline_in(one.outline, manner.hand)
            drawing = draw_knitted(Knitted(piece, outline or one.outline, plan.gauge), TENTH, manner)
            out.append((f"{name}-{plain(piece.name)}.svg", svg(drawing).encode()))
    return out
