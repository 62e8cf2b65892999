"""From the text of a leaflet to worked pieces with their proofs: the one way in."""

from __future__ import annotations

from collections.abc import Mapping

from lastlook import leaflet as paper
from lastlook.finding import Finding, SourceText, Span, Where
from lastlook.knit import tell
from lastlook.knit.assemble import Plan, plan
from lastlook.knit.choose import Choice, Outcome, Reader, decide
from lastlook.knit.correct import Corrected, corrected
from lastlook.knit.hand import handed
from lastlook.knit.mend import Mended, mends
from lastlook.knit.needle import Trouble
from lastlook.knit.prove import finished, leans
from lastlook.knit.reading import LeafletReading, SizeReading
from lastlook.knit.verdict import in_doubt, is_hidden, verdict
from lastlook.leaflet import Leaflet
from lastlook.leaflet import instruction as say
from lastlook.quantity import Gauge

Tried = tuple[dict[Trouble, tell.Attempt], dict[str, tell.Attempt], Mended | None]


def read(
    text: str,
    *,
    size: str | None = None,
    gauge: Gauge | None = None,
    choices: Mapping[str, int] | None = None,
    corrections: Mapping[str, str] | None = None,
) -> LeafletReading:
    """Read a leaflet, work it in every size (or the one asked for) and prove it.

    `gauge` is the wearer's own, `choices` the readings she chose, `corrections` those that she accepted.
    """
    page = handed(corrected(text, corrections or {}))
    leaflet = paper.read(page.text)
    made = plan(leaflet)
    reader = Reader(leaflet, made, gauge or leaflet.gauge)
    outcomes, decided = decide(reader, page.choices(choices or {}))
    unread = _unread(leaflet, made, outcomes)
    names = leaflet.sizes
    findings = _proven(reader, outcomes, decided, size)
    findings += tell.of_choices(decided, _tape(reader, size))
    findings += tell.of_whole(leaflet, unread, outcomes)
    findings += tell.of_curls(leaflet, outcomes) + tell.of_steps(leaflet, outcomes)
    shown = {
        name: _size(name, outcomes[n], reader.gauge, _verdict(leaflet, made, unread, outcomes[n], decided))
        for n, name in enumerate(names)
        if size in (None, name)
    }
    findings += _unknown_size(size, names)
    steps = [step for part in leaflet.parts for step in part.steps]
    result = LeafletReading(
        SourceText(text), leaflet.title, names, leaflet.gauge, len(steps), len(steps) - len(unread),
        tuple(unread), shown, tuple(sorted(findings, key=_order)),
    )  # fmt: skip
    return page.back(result)


def _proven(reader: Reader, outcomes: list[Outcome], decided: list[Choice], size: str | None) -> list[Finding]:
    """Return what does not add up; with a size asked for, what of it concerns that size, in its own figures."""
    tried = mends(reader, outcomes, decided)
    names = reader.leaflet.sizes
    every = _told(reader, outcomes, names, tried)
    if size not in names:
        return every
    kept = {(one.kind, one.where.piece) for one in every}
    return [one for one in _told(reader, outcomes, (size,), tried) if (one.kind, one.where.piece) in kept]


def _told(reader: Reader, outcomes: list[Outcome], asked: tuple[str, ...], tried: Tried) -> list[Finding]:
    attempts, seam_attempts, mended = tried
    names = reader.leaflet.sizes
    all_of = list(zip(names, outcomes, strict=True))
    of = [(name, outcome) for name, outcome in all_of if name in asked]
    troubles = [
        (name, one)
        for name, made in all_of
        for hands in made.pieces.values()
        for one in hands.troubles
        if not one.follows
    ]
    troubles += [(name, one) for name, made in all_of for one in leans(made.pieces)]
    findings = tell.of_troubles(troubles, (names, asked), attempts)
    spans = {hands.name: hands.span for hands in outcomes[0].pieces.values()} if outcomes else {}
    walked = {name: tuple(seam for seam in made.seams if not in_doubt(made, seam)) for name, made in of}
    findings += tell.of_seams(walked, _worn(spans), seam_attempts, tell.units_of(reader.leaflet.source.text))
    return tell.once(findings, mended)


def _tape(reader: Reader, size: str | None) -> tell.Tape:
    """Return what tells depths: the gauge, the leaflet's own tape, the size that was asked for or the first."""
    names = reader.leaflet.sizes
    at = names.index(size) if size in names else 0
    units = tell.units_of(reader.leaflet.source.text)
    return tell.Tape(reader.gauge, units, at, names[at] if len(names) > 1 else "")


def _order(one: Finding) -> tuple[int, int]:
    rank = {"proven": 0, "unknown": 1, "doubtful": 2, "note": 3}[one.certainty.value]
    return (0 if one.asks else rank), one.where.span.start if one.where.span else -1


def _worn(spans: dict[str, Span]) -> dict[str, Span]:
    sleeve = spans.get("Sleeve")
    return {**spans, "Left sleeve": sleeve, "Right sleeve": sleeve} if sleeve else spans


def _unread(leaflet: Leaflet, made: Plan, outcomes: list[Outcome]) -> list[Span]:
    """Return the steps that neither entered a worked chain nor are known to instruct nothing."""
    worked = {span for outcome in outcomes for hands in outcome.pieces.values() for span in hands.worked} | made.told
    out = []
    for part in leaflet.parts:
        for step in part.steps:
            if isinstance(step, say.Nothing) or step.span in worked:
                continue
            out.append(step.span)
    return out


def _verdict(leaflet: Leaflet, made: Plan, unread: list[Span], outcome: Outcome, decided: list[Choice]) -> str:
    return verdict(outcome, decided, is_hidden(made, unread, outcome, leaflet.source))


def _size(name: str, outcome: Outcome, gauge: Gauge | None, told: str) -> SizeReading:
    pieces = tuple(piece for hands in outcome.pieces.values() for piece in finished(hands, gauge))
    return SizeReading(name, told, pieces, outcome.seams)


def _unknown_size(size: str | None, names: tuple[str, ...]) -> list[Finding]:
    if size is None or size in names:
        return []
    from lastlook.finding import Certainty

    return [
        Finding(
            "size-not-there",
            Certainty.PROVEN,
            f"The leaflet has no size {size}.",
            f"It is printed for {', '.join(names)}.",
            f"Ask for one of {', '.join(names)}.",
            where=Where(span=Span(0, 1)),
        )
    ]


__all__ = ["Corrected", "read"]
