"""Getting into the skirt: the zip, the placket, the lap, or elastic.

The opened waist has to pass over the widest place: waist + twice the zip >= hip + 2 cm, which is necessary and not
sufficient (worked out). *Give* is what the waist grows by when it is pulled.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Certainty, Finding, Where

INCH = 25.4
ZIPS_MM = tuple(round(inches * INCH, 1) for inches in (4, 7, 9, 12, 14, 16, 18, 20, 22, 24))
"""Lengths that are sold (US home-sewing lengths, from memory)."""
BELOW_MM = 30.0
"""The opening ends about 3 cm above the hip line (1-1 1/2 in, common practice, no source)."""
PASS_MM = 20.0
NO_OPENING_MM = 10 * INCH
"""Hips at most 10 in more than the waist go through a stretch band (sewingbusiness.com, citing its book, read)."""
ELASTIC_STRETCH = {"braid": 1.8, "knit": 2.0, "woven": 1.5}
"""How far each pulls out, times its length (common practice, no source)."""
ELASTIC_FACTORS = {"soft": 0.90, "firm": 0.85, "narrow": 0.80}
"""Cut length over body (common practice, no source)."""
LEAST_MM = {"lapped": 15.0, "centred": 15.0, "hand-picked": 15.0}
JOIN_MM = 25.0


@dataclass(frozen=True)
class Opening:
    """How the skirt opens."""

    kind: str
    """'lapped', 'centred' or 'hand-picked' zip, 'placket', or 'elastic'."""
    length_mm: float = 0.0
    at: str = "left side"


def opening_needed_mm(hip_depth_mm: float, waist_mm: float, hip_mm: float) -> float:
    """Return how long an opening has to be: nearly to the hip line, and long enough to pass over the hip.

    A finished waist that is itself larger than the hip and 2 cm needs none.

    >>> opening_needed_mm(200, 729, 970), opening_needed_mm(200, 1019, 970)
    (170.0, 0.0)
    """
    if waist_mm >= hip_mm + PASS_MM:
        return 0.0
    return max(hip_depth_mm - BELOW_MM, (hip_mm + PASS_MM - waist_mm) / 2)


def zip_for_mm(needed_mm: float) -> float | None:
    """Return the shortest zip that is sold and long enough, None where none is.

    >>> zip_for_mm(165)
    177.8
    """
    return next((zip_mm for zip_mm in ZIPS_MM if zip_mm >= needed_mm - 1e-6), None)


def passes(waist_mm: float, opening_mm: float, hip_mm: float) -> bool:
    """Whether the opened waist goes over the hip at all."""
    return waist_mm + 2 * opening_mm >= hip_mm + PASS_MM


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


def lap_rule(at: str) -> str:
    """Return which side lies on top."""
    return "Front over back, closing towards the back." if "side" in at else "Right over left on women's skirts."


def opening_findings(
    opening: Opening, waist_mm: float, hip_mm: float, hip_depth_mm: float, allowance_mm: float
) -> tuple[Finding, ...]:
    """Return what is wrong with an opening."""
    out: list[Finding] = []
    needed = opening_needed_mm(hip_depth_mm, waist_mm, hip_mm)
    if opening.kind == "elastic":
        return out_of_reach(waist_mm, hip_mm)
    if not passes(waist_mm, opening.length_mm, hip_mm):
        out.append(_short(opening, needed, waist_mm, hip_mm))
    least = LEAST_MM.get(opening.kind, 0.0)
    if allowance_mm < least - 1e-6:
        out.append(_narrow(opening, allowance_mm, least))
    return tuple(out)


def opening_note(waist_mm: float, hip_mm: float, hip_depth_mm: float) -> Finding:
    """Return how long an opening a skirt with that finished waist wants over that hip, and which zip that is."""
    needed = opening_needed_mm(hip_depth_mm, waist_mm, hip_mm)
    if not needed:
        return Finding(
            "opening-wanted",
            Certainty.NOTE,
            "The skirt goes over the hip without an opening.",
            f"Its waist measures {waist_mm / 10:.1f} cm, the hip {hip_mm / 10:.1f} cm.",
            "Open it all the same if it is to be stepped into, or draw it over the head.",
            where=Where(edge="waist"),
        )
    sold = zip_for_mm(needed)
    both = f"half of it at each side, {needed / 20:.0f} cm"
    zip_words = f"a zip of {sold / 10:.0f} cm ({sold / INCH:.0f} in)" if sold else both
    return Finding(
        "opening-wanted",
        Certainty.NOTE,
        f"The skirt wants an opening of {needed / 10:.0f} cm: {zip_words}.",
        _why_so_long(needed, waist_mm, hip_mm, hip_depth_mm),
        lap_rule("left side"),
        where=Where(edge="side"),
    )


def _why_so_long(needed: float, waist_mm: float, hip_mm: float, hip_depth_mm: float) -> str:
    opened = f"opened, the waist measures {(waist_mm + 2 * needed) / 10:.1f} cm and the hip {hip_mm / 10:.1f} cm."
    above = hip_depth_mm - needed
    where = f"{above / 10:.0f} cm above" if above > 0.5 else f"{-above / 10:.0f} cm below" if above < -0.5 else "at"
    return f"It ends {where} the hip line; {opened}"


def out_of_reach(waist_mm: float, hip_mm: float) -> tuple[Finding, ...]:
    """Return that elastic alone does not bring the waist over the hip, where it doesn't."""
    if needs_no_opening(waist_mm, hip_mm):
        return ()
    return (
        Finding(
            "opening-short",
            Certainty.DOUBTFUL,
            f"A waist of {waist_mm / 10:.1f} cm on elastic alone hardly goes over a hip of {hip_mm / 10:.1f} cm.",
            "Up to 10 in of difference goes through a band that stretches (sewingbusiness.com, read).",
            "Leave the waist wider and gather it, or add an opening.",
            where=Where(edge="waist"),
        ),
    )


def _short(opening: Opening, needed: float, waist: float, hip: float) -> Finding:
    sold = zip_for_mm(needed)
    attempt = f"Take a zip of {sold / 10:.0f} cm ({sold / INCH:.0f} in)." if sold else "Open the skirt at both sides."
    return Finding(
        "opening-short",
        Certainty.PROVEN,
        f"The skirt does not go over the hip: an opening of {opening.length_mm / 10:.0f} cm is too short.",
        f"Opened, the waist measures {(waist + 2 * opening.length_mm) / 10:.1f} cm; the hip and 2 cm are "
        f"{(hip + PASS_MM) / 10:.1f} cm.",
        attempt,
        where=Where(edge=opening.at),
    )


def _narrow(opening: Opening, allowance: float, least: float) -> Finding:
    return Finding(
        "allowance-narrow",
        Certainty.DOUBTFUL,
        f"The allowance at the opening is {allowance:.0f} mm; a {opening.kind} zip wants {least:.0f} mm.",
        "The tape has to be caught and covered (common practice, no source).",
        f"Cut {least - allowance:.0f} mm more there, or bind the edge.",
        where=Where(edge=opening.at),
    )
