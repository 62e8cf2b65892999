"""The sheets of a sewn garment: its paper pieces, its order of work, its cutting sheet, its drawings."""

from __future__ import annotations

from dataclasses import replace

from lastlook import lay, outfit
from lastlook.outfit import Step
from lastlook.quantity import Missing
from lastlook.sheet.cutting import Cutting, cutting
from lastlook.sheet.draw.laid_out import table_of
from lastlook.sheet.draw.paper import picture
from lastlook.sheet.draw.table import draw_table
from lastlook.sheet.layout.page import Paper
from lastlook.sheet.manner import Manner
from lastlook.sheet.pdf import pdf
from lastlook.sheet.schedule import Schedule, schedule
from lastlook.sheet.sewing_order import sewing_order
from lastlook.sheet.svg import svg
from lastlook.sheet.tiles import Pattern, tiles
from lastlook.sheet.whole.naming import File, named, plain, whose_waist

TENTH = 0.1
TABLE_MM = 240.0
"""How long the cutting table is drawn for a file of its own."""


def paper_files(derived: outfit.Derived, one: outfit.Sewn, wanted: tuple[str, ...], manner: Manner) -> list[File]:
    """Return the true-size pages on both papers, and the pieces as one drawing."""
    names = {piece.lower() for piece in wanted}
    name = plain(one.plan.name)
    pieces = tuple(piece for piece in one.drafted.pieces if not names or piece.name.lower() in names)
    if not pieces:
        return []
    pattern = Pattern(named(one.plan.name), whose_waist(derived.outfit, manner), pieces)
    out = []
    for paper in Paper:
        pages = pdf(tiles(pattern, replace(manner, paper=paper)))
        out.append((f"{name}-paper-{paper.name.lower()}.pdf", pages))
    return [*out, (f"{name}-paper.svg", svg(picture(pieces, TENTH, manner)).encode())]


def cutting_files(
    derived: outfit.Derived, judged: outfit.Verdict, one: outfit.Sewn, manner: Manner
) -> list[File] | str:
    placements: tuple[lay.Placement, ...] = () if isinstance(one.placements, Missing) else one.placements
    table = table_of(one, placements)
    if table is None or one.cloth is None:
        return f"No cutting sheet of {one.plan.name} yet: nothing is laid on its cloth."
    looks = tuple(look for look in judged.last_looks if look.piece == one.plan.name and look.before is Step.CUT)
    proven = one.judgement is not None and one.judgement.proven
    name = plain(one.plan.name)
    cloth = one.cloth.name.replace("-", " ")
    said = Cutting(named(one.plan.name), whose_waist(derived.outfit, manner), cloth, table, proven, looks)
    drawing = draw_table(table, TABLE_MM / table.length_mm, manner)
    return [
        (f"{name}-cutting.pdf", pdf(cutting(said, manner))),
        (f"{name}-table.svg", svg(drawing).encode()),
    ]


def order_files(derived: outfit.Derived, one: outfit.Sewn, manner: Manner) -> list[File]:
    """Return the order of work."""
    parts = sewing_order(one, manner)
    if not parts:
        return []
    work = Schedule(named(one.plan.name), whose_waist(derived.outfit, manner), parts)
    return [(f"{plain(one.plan.name)}-order-of-work.pdf", pdf(schedule(work, manner)))]
