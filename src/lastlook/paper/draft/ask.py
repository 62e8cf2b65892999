"""What a draft is asked for: the body, the wanted ease, lengths and allowances, read once for all drafts.

Measures are named as ISO 8559-1 names them; every option has a default with where it came from.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.body import knee_depth_mm
from lastlook.paper.draft.ranges import ANY, RANGES, odd
from lastlook.paper.paper_piece import Level

DEFAULTS: Mapping[str, float] = {
    "ease_waist_mm": 19.05,  # 1/2-3/4 in, Central Washington University costume text ch. 16 (read)
    "ease_hip_mm": 50.8,  # 2-2 3/4 in, the same
    "side_rise_mm": 10.0,  # WikiEducator, Handout for drafting skirt block (read)
    "back_dip_mm": 10.0,  # 1-1 1/2 in old books, 1-1.5 cm; common practice, no source
    "seam_allowance_mm": 15.0,  # metric home pattern; common practice, no source
    "hem_allowance_mm": 50.8,  # 2-3 in on moderate flare, T. Johnson (read)
    "band_width_mm": 30.0,  # 1-1 1/2 in straight; common practice, no source
    "lap_mm": 25.0,  # 3/4-1 in; common practice, no source
    "dart_mm": 20.0,  # WikiEducator, Handout for drafting skirt block (read)
    "front_dart_length_mm": 100.0,  # the same
    "back_dart_length_mm": 120.0,  # the same
}
ASSUMED_HIP_DEPTH_MM = 200.0
"""Between 7 and 9 in of modern tables; common practice, no source. Measuring outranks it."""
FITTED = ("waist_girth", "hip_girth")
"""What a skirt that is fitted to the hip can't be drafted without."""
PRINTED_HIP_DEPTH_MM = 177.8
"""7 in below the waist (Butterick, The New Dressmaker, 1921, p. 26, read)."""
TAKEN_SHARE = 0.5
"""Negative ease up to half of what the cloth stretches (from memory / common practice)."""


@dataclass(frozen=True)
class Ask:
    """One draft's input, complete."""

    kind: str
    waist_mm: float
    hip_mm: float
    hip_depth_mm: float
    length_mm: float
    options: Mapping[str, float]
    measures: Mapping[str, float]
    findings: tuple[Finding, ...] = field(default=())

    def option(self, name: str) -> float:
        """Return an option as given, or its default."""
        return self.options.get(name, DEFAULTS.get(name, 0.0))

    @property
    def top_mm(self) -> float:
        """Return the finished skirt top: waist and ease."""
        return self.waist_mm + self.option("ease_waist_mm")

    @property
    def depths_mm(self) -> dict[str, float]:
        """Return how far each level lies below the waist, a level that was not measured at its usual place."""
        high = self.measures.get("waist_to_top_hip", self.hip_depth_mm / 2)
        return {"high hip": high, "hip": self.hip_depth_mm, "knee": knee_depth_mm(self.measures)}

    @property
    def levels(self) -> tuple[Level, ...]:
        """Return the levels that the skirt reaches, as depths below the waist."""
        return tuple(Level(name, -depth) for name, depth in self.depths_mm.items() if depth < self.length_mm)

    @property
    def around_hip_mm(self) -> float:
        """Return the finished hip: hip and ease."""
        return self.hip_mm + self.option("ease_hip_mm")


def read_ask(
    kind: str, measures: Mapping[str, float], options: Mapping[str, float], needs: tuple[str, ...] = FITTED
) -> Ask | tuple[Finding, ...]:
    """Return the complete input of a draft, or what stands in its way."""
    lacking = [_missing(name.replace("_", " "), name) for name in needs if name not in measures]
    length = options.get("length_mm", measures.get("waist_to_hem"))
    if length is None:
        lacking.append(_missing("length from waist to hem", "length"))
    used = (*FITTED, "waist_to_hip", "waist_to_hem", "waist_to_knee")
    odd_ones = [odd(name, measures[name]) for name in used if name in measures]
    odd_ones += [odd("length_mm", length)] if length is not None else []
    odd_ones += [odd(name, value, *RANGES.get(name, ANY)) for name, value in options.items()]
    lacking += [finding for finding in odd_ones if finding]
    if lacking or length is None:
        return tuple(lacking)
    waist = measures["waist_girth"]
    hip = measures.get("hip_girth", waist)
    depth = measures.get("waist_to_hip", ASSUMED_HIP_DEPTH_MM)
    ask = Ask(kind, waist, hip, depth, length, options, measures)
    wants_hip = "hip_girth" in needs
    beyond = _beyond_stretch(ask)
    if beyond:
        return beyond
    notes = _depth_notes(ask) if wants_hip else ()
    return Ask(kind, waist, hip, depth, length, options, measures, notes)


def _missing(what: str, fact: str) -> Finding:
    return Finding(
        "measure-missing",
        Certainty.UNKNOWN,
        f"The skirt can't be drafted yet: the {what} is not known.",
        "Every width of the draft is worked out from it.",
        f"Measure the {what}, snug and level, and write it down.",
        where=Where(fact=fact),
    )


def _depth_notes(ask: Ask) -> tuple[Finding, ...]:
    if "waist_to_hip" in ask.measures:
        return ()
    return (
        Finding(
            "hip-depth-assumed",
            Certainty.UNKNOWN,
            f"Whether the hip fits is not known yet: its depth below the waist was taken as "
            f"{ASSUMED_HIP_DEPTH_MM / 10:.0f} cm.",
            f"Old patterns put it {PRINTED_HIP_DEPTH_MM / 10:.0f} cm down (The New Dressmaker, 1921), modern tables up "
            "to 23 cm; the widest place of this body decides.",
            "Measure from the waist down the side to the fullest place of the hip.",
            where=Where(fact="waist_to_hip"),
        ),
    )


def _beyond_stretch(ask: Ask) -> tuple[Finding, ...]:
    out = []
    give = TAKEN_SHARE * ask.option("stretch_share")
    levels = [("waist", ask.waist_mm, "ease_waist_mm")]
    levels += [("hip", ask.hip_mm, "ease_hip_mm")] if "hip_girth" in ask.measures else []
    for level, body, name in levels:
        ease = ask.option(name)
        if ease < -body * give - 1e-9:
            out.append(_too_tight(level, ease, body * give, name))
    return tuple(out)


def _too_tight(level: str, ease: float, least: float, fact: str) -> Finding:
    stretch = f"gives {least / 10:.1f} cm there at most" if least else "is not known to stretch"
    enough = f"Go {least / 10:.1f} cm below the body at most" if least else "Give it some ease"
    return Finding(
        "ease-beyond-stretch",
        Certainty.PROVEN,
        f"The {level} would be {-ease / 10:.1f} cm smaller than the body, and the cloth {stretch}.",
        "A garment may be smaller than the body by half of what its cloth stretches; common practice, no source.",
        f"{enough}, or measure the cloth's stretch over 10 cm.",
        where=Where(fact=fact),
    )
