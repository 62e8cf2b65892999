"""Rows told stitch by stitch, by their labels or standing alone."""

from __future__ import annotations

import re

from lastlook.leaflet.instruction import (
    ONE,
    BindOff,
    BindOffs,
    Cadence,
    Goal,
    Label,
    RowOf,
    Run,
    Shape,
    Step,
    Work,
)
from lastlook.leaflet.parse.cursor import Cursor, figure
from lastlook.leaflet.parse.row.labels import ACROSS_NEEDLE, label_of, reference
from lastlook.leaflet.parse.stitch.runs import run
from lastlook.leaflet.parse.working import plain_rows, run_on


def labelled(cursor: Cursor, before: list[Step]) -> list[Step] | None:
    """Read a row with its label, or a run of stitches that stands alone."""
    since = cursor.pos
    across = cursor.take(ACROSS_NEEDLE)
    if across:
        number = 2 if across["w"] in ("front", "instep") else int(across["w"].strip("<>th"))
        whole = Work("k", None, reach="all")
        return [RowOf(Label((number,), needle=True), (whole,), span=cursor.span(since))]
    label = label_of(cursor)
    if label is not None:
        return _row_after(cursor, label, since)
    if cursor.see(r"rep|\* (?:rep|across)"):
        return None
    return _bare(cursor, since)


def _needle_named(cursor: Cursor, since: int) -> int:
    """Return the number of the needle that a stretch names in passing: 'k to last 3 sts of 1st needle'."""
    found = re.search(r"(?:of|on) <([123])>th (?:side )?needle", cursor.text[since : cursor.pos])
    return int(found[1]) if found else 0


def _row_after(cursor: Cursor, label: Label, since: int) -> list[Step]:
    row = cursor.span(since)
    told = _shaped_rows(cursor, label, since)
    if told is not None:
        return [told]
    like = reference(cursor)
    if like:
        return [RowOf(label, (), like, span=cursor.span(since))]
    plain = cursor.pos
    many = plain_rows(cursor) if cursor.see(r"(?:k|p|work|rib) (?:<1> )?(?:row|rnd)") else None
    if many is not None and label.numbers:
        cursor.pos = plain
        cursor.take(r"(?:k|p|work|rib) (?:<1> )?(?:row|rnd)")
        whole = Work("p" if cursor.text[plain] == "p" else "k", None, reach="all")
        return [RowOf(label, (whole,), span=cursor.span(since))]
    cursor.pos = plain
    cursor.take(
        r"(?:use (?:mc|cc|color|no|\w+ yarn|smaller|larger)(?: (?:\w+|<\d+>))?(?: needle)?|work as foll) ?[,:]? ?"
    )
    cursor.take(
        r"beg (?:at|from) (?:front|neck|armhole|side|center|inner|outer) edge ?,? ?(?=bo |k |p |work |co |dec )"
    )
    alone = cursor.take(r"(?P<v>k|p)(?= ?(?:--|-|\() ?<)")
    if alone:
        return [RowOf(label, (Work(alone["v"], None, reach="all"),), span=cursor.span(since))]
    items = run(cursor)
    if items:
        fabric = run_on(cursor, items, since)
        if fabric is not None and not label.numbers:
            return [fabric]
        cursor.take(r"across(?: (?:row|all st))?|to end(?: of row)?")
        number = 0 if label.needle else _needle_named(cursor, plain)
        if number:
            named = Label((number,), needle=True)
            return [RowOf(label, (), span=row), RowOf(named, items, span=cursor.span(plain))]
        return [RowOf(label, _with_rest(cursor, items), span=cursor.span(since))]
    return [RowOf(label, (), span=row)]


def _shaped_rows(cursor: Cursor, label: Label, since: int) -> Step | None:
    """Read 'Next 2 rows: bind off 3 sts at beg of each row', 'Next 6 rows: decrease 1 st at beg of each row'."""
    if label.rows is None:
        return None
    match = cursor.take(
        r"(?P<a>bo|dec|inc) (?P<n>{N})(?: st)? (?:at |on )?(?:(?P<e>beg|end) of (?:each|every|these)(?: row)?|(?P<b>each end|each side|both end|both side)(?: of (?:each|every) row)?)"
    )
    if match is None:
        return None
    n, edge = figure(match) or ONE, "both" if match["b"] else match["e"]
    if match["a"] == "bo":
        return BindOffs(n, rows=label.rows, edge="beg" if edge != "both" else "both", span=cursor.span(since))
    cadence = Cadence(every=ONE, first=ONE, goal=Goal(times=label.rows, count="in all"))
    return Shape(match["a"], n, edge, (cadence,), span=cursor.span(since))


def _bare(cursor: Cursor, since: int) -> list[Step] | None:
    items = run(cursor)
    if not items:
        cursor.pos = since
        return None
    fabric = run_on(cursor, items, since)
    if fabric is not None:
        return [fabric]
    number = _needle_named(cursor, since)
    named = Label((number,), needle=True) if number else None
    return [RowOf(named, _with_rest(cursor, items), span=cursor.span(since))]


def _with_rest(cursor: Cursor, items: Run) -> Run:
    """'Bind off the next 28 and on the remaining 26 knit 5 ribs': the row is worked to its end."""
    if isinstance(items[-1], BindOff) and cursor.see(r",? ?(?:and )?(?:beg [a-z]+ )?on (?:rem|alt|last) {N} st"):
        return (*items, Work("k", None, reach="end"))
    return items
