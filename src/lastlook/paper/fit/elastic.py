"""Elastic let into a waist: how long it is cut, whether it pulls over the hip, and what it gives.

*Give* is what the waist grows by when it is pulled: the least of what elastic, skirt top and closure each have.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Certainty, Finding, Where
from lastlook.quantity import Units, write_length

INCH = 25.4
NO_OPENING_MM = 10 * INCH
"""Hips at most 10 in more than the waist go through a stretch band (sewingbusiness.com, citing its book, read)."""
ELASTIC_STRETCH = {"braid": 1.8, "knit": 2.0, "woven": 1.5}
"""How far each pulls out, times its length (common practice, no source)."""
ELASTIC_FACTORS = {"soft": 0.90, "firm": 0.85, "narrow": 0.80}
"""Cut length over body (common practice, no source)."""
AGED = 0.95
"""What elastic keeps of its length as it ages; old elastic is replaced (common practice, no source)."""
JOIN_MM = 25.0


@dataclass(frozen=True)
class Elastic:
    """Elastic in a waist."""

    length_mm: float
    """Round the waist once joined, unstretched."""
    sort: str = "knit"
    """'braid', 'knit' or 'woven'."""

    @property
    def give_mm(self) -> float:
        """Return how much it pulls out."""
        return self.length_mm * (ELASTIC_STRETCH[self.sort] * AGED - 1)


def needs_no_opening(waist_mm: float, hip_mm: float) -> bool:
    """Whether a stretching band alone may do.

    >>> needs_no_opening(28 * 25.4, 38 * 25.4), needs_no_opening(28 * 25.4, 39 * 25.4)
    (True, False)
    """
    return hip_mm - waist_mm <= NO_OPENING_MM + 1e-6


def elastic_cut_mm(waist_mm: float, factor: float = 0.85, join_mm: float = JOIN_MM) -> float:
    """Return how long to cut elastic for a casing.

    >>> elastic_cut_mm(720)
    637.0
    """
    return waist_mm * factor + join_mm


def elastic_shorter_mm(waist_mm: float, shorter_mm: float = 2 * INCH) -> float:
    """Return the other rule for elastic: the waist less 1 to 3 in (sewing pages, read).

    >>> round(elastic_shorter_mm(30 * 25.4) / 25.4, 3)
    28.0
    """
    return waist_mm - shorter_mm


def elastic_pulls_over(hip_mm: float, relaxed_mm: float, sort: str) -> bool:
    """Whether elastic of a sort stretches over the hip."""
    return hip_mm / relaxed_mm <= ELASTIC_STRETCH[sort]


def give_mm(band_mm: float, top_mm: float, closure_mm: float) -> float:
    """Return the give of a waist: the least of what the band, the skirt top and the closure each have.

    >>> give_mm(40, 60, 25)
    25
    """
    return min(band_mm, top_mm, closure_mm)


def casing_mm(elastic_width_mm: float, seam_mm: float) -> float:
    """Return how wide a strip for a casing is cut: twice the elastic, two allowances and 9 mm for the turn."""
    return 2 * elastic_width_mm + 2 * seam_mm + 9.0


def stretch_share(relaxed_mm: float, stretched_mm: float) -> float:
    """Return how much a cloth stretches, as a share of its length.

    >>> stretch_share(100, 140)
    0.4
    """
    return (stretched_mm - relaxed_mm) / relaxed_mm


def elastic_findings(elastic: Elastic, top_mm: float, hip_mm: float, units: Units = Units.CM) -> tuple[Finding, ...]:
    """Return what keeps a waist on elastic alone from going over the hip; `top_mm` is the skirt top drawn flat."""
    top, hip, length, reach = (
        write_length(mm, units) for mm in (top_mm, hip_mm, elastic.length_mm, elastic.length_mm + elastic.give_mm)
    )
    out = []
    if top_mm < hip_mm:
        out.append(
            _out_of_reach(
                Certainty.PROVEN,
                f"The skirt top measures {top} and does not go over a hip of {hip}.",
                "Elastic gathers the top; it can't make it longer than it was cut.",
                f"Cut the top {write_length(hip_mm - top_mm, units)} wider in all, or leave an opening.",
            )
        )
    if not elastic_pulls_over(hip_mm, elastic.length_mm * AGED, elastic.sort):
        out.append(
            _out_of_reach(
                Certainty.DOUBTFUL,
                f"Elastic of {length} hardly goes over a hip of {hip}: it reaches {reach}.",
                f"{elastic.sort.capitalize()} elastic pulls out to {ELASTIC_STRETCH[elastic.sort]:g} times its length, "
                "and 5 % is lost as it ages (common practice, no source).",
                "Take a softer sort, leave it longer, or add an opening.",
            )
        )
    return tuple(out)


def _out_of_reach(certainty: Certainty, say: str, why: str, attempt: str) -> Finding:
    return Finding("opening-short", certainty, say, why, attempt, where=Where(edge="waist"))
