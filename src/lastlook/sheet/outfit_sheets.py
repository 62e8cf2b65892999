"""Every sheet of an outfit, as files: booklets, cutting sheets, paper pieces, last looks, drawings.

What can't be printed yet is told instead, each in a sentence; nothing is printed with a gap in it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from lastlook import knit, lay, outfit, stock
from lastlook.outfit import Step
from lastlook.piece import EdgeName, Meets, Seam
from lastlook.quantity import Gauge, Missing, Units, write_length, write_weight
from lastlook.sheet.booklet import Knitting, ToKnit, booklet
from lastlook.sheet.cutting import Cutting, cutting
from lastlook.sheet.draw.hoops import Hoop, draw_hoops
from lastlook.sheet.draw.knitted import Knitted, draw_knitted
from lastlook.sheet.draw.laid_out import table_of
from lastlook.sheet.draw.paper import picture
from lastlook.sheet.draw.table import draw_table
from lastlook.sheet.knitting.handed import outline_in, piece_in
from lastlook.sheet.knitting.row_words import written
from lastlook.sheet.last_look import Look, last_look
from lastlook.sheet.layout.page import Paper
from lastlook.sheet.manner import English, Hand, Manner
from lastlook.sheet.pair import Pair, pair
from lastlook.sheet.pdf import pdf
from lastlook.sheet.record import Came, Material, Record, record
from lastlook.sheet.schedule import Schedule, schedule
from lastlook.sheet.sewing_order import sewing_order
from lastlook.sheet.svg import svg
from lastlook.sheet.tiles import Pattern, tiles

TENTH = 0.1
SEAM_ORDER = (("shoulder",), ("raglan", "armhole", "cap"), ("underarm",), ("side", "seam"))
"""Order of seams (common practice, no source)."""
MEETS = {
    Meets.EXACTLY: "as it should be",
    Meets.BY_EASING: "eased in",
    Meets.ON_PURPOSE: "longer on purpose",
    Meets.NO: "which do not meet",
}
HOOP = 0.12
"""Scale of the hoops."""
TABLE_MM = 240.0
"""How long the cutting table is drawn for a file of its own."""
FOUR_INCHES = 1.016
"""Four inches, in units of 10 cm."""


@dataclass(frozen=True)
class Printed:
    """Files by name, and what could not be printed yet."""

    files: tuple[tuple[str, bytes], ...]
    lacking: tuple[str, ...] = ()


def manner_of(one: outfit.Outfit, paper: Paper | None = None) -> Manner:
    """Return how this maker wants her papers; without a wish, the paper of her tape's country."""
    british = one.manner.english.upper() in ("UK", "BRITISH")
    usual = Paper.LETTER if one.manner.units is Units.INCHES and not british else Paper.A4
    hand = Hand.LEFT if one.manner.hand == "left" else Hand.RIGHT
    return Manner(English.BRITISH if british else English.US, one.manner.units, hand, paper or usual)


def sheets_of(
    derived: outfit.Derived, judged: outfit.Verdict, paper: Paper | None = None, pieces: tuple[str, ...] = ()
) -> Printed:
    """Return every sheet of an outfit; with names of paper pieces, only those are laid out at true size."""
    manner = manner_of(derived.outfit, paper)
    files: list[tuple[str, bytes]] = []
    lacking: list[str] = []
    for one in derived.knitted:
        plan = _knitting(derived, judged, one, manner)
        if isinstance(plan, str):
            lacking.append(plan)
            continue
        files.append((f"{_plain(one.plan.name)}-booklet.pdf", pdf(booklet(plan, manner))))
        files += _pairs(plan, _plain(one.plan.name), manner)
        files += _knitted_drawings(plan, _plain(one.plan.name), manner)
    for sewn in derived.sewn:
        files += _paper(derived, sewn, pieces, manner)
        parts = sewing_order(sewn, manner)
        if parts:
            work = Schedule(sewn.plan.name.capitalize(), _whose(derived, manner), parts)
            files.append((f"{_plain(sewn.plan.name)}-order-of-work.pdf", pdf(schedule(work, manner))))
        found = _cut(derived, judged, sewn, manner)
        if isinstance(found, str):
            lacking.append(found)
        else:
            files += found
    levels = outfit.fit_table(derived)
    if levels:
        files.append(("fit.svg", svg(draw_hoops(tuple(map(_hoop, levels)), HOOP, manner)).encode()))
    looks = Look(derived.outfit.name, f"for {derived.outfit.wearer.name}", judged.last_looks)
    files.append(("last-look.pdf", pdf(last_look(looks, manner))))
    files.append(("record.pdf", pdf(record(_record(derived), manner))))
    return Printed(tuple(files), tuple(lacking))


def _knitting(derived: outfit.Derived, judged: outfit.Verdict, one: outfit.Knitted, manner: Manner) -> Knitting | str:
    """Return what a booklet says, or why there is none yet."""
    if not one.pieces or one.size is None:
        return f"No booklet of {one.plan.name} yet: its leaflet gives no pieces in a size that was chosen."
    gauge = one.working_gauge
    sizes = one.reading.sizes
    spot = sizes.index(one.size.size) if one.size.size in sizes else 0
    pieces = tuple(
        ToKnit(written(piece, len(sizes), spot), knit.outline(piece, gauge) if gauge else None)
        for piece in one.pieces
        if piece.rows
    )
    looks = tuple(
        look for look in judged.last_looks if look.piece == one.plan.name and look.before in (Step.CAST_ON, Step.SEW_UP)
    )
    return Knitting(
        one.reading.title or one.plan.name.capitalize(),
        f"Size {one.size.size}, for {derived.outfit.wearer.name}",
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
        out.append((f"{name}-{_plain(a.name)}-and-{_plain(b.name)}.pdf", pdf(both)))
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


def _hoop(level: outfit.Level) -> Hoop:
    body = None if isinstance(level.body, Missing) else level.body.mm.best
    gets = None if isinstance(level.gets, Missing) else level.gets
    lack = next((one for one in (level.body, level.gets) if isinstance(one, Missing)), None)
    because = f"not known yet: no {lack.what}" if lack else ""
    name = f"{level.garment.capitalize()}, {level.name}"
    return Hoop(name, body, gets.best if gets else None, gets.plus_minus if gets else 0.0, because)


def _knitted_drawings(plan: Knitting, name: str, manner: Manner) -> list[tuple[str, bytes]]:
    out = []
    for one in plan.pieces:
        if one.outline is not None and plan.gauge is not None and not isinstance(plan.gauge.rows, Missing):
            piece, outline = piece_in(one.piece, manner.hand), outline_in(one.outline, manner.hand)
            drawing = draw_knitted(Knitted(piece, outline or one.outline, plan.gauge), TENTH, manner)
            out.append((f"{name}-{_plain(piece.name)}.svg", svg(drawing).encode()))
    return out


def _paper(
    derived: outfit.Derived, one: outfit.Sewn, wanted: tuple[str, ...], manner: Manner
) -> list[tuple[str, bytes]]:
    """Return the true-size pages on both papers, and the pieces as one drawing."""
    names = {piece.lower() for piece in wanted}
    name = _plain(one.plan.name)
    pieces = tuple(piece for piece in one.drafted.pieces if not names or piece.name.lower() in names)
    if not pieces:
        return []
    pattern = Pattern(one.plan.name.capitalize(), _whose(derived, manner), pieces)
    out = []
    for paper in Paper:
        pages = pdf(tiles(pattern, replace(manner, paper=paper)))
        out.append((f"{name}-paper-{paper.name.lower()}.pdf", pages))
    return [*out, (f"{name}-paper.svg", svg(picture(pieces, TENTH, manner)).encode())]


def _whose(derived: outfit.Derived, manner: Manner) -> str:
    wearer = derived.outfit.wearer
    waist = wearer.taken("waist_girth")
    return f"for {wearer.name}" + (f", waist {write_length(waist.mm.best, manner.units)}" if waist else "")


def _cut(
    derived: outfit.Derived, judged: outfit.Verdict, one: outfit.Sewn, manner: Manner
) -> list[tuple[str, bytes]] | str:
    placements: tuple[lay.Placement, ...] = () if isinstance(one.placements, Missing) else one.placements
    table = table_of(one, placements)
    if table is None or one.cloth is None:
        return f"No cutting sheet of {one.plan.name} yet: nothing is laid on its cloth."
    looks = tuple(look for look in judged.last_looks if look.piece == one.plan.name and look.before is Step.CUT)
    proven = one.judgement is not None and one.judgement.proven
    name = _plain(one.plan.name)
    cloth = one.cloth.name.replace("-", " ")
    said = Cutting(one.plan.name.capitalize(), _whose(derived, manner), cloth, table, proven, looks)
    drawing = draw_table(table, TABLE_MM / table.length_mm, manner)
    return [
        (f"{name}-cutting.pdf", pdf(cutting(said, manner))),
        (f"{name}-table.svg", svg(drawing).encode()),
    ]


def _record(derived: outfit.Derived) -> Record:
    """Return what is kept of an outfit: its materials as they were typed, its pieces as they came off."""
    one = derived.outfit
    yarns = [Material(_named(yarn.name), _yarn_words(yarn), "a thread") for yarn in one.yarns]
    cloths = [Material(_named(cloth.name), _cloth_words(cloth, one.manner), "a snip") for cloth in one.cloths]
    pieces = []
    for knitted in derived.knitted:
        for piece in knitted.pieces:
            made = next((each for each in knitted.made if each.piece.lower() == piece.name.lower()), None)
            name = f"{_named(knitted.plan.name)}: {piece.name}"
            pieces.append(_came(name, len(piece.rows), made))
    whose = f"for {one.wearer.name}"
    return Record(one.name, whose, (*yarns, *cloths), tuple(pieces))


def _came(name: str, planned: int, made: outfit.MadePiece | None) -> Came:
    if made is None:
        return Came(name, planned)
    return Came(name, planned, made.rows, made.cast_on, made.width_mm, made.length_mm, made.grams)


def _yarn_words(yarn: stock.Yarn) -> str:
    weight = "" if isinstance(yarn.grams, Missing) else write_weight(yarn.grams.best)
    return "; ".join(part for part in (yarn.fibre, weight, yarn.state) if part)


def _cloth_words(cloth: stock.Cloth, manner: outfit.Manner) -> str:
    wide, long = write_length(cloth.width_mm, manner.units), write_length(cloth.length_mm, manner.units)
    flaws = ", ".join(flaw.what for flaw in cloth.flaws if flaw.what)
    return f"{wide} wide, {long} long" + (f"; {flaws}" if flaws else "")


def _named(name: str) -> str:
    return name[:1].upper() + name[1:].replace("-", " ")


def _plain(name: str) -> str:
    """Return a name as a file can carry it."""
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-") or "sheet"
