"""Which printed size comes closest to the wearer, and what is left to alter."""

from __future__ import annotations

from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit.answer import Answer, Part
from lastlook.outfit.garment.printed_length import assumed_length_mm
from lastlook.outfit.names import title
from lastlook.outfit.outfit import Outfit, Sewing
from lastlook.paper import fit
from lastlook.quantity import Missing, Units, write_length
from lastlook.wearer import NAMES, measure

LITTLE_MM = 5.0
"""Less than a tape's own doubt is left as it is."""


def printed_size(outfit: Outfit, plan: Sewing) -> Part | None:
    """Return the printed size nearest to the wearer, by the hip; None where no sizes were written down."""
    if plan.printed is None or not plan.printed.sizes:
        return None
    waist, hip, length = (measure(outfit.wearer, name) for name in ("waist_girth", "hip_girth", "waist_to_hem"))
    subject = f"{title(plan.name)} as printed"
    if isinstance(waist, Missing) or isinstance(hip, Missing):
        lack = waist if isinstance(waist, Missing) else hip
        assert isinstance(lack, Missing)
        said = f"Which printed size of the {plan.name} comes closest is not known yet: no {lack.what} was given."
        finding = Finding("fit-unknown", Certainty.UNKNOWN, said, "A skirt is chosen by the hip.", lack.find_out)
        return Part(subject, Answer.NOT_KNOWN_YET, said, (finding,))
    hem = None if isinstance(length, Missing) else length.mm.best
    choice = fit.closest(plan.printed.sizes, waist.mm.best, hip.mm.best, hem)
    assert choice is not None
    finding = _closest(plan, choice, outfit.manner.units)
    return Part(subject, Answer.YES, finding.say, (finding,))


def _closest(plan: Sewing, choice: fit.Choice, units: Units) -> Finding:
    left = [
        _left(choice.waist_mm, "at the waist", units),
        _left(choice.hip_mm, "at the hip", units),
        _longer(choice.length_mm, units),
    ]
    rest = ", ".join(part for part in left if part) or "nothing is left to alter"
    size = choice.size
    return Finding(
        "printed-size",
        Certainty.NOTE,
        f"Of the printed sizes of the {plan.name}, {size.name} comes closest: {rest}.",
        f"It is drawn for a waist of {write_length(size.waist_mm, units)} and a hip of "
        f"{write_length(size.hip_mm, units)}; a skirt is chosen by the hip and altered at the waist "
        "(Butterick manual, about 1911-16).",
        "Make the changes on the paper before anything is cut.",
        where=Where(piece=plan.name, fact=f"sewing.{plan.name}.printed"),
    )


def carried_over(outfit: Outfit, plan: Sewing) -> Part | None:
    """Return that the skirt's length is only the printed one, made longer or shorter by the wearer's height."""
    if not isinstance(measure(outfit.wearer, "waist_to_hem"), Missing) or "length_mm" in dict(plan.options):
        return None
    mm = assumed_length_mm(outfit, plan)
    if mm is None or plan.printed is None:
        return None
    units = outfit.manner.units
    say = f"Whether the length of the {plan.name} is right is not known yet: it was taken as {write_length(mm, units)}."
    finding = Finding(
        "length-carried-over",
        Certainty.UNKNOWN,
        say,
        f"The length printed for the height class {plan.printed.height} was carried over to your height; at one height "
        "waists lie higher and lower.",
        NAMES["waist_to_hem"].take,
        where=Where(piece=plan.name, fact="wearer.measures.waist_to_hem"),
    )
    return Part(f"{title(plan.name)} length", Answer.NOT_KNOWN_YET, say, (finding,))


def _left(mm: float, where: str, units: Units) -> str:
    if abs(mm) < LITTLE_MM:
        return ""
    return f"{'let out' if mm > 0 else 'take in'} {write_length(abs(mm), units)} {where}"


def _longer(mm: float | None, units: Units) -> str:
    if mm is None or abs(mm) < LITTLE_MM:
        return ""
    return f"make it {write_length(abs(mm), units)} {'longer' if mm > 0 else 'shorter'}"
