"""Ease held against what a body does: standing, and sitting, where girths grow.

Ease needed is the usual ease or, if more, what sitting adds and 1 cm. Cloth that stretches gives half of its stretch.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.body import body_at
from lastlook.paper.drafted import Drafted
from lastlook.quantity import Origin

USUAL_MM = {"waist": (12.7, 19.05), "hip": (50.8, 69.85)}
"""Usual ease: 1/2-3/4 in at the waist, 2-2 3/4 in at the hip (Central Washington University ch. 16, read)."""
SPARE_MM = 10.0
TAKEN_SHARE = 0.5


@dataclass(frozen=True)
class LevelFit:
    """One level held against the body."""

    level: str
    girth_mm: float
    body_mm: float
    seated_mm: float
    seated_measured: bool
    give_mm: float

    @property
    def ease_mm(self) -> float:
        """Return the ease standing."""
        return self.girth_mm - self.body_mm

    @property
    def seated_ease_mm(self) -> float:
        """Return what is left when sitting, with what the cloth or the elastic gives."""
        return self.girth_mm + self.give_mm - self.seated_mm


def ease_needed_mm(usual_mm: float, standing_mm: float, sitting_mm: float) -> float:
    """Return the ease that sitting asks for, at least the usual one.

    >>> ease_needed_mm(12.7, 710, 735)
    35.0
    """
    return max(usual_mm, sitting_mm - standing_mm + SPARE_MM)


def fit_of(drafted: Drafted, measures: Mapping[str, float], give_mm: Mapping[str, float]) -> tuple[LevelFit, ...]:
    """Return waist and hip held against the body; `give_mm` is what elastic adds at a level."""
    out = []
    stretch = drafted.options.get("stretch_share", 0.0) * TAKEN_SHARE
    for level in USUAL_MM:
        girth, body = drafted.girths_mm.get(level), measures.get(f"{level}_girth")
        seated = body_at(f"{level} when sitting", measures)
        if girth is None or body is None or seated is None:
            continue
        give = give_mm.get(level, 0.0) + (body * stretch if level == "hip" else 0.0)
        out.append(LevelFit(level, girth, body, seated.mm.best, seated.origin is Origin.MEASURED, give))
    return tuple(out)


def seated_findings(fits: tuple[LevelFit, ...]) -> tuple[Finding, ...]:
    """Return where sitting takes more than there is."""
    return tuple(_tight(fit) for fit in fits if fit.seated_ease_mm < 0)


def _tight(fit: LevelFit) -> Finding:
    how = "was measured" if fit.seated_measured else "is assumed from mean figures"
    return Finding(
        "tight-when-sitting",
        Certainty.PROVEN if fit.seated_measured else Certainty.DOUBTFUL,
        f"Sitting down, the {fit.level} is {-fit.seated_ease_mm / 10:.1f} cm too tight.",
        f"The skirt measures {fit.girth_mm / 10:.1f} cm there; the body standing {fit.body_mm / 10:.1f} cm and sitting "
        f"{fit.seated_mm / 10:.1f} cm, which {how}.",
        f"Give the {fit.level} {max(1.0, -fit.seated_ease_mm / 10 + 1):.1f} cm more, or measure sitting on a chair."
        if not fit.seated_measured
        else f"Give the {fit.level} {-fit.seated_ease_mm / 10 + 1:.1f} cm more, or let elastic into the band.",
        where=Where(edge=fit.level),
    )
