"""Rows that were told as a shaping, kept as rows so that 'repeat the last 6 rows' finds them."""

from __future__ import annotations

from lastlook.finding import Span
from lastlook.knit.needle.live import Event, Row
from lastlook.knit.needle.state import Hands, Recent
from lastlook.leaflet import Figure
from lastlook.leaflet.instruction import BindOff, CastOnInRow, Item, Run, Work

MOST = 40
"""Longer shapings are not repeated as rows."""


def remember_shaped(hands: Hands, since: int, span: Span) -> None:
    """Keep the rows worked after row `since`."""
    fresh = [row for row in hands.live.rows[-MOST - 1 :] if row.number > since]
    if len(fresh) <= MOST:
        hands.recent += [Recent(as_run(row), span, structure=row.structure) for row in fresh]


def remember_evenly(hands: Hands, row: Row) -> None:
    """The last row was shaped after it was told: keep it so."""
    if hands.recent and hands.recent[-1].span == row.span:
        last = hands.recent[-1]
        hands.recent[-1] = Recent(as_run(row), row.span, last.number, last.structure)
        if last.number in hands.book:
            hands.book[last.number] = hands.recent[-1]


def as_run(row: Row) -> Run:
    """Return a row's shapings as a run that fills up with plain stitches; nothing for a plain row."""
    if not row.events:
        return ()
    start = "left" if row.side == "wrong" else "right"
    first = [_item(event) for event in row.events if event.edge == start]
    last = [_item(event) for event in row.events if event.edge != start]
    return (*first, Work("k", None, reach="end"), *last)


def _item(event: Event) -> Item:
    n = Figure((float(event.n),))
    if event.act == "inc":
        return Work("inc", n, 1, 2)
    if event.act == "bind off":
        return BindOff(n)
    if event.act in ("cast on", "pick up"):
        return CastOnInRow(n)
    return Work("k2tog", n, 2, 1)
