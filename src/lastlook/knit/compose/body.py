"""What a garment must know of the body: taken, estimated where the survey allows, or a length assumed and said so.

Girths of body and arm are never assumed. A length, or the neck, that the survey predicts badly is taken as its
average woman's for the time being, with a finding that asks for it: it is changed by a few rows, a girth by the
whole garment.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from lastlook import wearer
from lastlook.finding import Certainty, Finding, Where
from lastlook.quantity import Missing, Origin, Units, write_length

AVERAGE_MM = {
    "neck_base_girth": (346.0, 48.0),
    "back_width": (352.0, 52.0),
    "centre_back_to_wrist": (807.0, 71.0),
    "back_waist_length": (367.0, 49.0),
    "scye_depth": (186.0, 28.0),
    "underarm_length": (443.0, 58.0),
}
"""Mean and 95 % reach of 2,208 women (US Army survey of 1988, `wearer/tables`)."""


@dataclass
class Body:
    """A wearer being asked; what was estimated, assumed or is missing gathers as it goes."""

    who: wearer.Wearer
    estimated: list[wearer.Measure] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)

    def measured(self, name: str) -> float | None:
        """Return a measure that must have been taken, in mm; None, with a finding, where it was not."""
        taken = self.who.taken(name)
        if taken is None:
            self.findings.append(_missing(name, Missing(wearer.NAMES[name].words, wearer.NAMES[name].take)))
            return None
        return taken.mm.best

    def girth(self, name: str) -> float | None:
        """Return a girth in mm; None, with a finding, where it is neither taken nor well predicted."""
        found = wearer.measure(self.who, name)
        if isinstance(found, Missing):
            self.findings.append(_missing(name, found))
            return None
        return self._noted(found)

    def maybe(self, name: str) -> float | None:
        """Return a measure in mm if it is taken or well predicted, silently None if not."""
        found = wearer.measure(self.who, name)
        return None if isinstance(found, Missing) else self._noted(found)

    def stand_in(self, name: str) -> float:
        """Return a measure in mm, the survey's average where nothing better is known, and say so."""
        found = wearer.measure(self.who, name)
        if not isinstance(found, Missing):
            return self._noted(found)
        best, reach = AVERAGE_MM[name]
        self.findings.append(_assumed(name, best, reach, found))
        return best

    def taken_mm(self, name: str) -> float | None:
        """Return a measure that was taken, in mm; None where it was not."""
        taken = self.who.taken(name)
        return taken.mm.best if taken else None

    def bust_above_mm(self, hem_to_neck_mm: float) -> float | None:
        """Return how far above the hem the fullest bust lies on a garment so long; None where it is not known."""
        down = self.maybe("neck_to_bust_point")
        return None if down is None or down >= hem_to_neck_mm else hem_to_neck_mm - down

    def all_findings(self) -> tuple[Finding, ...]:
        """Return what there is to say, the estimates as one note."""
        note = (_estimates(self.estimated),) if self.estimated else ()
        return (*self.findings, *note)

    def _noted(self, found: wearer.Measure) -> float:
        if found.origin is Origin.ESTIMATED and all(one.name != found.name for one in self.estimated):
            self.estimated.append(found)
        return found.mm.best


def _missing(name: str, found: Missing) -> Finding:
    return Finding(
        "measure-missing",
        Certainty.UNKNOWN,
        f"The {found.what} is not known, and the garment hangs on it.",
        "A girth that is guessed is a garment that may not go on.",
        found.find_out,
        where=Where(fact=f"wearer.measures.{name}"),
    )


def _assumed(name: str, best: float, reach: float, found: Missing) -> Finding:
    words = wearer.NAMES[name].words
    return Finding(
        "length-assumed",
        Certainty.UNKNOWN,
        f"The {words} is not known; {write_length(best, Units.CM)} stands in for it.",
        f"It is the average of 2,208 women measured in 1988; one in twenty is more than"
        f" {write_length(reach, Units.CM)} off, and what is known of this wearer does not narrow it.",
        found.find_out,
        asks=True,
        where=Where(fact=f"wearer.measures.{name}"),
    )


def _estimates(found: list[wearer.Measure]) -> Finding:
    told = "; ".join(
        f"{wearer.NAMES[one.name].words} {write_length(one.mm.best, Units.CM)}"
        f" ± {write_length(one.mm.plus_minus, Units.CM)}"
        for one in found
    )
    return Finding(
        "measure-estimated",
        Certainty.NOTE,
        f"Estimated, not measured: {told}.",
        f"They were {found[0].how.split(' (fit')[0]}.",
        "Measure what matters to you; the estimate then gives way.",
    )
