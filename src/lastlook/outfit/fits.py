"""Will it fit? Every girth and length of the assembled garments against the body, and one garment over the other."""

from __future__ import annotations

from lastlook.finding import Certainty, Cure, Edit, Finding, Where
from lastlook.outfit.answer import Answer, Answered, Part, within
from lastlook.outfit.derive import Derived
from lastlook.outfit.garment.knitted import Knitted
from lastlook.outfit.garment.level import Level, judged
from lastlook.outfit.garment.levels import knitted_levels, with_size
from lastlook.outfit.garment.sewn import Sewn
from lastlook.outfit.garment.skirt import carried_over, getting_in, kept, looser, printed_size, sewn_levels
from lastlook.outfit.names import title
from lastlook.outfit.over import over_the_waistband
from lastlook.quantity import Missing

QUESTION = "Will it fit?"


def fits(derived: Derived) -> Answered:
    """Return the answer, level by level."""
    parts: list[Part] = []
    for one in derived.knitted:
        parts += _knitted(derived, one)
    for sewn in derived.sewn:
        parts += _sewn(derived, sewn)
    return Answered(QUESTION, (*parts, *over_the_waistband(derived)))


def fit_table(derived: Derived) -> tuple[Level, ...]:
    """Return every level of every garment: body, ease wanted, what it gets, give or take."""
    rows: list[Level] = []
    for one in derived.knitted:
        rows += knitted_levels(derived.outfit, one)
    for sewn in derived.sewn:
        rows += sewn_levels(derived.outfit, sewn)
    return tuple(rows)


def _knitted(derived: Derived, one: Knitted) -> list[Part]:
    if isinstance(one.gauge, Missing):
        return [_no_gauge(one)]
    manner = derived.outfit.manner
    levels = knitted_levels(derived.outfit, one)
    better = _better_size(derived, one, levels)
    attempt = better.say if better else None
    parts = [judged(level, manner, attempt) for level in levels]
    misfits = (Answer.NO, Answer.TIGHT)
    return [_cured(part, better) if better and part.answer in misfits else part for part in parts]


def _sewn(derived: Derived, one: Sewn) -> list[Part]:
    """Return every level of a skirt, how she gets into it, and which printed size is hers."""
    outfit = derived.outfit
    parts = []
    for level in sewn_levels(outfit, one):
        cure = looser(outfit, one, level) if level.answer[0] in (Answer.NO, Answer.TIGHT) else None
        part = judged(level, outfit.manner, cure.say if cure else None)
        parts.append(_cured(part, cure) if cure else part)
    more = (
        getting_in(outfit, one),
        printed_size(outfit, one.plan),
        carried_over(outfit, one.plan),
        kept(one, outfit.manner.units),
    )
    return [*parts, *(part for part in more if part is not None)]


def _cured(part: Part, cure: Cure) -> Part:
    findings = tuple(Finding(**{**vars(finding), "cures": (cure,), "checked": True}) for finding in part.findings)
    return Part(part.subject, part.answer, part.because, findings, part.chance)


def _better_size(derived: Derived, one: Knitted, levels: tuple[Level, ...]) -> Cure | None:
    """Return the size whose worst level is best, if it is better than the one chosen; it was worked to see."""
    if all(level.answer[0] in (Answer.YES, Answer.NOT_KNOWN_YET) for level in levels):
        return None
    chosen = one.plan.size
    scores = {chosen: _score(levels)}
    for size in one.reading.sizes:
        if size != chosen:
            scores[size] = _score(knitted_levels(derived.outfit, with_size(one, size)))
    best = max(scores, key=lambda size: scores[size])
    if best is None or scores[best] <= scores[chosen]:
        return None
    fact = f"knitting.{one.plan.name}.size"
    return Cure(f"Knit size {best} instead of {chosen}.", (Edit(fact, best),))


def _score(levels: tuple[Level, ...]) -> tuple[int, float]:
    """Return how many levels fit, then how little the others miss by, in mm."""
    good, miss = 0, 0.0
    for level in levels:
        over = level.over
        if isinstance(over, Missing):
            continue
        answer, _ = within(over, level.ease.low_mm, level.ease.high_mm)
        good += answer is Answer.YES
        miss += max(0.0, level.ease.low_mm - over.low, over.high - level.ease.high_mm)
    return good, -miss


def _no_gauge(one: Knitted) -> Part:
    name = title(one.plan.name)
    gauge = one.reading.gauge
    why = "The gauge that the leaflet prints was somebody else's hands."
    if gauge is not None and one.size is not None:
        body = max((row.before for piece in one.pieces for row in piece.rows), default=0)
        here = gauge.width_mm(body)
        why = (
            f"{body} stitches are {here.low:.0f} mm or {here.high:.0f} mm wide with a hand a little tighter or looser."
        )
    assert isinstance(one.gauge, Missing)
    finding = Finding(
        "gauge-missing",
        Certainty.UNKNOWN,
        f"How wide the {one.plan.name} comes out is not known yet: no gauge was measured for this yarn.",
        why,
        one.gauge.find_out,
        where=Where(piece=one.plan.name, fact=f"knitting.{one.plan.name}.swatch"),
    )
    return Part(name, Answer.NOT_KNOWN_YET, finding.say, (finding,))
