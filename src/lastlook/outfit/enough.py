"""Is there enough? Yarn by the gram, cloth by the lay."""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit.answer import Answer, Answered, Part, within
from lastlook.outfit.derive import Derived
from lastlook.outfit.garment.knitted import Knitted
from lastlook.outfit.garment.sewn import Sewn
from lastlook.outfit.garment.spare import spare
from lastlook.outfit.names import title
from lastlook.quantity import Missing, Spread, exactly, write_weight
from lastlook.stock import Yarn

QUESTION = "Is there enough?"
COMFORT = 0.10
"""A tenth more than the forecast is kept in hand (common practice, no source)."""


def enough(derived: Derived) -> Answered:
    """Return the answer, lot by lot and cloth by cloth."""
    lots = tuple(dict.fromkeys(one.yarn for one in derived.knitted if one.yarn is not None))
    loose = tuple(_unnamed(one) for one in derived.knitted if one.yarn is None)
    yarns = tuple(_yarn(derived, lot, [one for one in derived.knitted if one.yarn == lot]) for lot in lots)
    return Answered(QUESTION, (*yarns, *loose, *(_cloth(one) for one in derived.sewn)))


def _unnamed(one: Knitted) -> Part:
    said = (
        f"Whether there is enough yarn for the {one.plan.name} is not known yet: no lot of the stock was named for it."
    )
    fact = Where(fact=f"knitting.{one.plan.name}.yarn")
    finding = Finding("yarn-unnamed", Certainty.UNKNOWN, said, "A forecast needs a lot.", "Name one.", where=fact)
    return Part(f"Yarn for {one.plan.name}", Answer.NOT_KNOWN_YET, said, (finding,))


def _yarn(derived: Derived, lot: Yarn, users: list[Knitted]) -> Part:
    subject = title(lot.name)
    need = exactly(0.0)
    for one in users:
        if isinstance(one.forecast, Missing):
            return _not_known(subject, one, one.forecast)
        need = need + one.forecast.total_g
    if isinstance(lot.grams, Missing):
        return _not_known(subject, users[0], lot.grams)
    left = lot.grams - need
    answer, chance = within(left, 0.0, None)
    because = _sentence(subject, lot.grams, need, left, answer)
    findings = [one for user in users if not isinstance(user.forecast, Missing) for one in user.forecast.findings]
    if answer is not Answer.YES:
        findings = [_curable(derived, users, lot.grams, finding) for finding in findings]
    if answer is Answer.YES and left.best < need.best * COMFORT:
        findings.append(_close(lot, need, left))
    return Part(subject, answer, because, tuple(findings), chance)


def _curable(derived: Derived, users: list[Knitted], have: Spread, finding: Finding) -> Finding:
    """Return the finding that yarn is short, with what would spare enough of it."""
    if finding.kind != "yarn-short":
        return finding
    last = users[-1]
    others = sum(one.forecast.total_g.high for one in users[:-1] if not isinstance(one.forecast, Missing))
    cures = spare(derived.outfit, last, have, others)
    if not cures:
        return finding
    return replace(finding, attempt=" Or: ".join(cure.say for cure in cures), checked=True, cures=cures)


def _sentence(subject: str, have: Spread, need: Spread, left: Spread, answer: Answer) -> str:
    amounts = f"{write_weight(have.best)} at hand, {write_weight(need.best)} wanted"
    reach = f"(between {write_weight(need.low)} and {write_weight(need.high)})"
    end = {
        Answer.YES: f"{write_weight(left.best)} are left over.",
        Answer.NO: f"{write_weight(-left.best)} are missing.",
        Answer.TIGHT: f"it may come out {write_weight(max(0.0, -left.low))} short.",
    }[answer]
    return f"{subject}: {amounts} {reach}; {end}"


def _close(lot: Yarn, need: Spread, left: Spread) -> Finding:
    return Finding(
        "yarn-close",
        Certainty.NOTE,
        f"{title(lot.name)} is enough, but only {write_weight(left.best)} more than {write_weight(need.best)}.",
        "A tenth in hand is usual for ends, a mended slip and a mend in ten years (common practice, no source).",
        "Weigh the first piece when it is off the needles; the forecast learns from it.",
        where=Where(fact=f"stock.yarn.{lot.name}.grams"),
    )


def _not_known(subject: str, one: Knitted, lack: Missing) -> Part:
    said = f"Whether {subject} is enough is not known yet: {lack.what} is not known."
    finding = Finding(
        "yarn-unknown",
        Certainty.UNKNOWN,
        said,
        f"The forecast for the {one.plan.name} needs it.",
        lack.find_out,
        where=Where(fact=f"knitting.{one.plan.name}.swatch"),
    )
    return Part(subject, Answer.NOT_KNOWN_YET, said, (finding,))


def _cloth(one: Sewn) -> Part:
    subject = title(one.plan.cloth or f"Cloth for {one.plan.name}")
    if one.cloth is None:
        said = f"Whether there is enough cloth for the {one.plan.name} is not known yet: none was named."
        fact = Where(fact=f"sewing.{one.plan.name}.cloth")
        finding = Finding("cloth-unnamed", Certainty.UNKNOWN, said, "A lay needs a cloth.", "Name one.", where=fact)
        return Part(subject, Answer.NOT_KNOWN_YET, said, (finding,))
    if one.judgement is not None and one.judgement.proven:
        return Part(subject, Answer.YES, f"{subject}: every piece of the {one.plan.name} lies on it, and it is proven.")
    if one.problem is None:
        said = f"Whether {subject} is enough is not known yet: the {one.plan.name} has no pieces yet."
        return Part(subject, Answer.NOT_KNOWN_YET, said)
    if one.hopeless:
        return Part(subject, Answer.NO, f"{subject}: {one.hopeless[0].say}", one.hopeless)
    return _to_lay(subject, one)


def _to_lay(subject: str, one: Sewn) -> Part:
    stale = one.judgement is not None
    said = (
        f"The lay of the {one.plan.name} no longer holds, since a piece has changed."
        if stale
        else f"Whether {subject} is enough is not known yet: the {one.plan.name} has not been laid on it."
    )
    broken = one.judgement.findings if one.judgement else ()
    finding = Finding(
        "lay-stale" if stale else "lay-missing",
        Certainty.UNKNOWN,
        said,
        broken[0].say if broken else "Only a lay shows whether every piece comes out.",
        "Lay again.",
        where=Where(piece=one.plan.name, fact=f"sewing.{one.plan.name}.lay"),
    )
    return Part(subject, Answer.NOT_KNOWN_YET, said, (finding, *broken))
