"""The gored skirt: four, six or eight equal gores, each drawn whole with the grain down its middle.

A gore has a share of waist, hip and hem (The Perfect Dressmaking System, 1914, p. 13; Conover, 1922, p. 17, read).
There are no darts: the seams take the suppression.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.alter.fold import Unfold
from lastlook.paper.draft.ask import Ask, read_ask
from lastlook.paper.draft.block import Quarter, quarter
from lastlook.paper.draft.fitted import band_for, no_shape
from lastlook.paper.draft.parts.waistband import waistband
from lastlook.paper.drafted import Drafted
from lastlook.paper.seams import Counted, Fullness, Join
from lastlook.piece import EdgeName

COUNTS = (4, 6, 8)
FLARE_EDGE_MM = 50.0
"""Each seam edge flares by this at the hem unless a hem is wanted (common practice, no source)."""
RISE_PER_SUPPRESSION = 0.06
"""The waist rises towards the seams by about this share of what each edge takes in; squaring does the rest."""


def gored(measures: Mapping[str, float], options: Mapping[str, float]) -> Drafted:
    """Return a skirt of equal gores."""
    ask = read_ask("gored", measures, options)
    if isinstance(ask, tuple):
        return Drafted("gored", (), measures=measures, options=options, findings=ask)
    said = ask.options.get("gores", 6.0)
    count = round(said)
    if said not in COUNTS:
        found = (_no_such_count(said),)
        return Drafted("gored", (), measures=measures, options=options, findings=found)
    hem = ask.options.get("hem_mm", ask.around_hip_mm + 2 * count * FLARE_EDGE_MM)
    half = quarter(_half_gore(ask, count, hem))
    whole = Unfold("Gore").apply(half) if half else None
    if whole is None or isinstance(whole, Finding):
        found = (no_shape(ask, hem),)
        return Drafted("gored", (), measures=measures, options=options, findings=found)
    top = ask.hip_depth_mm + 20
    gore = replace(whole, quantity=count, grain=((0.0, -top), (0.0, -ask.length_mm * 0.8)))
    band = waistband(band_for(ask, (gore,)))
    joins = (
        Join((EdgeName("Gore", "left side"),), (EdgeName("Gore", "right side"),)),
        Join((EdgeName("Gore", "waist"),), (EdgeName(band.name, "waist"),), Counted.WHOLE, Fullness.EASED),
    )
    return Drafted("gored", (gore, band), joins, ask.measures, ask.options, findings=ask.findings)


def _half_gore(ask: Ask, count: int, hem_mm: float) -> Quarter:
    halves = 2 * count
    waist, hip = (ask.top_mm + ask.option("ease_in_mm")) / halves, ask.around_hip_mm / halves
    return Quarter(
        "Gore",
        waist,
        hip,
        hem_mm / halves,
        ask.hip_depth_mm,
        ask.length_mm,
        side_rise_mm=max(0.0, hip - waist) * RISE_PER_SUPPRESSION,
        seam_mm=ask.option("seam_allowance_mm"),
        side_seam_mm=ask.options.get("side_allowance_mm", ask.option("seam_allowance_mm")),
        hem_allowance_mm=ask.option("hem_allowance_mm"),
        levels=ask.levels,
    )


def gore_shares(total_mm: float, count: int, front_mm: float | None = None) -> float:
    """Return what each gore has of a girth; with a wider front gore, what each of the others has.

    >>> gore_shares(635, 5), gore_shares(2057.4, 5, 254)
    (127.0, 450.85)
    """
    if front_mm is None:
        return total_mm / count
    return round((total_mm - front_mm) / (count - 1), 6)


def _no_such_count(count: float) -> Finding:
    return Finding(
        "draft-without-shape",
        Certainty.PROVEN,
        f"No skirt is drafted with {count:g} gores.",
        "The drafts have 4, 6 or 8, so that a gore or a seam lies at both centres and at both sides.",
        "Choose 4, 6 or 8.",
        where=Where(fact="gores"),
    )
