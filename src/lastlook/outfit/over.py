"""One garment over the other: the hem of the knitting over the waistband, with the arms up, and the bulk beneath."""

from __future__ import annotations

from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit.answer import Answer, Part, within
from lastlook.outfit.derive import Derived
from lastlook.outfit.garment.knitted import Knitted
from lastlook.outfit.garment.knitted_shape import Heights, is_body, is_sleeve
from lastlook.outfit.names import title
from lastlook.outfit.outfit import Manner
from lastlook.quantity import Gauge, Missing, Spread, write_length
from lastlook.wearer import Measure, measure

ARMS_UP_MM = 50.0
"""How far a hem rides up when the arms are lifted (common practice, no source)."""
BULK_MM = 10.0
"""What a waistband with its lap and seams adds to the waist beneath a knit (common practice, no source)."""


def over_the_waistband(derived: Derived) -> tuple[Part, ...]:
    """Return whether each pullover covers the waistband of each skirt, arms up, and goes round it."""
    if not derived.sewn:
        return ()
    out: list[Part] = []
    for one in derived.knitted:
        if isinstance(one.gauge, Gauge) and one.size is not None:
            out += _covers(derived, one, one.gauge)
    return tuple(out)


def _covers(derived: Derived, one: Knitted, gauge: Gauge) -> list[Part]:
    shapes = [shape for piece in one.pieces if (shape := one.shape(piece)) is not None]
    back = next((shape for shape in shapes if is_body(shape.piece) and "back" in shape.piece.name.lower()), None)
    sleeve = next((shape for shape in shapes if is_sleeve(shape.piece)), None)
    to_waist = measure(derived.outfit.wearer, "back_waist_length")
    if back is None:
        return []
    length = gauge.length_mm(back.rows)
    subject = f"{title(one.plan.name)} over the waistband"
    if isinstance(length, Missing) or isinstance(to_waist, Missing):
        lack = length if isinstance(length, Missing) else to_waist
        assert isinstance(lack, Missing)
        return [_not_known(subject, lack)]
    top = gauge.width_mm(sleeve.top_sts / 2).best if sleeve else 0.0
    below = (length + top) - to_waist.mm
    return [_covering(subject, below, to_waist, derived.outfit.manner), *_goes_round(derived, shapes, gauge)]


def _goes_round(derived: Derived, shapes: list[Heights], gauge: Gauge) -> list[Part]:
    """Say whether the knitting goes round the waist with the band beneath it."""
    waist = measure(derived.outfit.wearer, "waist_girth")
    if isinstance(waist, Missing):
        return []
    stitches = sum(shape.hem_sts * shape.piece.make for shape in shapes if is_body(shape.piece))
    room = gauge.width_mm(stitches) - waist.mm
    answer, chance = within(room, BULK_MM, None)
    units = derived.outfit.manner.units
    shown, band = write_length(abs(room.best), units), write_length(BULK_MM, units)
    amount = f"{shown} {'to spare' if room.best >= 0 else 'too little'}"
    because = f"Over the waist the knitting has {amount}; the band takes {band}."
    if answer is Answer.YES:
        return [Part("Bulk of the waistband", answer, because)]
    certainty = Certainty.PROVEN if answer is Answer.NO else Certainty.DOUBTFUL
    why = "The band with its lap lies between you and the knitting."
    attempt = "Knit the next size, or make the band of one layer with a ribbon behind it."
    finding = Finding("band-bulky", certainty, because, why, attempt)
    return [Part("Bulk of the waistband", answer, because, (finding,), chance)]


def _covering(subject: str, below: Spread, to_waist: Measure, manner: Manner) -> Part:
    answer, chance = within(below, ARMS_UP_MM, None)
    shown = write_length(below.best, manner.units)
    give = write_length(below.plus_minus, manner.units)
    because = (
        f"{subject}: its hem lies {shown} below the waist, give or take {give}; "
        f"{write_length(ARMS_UP_MM, manner.units)} keep it covered with the arms up."
    )
    if answer is Answer.YES:
        return Part(subject, answer, because)
    finding = Finding(
        "hem-short",
        Certainty.PROVEN if answer is Answer.NO else Certainty.DOUBTFUL,
        because,
        f"The back waist length is {write_length(to_waist.mm.best, manner.units)} ({to_waist.how}).",
        "Work the body longer before the underarm.",
        where=Where(piece=subject, edge="hem"),
    )
    return Part(subject, answer, because, (finding,), chance)


def _not_known(subject: str, lack: Missing) -> Part:
    said = f"{subject}: whether the hem covers it is not known yet, since the {lack.what} is not known."
    finding = Finding("fit-unknown", Certainty.UNKNOWN, said, "The hem is measured from the nape.", lack.find_out)
    return Part(subject, Answer.NOT_KNOWN_YET, said, (finding,))
