"""What is said of the leaflet as a whole: words not understood, a gauge that is missing, buttons and buttonholes."""

from __future__ import annotations

from lastlook.finding import Certainty, Finding, SourceText, Span, Where
from lastlook.knit.choose import Outcome
from lastlook.leaflet import Leaflet
from lastlook.quantity import Missing

MOST_TOLD = 40


def of_whole(leaflet: Leaflet, unread: list[Span], outcomes: list[Outcome]) -> list[Finding]:
    """Return what concerns no single step."""
    out = [_unread(leaflet.source, span) for span in unread[:MOST_TOLD]]
    if len(unread) > MOST_TOLD:
        out.append(_more(len(unread) - MOST_TOLD, unread[MOST_TOLD]))
    gauge = leaflet.gauge
    if (
        leaflet.parts
        and (gauge is None or isinstance(gauge.rows, Missing))
        and any(hands.lengths_unknown for one in outcomes for hands in one.pieces.values())
    ):
        out.append(_no_gauge(gauge is None))
    out += _buttons(leaflet, outcomes)
    return out


def _unread(source: SourceText, span: Span) -> Finding:
    words = " ".join(source.words(span).split())
    shown = words if len(words) < 90 else words[:88] + " …"
    return Finding(
        kind="not-understood", certainty=Certainty.UNKNOWN, say=f"“{shown}” was not understood, so nothing was worked from it.",
        why="Whatever these words do to the stitches is missing from the counts that follow.",
        attempt="Compare them with the paper: a letter or figure may have been mistyped. Otherwise write them out row by row.", where=Where(span=span),
    )  # fmt: skip


def _more(count: int, span: Span) -> Finding:
    return Finding(
        kind="not-understood", certainty=Certainty.UNKNOWN, say=f"{count} more places were not understood; they are listed with their lines in the JSON.",
        why="This text is mostly something other than knitting instructions.", where=Where(span=span),
    )  # fmt: skip


def _no_gauge(whole: bool) -> Finding:
    what = "gauge" if whole else "row gauge"
    return Finding(
        kind="gauge-missing", certainty=Certainty.UNKNOWN, say=f"How many rows the lengths are is not known: the leaflet names no {what}.",
        why="The leaflet tells its lengths in inches or centimetres, and only a gauge in rows turns them into rows. The stitches are counted all the same.",
        attempt="Knit a swatch of 30 stitches by 40 rows, wash it, and count the rows in 10 cm.", where=Where(span=Span(0, 1)),
    )  # fmt: skip


def _buttons(leaflet: Leaflet, outcomes: list[Outcome]) -> list[Finding]:
    if leaflet.buttons is None or not outcomes:
        return []
    for outcome in outcomes[:1]:
        for hands in outcome.pieces.values():
            holes = hands.crochet_holes or hands.holes
            if holes and holes != leaflet.buttons:
                return [Finding(
                    kind="buttons-differ", certainty=Certainty.PROVEN,
                    say=f"{hands.name} has {holes} buttonholes, and the leaflet asks for {leaflet.buttons} buttons.",
                    why="Every button needs its hole.", attempt="Count the holes of the row against the buttons you have.", where=Where(span=hands.span, piece=hands.name),
                )]  # fmt: skip
    return []
