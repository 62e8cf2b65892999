"""Driver for pages about sheets: what is printed, as words, as drawings, and as a plan of tiles.

`words SHEET` answers with every line of words, page by page; `svg DRAWING` with the drawing as text; `rows` gathers
rows written one a line; `left over` says rests as the cutting sheet does; `tiles` tells which page lies where.
The input of the first two is a list of `name: value`, how the maker wants her papers.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterable

from lastlook import outfit, paper, sheet
from lastlook.finding import Span
from lastlook.knit import Act, Shaping, Side, WorkedRow
from lastlook.lay import LeftOver
from lastlook.outfit import Step
from lastlook.paper import PaperPiece, SeamEdge, Use
from lastlook.quantity import Missing, Units
from lastlook.sheet.cutting import headline, in_words, use_of
from lastlook.sheet.knitting import gather, row_said
from lastlook.sheet.knitting.piece_pages import row_words
from lastlook.sheet.mark import Group, Item, Words
from lastlook.sheet.pair import worn
from lastlook.sheet.sewing_order import sewing_order
from lastlook.sheet.tile import Field, fields, window_of
from tests.areas import sheet_samples


def answer(given: str, asked: str) -> str:
    """Return what a page expects."""
    what, _, which = asked.partition(" ")
    if what == "words":
        return _spoken(_sheet(which, _manner(given)))
    if what == "english":
        return "\n".join(sheet.Manner(sheet.English(which)).say(line) for line in given.splitlines())
    if what == "svg":
        return sheet.svg(_drawing(which, _manner(given)))
    return PLANS[asked](given)


def _manner(given: str) -> sheet.Manner:
    said = dict(line.split(": ") for line in given.splitlines() if line)
    return sheet.Manner(
        sheet.English(said.get("english", "US")),
        Units(said.get("units", "cm")),
        sheet.Hand(said.get("hand", "right")),
        sheet.Paper[said.get("paper", "A4")],
    )


def _sheet(which: str, manner: sheet.Manner) -> sheet.Sheet:
    back = sheet_samples.back()
    if which == "booklet":
        piece = sheet.ToKnit(back, sheet_samples.outline_of(back))
        facts = (("Gauge", "22 stitches and 30 rows to 10 cm, on a washed swatch"),)
        looks = (sheet_samples.look(Step.CAST_ON),)
        ends = ("Block to the measures of the drawing.", "Sew the raglan seams row for row.")
        knitting = sheet.Knitting("Harbour pullover", "Size 36", (piece,), sheet_samples.gauge(), facts, looks, ends)
        return sheet.booklet(knitting, manner)
    if which == "pair":
        a, b = sheet_samples.fronts()
        both = sheet.Pair("Harbour cardigan", "Size 36", a, b, sheet_samples.gauge(), 350.0)
        return sheet.pair(both, manner)
    if which == "record":
        return sheet.record(sheet_samples.RECORD, manner)
    if which == "schedule":
        return sheet.schedule(sheet_samples.SCHEDULE, manner)
    if which == "last look":
        return sheet.last_look(sheet.Look("Harbour outfit", "for Nell", (sheet_samples.look(Step.CUT),)), manner)
    table = sheet_samples.table()
    return sheet.cutting(sheet.Cutting("Harbour skirt", "for Nell", "green twill", table, True), manner)


def _drawing(which: str, manner: sheet.Manner) -> sheet.Drawing:
    back = sheet_samples.back()
    if which in ("knitted", "blocking"):
        knitted = sheet.Knitted(back, sheet_samples.outline_of(back), sheet_samples.gauge())
        draw = sheet.draw_knitted if which == "knitted" else sheet.draw_blocking
        return draw(knitted, 0.1, manner)
    if which == "needle":
        return sheet.draw_row(sheet_samples.fronts()[0].rows[86], 120.0, manner)
    if which == "hoops":
        return sheet.draw_hoops(sheet_samples.HOOPS, 0.1, manner)
    if which == "overlay":
        return sheet.draw_overlay(*sheet_samples.altered(), 0.1, manner)
    if which == "paper":
        return sheet.picture(sheet_samples.skirt()[:1], 0.1, manner)
    return sheet.draw_table(sheet_samples.table(), 0.05, manner)


def _spoken(whole: sheet.Sheet) -> str:
    out = []
    for number, page in enumerate(whole.pages, 1):
        out.append(f"--- page {number}: {page.label}".rstrip(": "))
        out += [words for words in _words(page.items) if not words.isdigit()]
    return "\n".join(out)


def _words(items: Iterable[Item]) -> list[str]:
    out: list[str] = []
    for item in items:
        if isinstance(item, Words):
            out.append(item.text)
        elif isinstance(item, Group):
            out += _words(item.items)
    return out


def _rows(given: str) -> str:
    rows = []
    for line in given.splitlines():
        words, _, times = line.partition(" x ")
        for _ in range(int(times or 1)):
            side = Side.RIGHT if len(rows) % 2 == 0 else Side.WRONG
            rows.append(WorkedRow(len(rows) + 1, side, 60, 60, 60, 60, (), Span(0, 0), "lace", words))
    return "\n".join(row_words(line) for line in gather(tuple(rows)))


def _written(given: str) -> str:
    """Each line is `structure | side | stitches | shapings | the leaflet's words`; three sizes, the second."""
    out = []
    for line in given.splitlines():
        structure, side, before, shapings, words = (part.strip() for part in line.split("|"))
        facing = {"right": Side.RIGHT, "wrong": Side.WRONG, "round": Side.ROUND}[side]
        count = int(before)
        read = tuple(_shaping(one) for one in shapings.split(";") if one.strip())
        row = WorkedRow(1, facing, count, count, count, count, read, Span(0, 0), structure, words or structure)
        out.append(row_said(row, 3, 1))
    return "\n".join(out)


def _shaping(said: str) -> Shaping:
    act, edge, stitches, *rest = said.replace("bind off", "bind-off").split()
    inset, lean = int(rest[0]) if rest else 0, rest[1] if len(rest) > 1 else None
    return Shaping(Act(act.replace("-", " ")), edge, int(stitches), inset, lean)


def _rests(given: str) -> str:
    manner = sheet.Manner()
    sizes = [tuple(map(float, line.split(" x "))) for line in given.splitlines()]
    rests = tuple(LeftOver(*size) for size in sizes)
    table = sheet.Table(sheet_samples.table().cloth, 1550.0, (), rests)
    out = [headline(sheet.Cutting("", "", "", table, is_proven, ()), manner) for is_proven in (True, False)]
    return "\n".join([*out, *(f"{in_words(rest, manner)}: {use_of(rest)}" for rest in rests)])


def rectangle(name: str, width: float, height: float) -> PaperPiece:
    """Return a paper piece of that size without allowances."""
    corners = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height), (0.0, 0.0))
    sides = tuple(
        SeamEdge(f"side {spot}", (sheet_samples.polyline(ends),), (), 0.0, Use.OPEN)
        for spot, ends in enumerate(itertools.pairwise(corners))
    )
    return PaperPiece(name, sides, grain=((width / 2, height * 0.2), (width / 2, height * 0.8)))


def _edges(given: str) -> str:
    """Each line names a piece and the edge that is seen on that side from the right side of the fabric."""
    out = []
    for line in given.splitlines():
        name, edge = line.split(": ")
        out.append(f"{name}, {edge} as seen from the right side: {worn(name, edge)}")
    return "\n".join(out)


def _order(given: str) -> str:
    """The first line names the kind of skirt, the others its measures in cm; answers with every step."""
    kind, *lines = given.splitlines()
    said = {name: float(cm) * 10 for name, cm in (line.split(": ") for line in lines)}
    options = {name: said.pop(name) for name in ("length_mm",) if name in said}
    drafted = paper.draft(kind, said, options)
    lack = Missing("the lay", "Lay it.")
    one = outfit.Sewn(outfit.Sewing("skirt", kind), drafted, (), None, None, lack, None)
    out = []
    for name, tasks in sewing_order(one, sheet.Manner()):
        out.append(name)
        out += [
            f"  {'! ' if task.is_final else ''}{task.say}" + (f" ({task.why})" if task.why else "") for task in tasks
        ]
    return "\n".join(out)


def _tiles(given: str) -> str:
    pieces, paper = [], sheet.Paper.A4
    for line in given.splitlines():
        if line in sheet.Paper.__members__:
            paper = sheet.Paper[line]
            continue
        name, wide, _, high = line.rsplit(" ", 3)
        pieces.append(rectangle(name, float(wide), float(high)))
    window = window_of(paper)
    out = [f"window {window.width:g} x {window.height:g} mm"]
    for field in fields(tuple(pieces), window):
        out += _plan(field)
    return "\n".join(out)


def _plan(field: Field) -> list[str]:
    out = [f"{field.name}: {field.columns} across, {field.rows} down"]
    for tile in field.tiles:
        right, below = field.tile_at(tile.column + 1, tile.row), field.tile_at(tile.column, tile.row + 1)
        joins = [f"right {field.tile_name(right)}"] if right else []
        joins += [f"below {field.tile_name(below)}"] if below else []
        out.append(f"  {field.tile_name(tile)}: {', '.join(joins) or 'no other'}")
    return out


PLANS: dict[str, Callable[[str], str]] = {
    "rows": _rows,
    "left over": _rests,
    "tiles": _tiles,
    "edges": _edges,
    "order": _order,
    "written": _written,
}
