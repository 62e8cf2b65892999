"""What a body measures at every level of a skirt, standing, sitting and in a step.

A measure that was taken is given as it is. Where none was, a figure is *assumed* from mean figures with a wide range,
so that room can be told at once and proven where there is plenty; it never proves that there is too little.

In a step the feet part by 0.41 of the height (from memory of walking tables), and the knees, halfway up the leg, by
half of that; a tape round both knees then runs twice that distance and once round a knee. Further down it grows on.
"""

from __future__ import annotations

from collections.abc import Mapping

from lastlook.quantity import Origin, Spread, give_or_take
from lastlook.wearer import Measure, by_tape

KNEE_DEPTH_MM = 598.0
KNEE_MM, STATURE_MM = 365.0, 1629.0
"""Means of 2,208 women measured in 1988, the wearer's own survey (knee depth: waist height less knee height; read)."""
STEP_SHARE = 0.41
STEP_DOUBT = 0.15
"""How far one person's step differs from another's (common practice, no source)."""
STEP_PER_MM = 1.45
"""What a step takes more for each mm below the knee: 0.41 of the height over a knee height of 0.28 (worked out)."""
HIGH_HIP_SHARES = (0.5, 0.7, 0.85)
"""Where between waist and hip a high hip lies, least, usual and most (common practice, no source)."""
GROWTH_MM = {"waist": (5.0, 15.0, 38.0), "hip": (13.0, 26.0, 40.0)}
"""What sitting on a chair adds, least, mean and most: means quoted in cutting texts, 1/2-1 1/2 in at the waist and
2-4 cm at the hip in others (from memory, medium to low confidence)."""
SURE = {
    "waist": "waist_girth",
    "high hip": "top_hip_girth",
    "hip": "hip_girth",
    "knee": "stride_girth",
    "waist when sitting": "waist_girth_sitting",
    "hip when sitting": "hip_girth_sitting",
}
"""The measure that a level is held against; for the knee it is the girth round both knees in a walking step."""


def body_at(level: str, measures: Mapping[str, float], depth_mm: float | None = None) -> Measure | None:
    """Return what the body measures at a level, taken or assumed; None where not even that can be said.

    `depth_mm` is how far below the waist a hem hangs.

    >>> body_at("hip when sitting", {"hip_girth": 970.0}).mm.best
    996.0
    """
    name = SURE.get(level, "stride_girth")
    if name in measures and level != "hem":
        return by_tape(name, measures[name])
    if level.endswith(" when sitting"):
        return _sitting(level.removesuffix(" when sitting"), measures)
    if level == "high hip":
        return _high_hip(measures)
    if level == "knee":
        return _step(measures)
    return _at_hem(measures, depth_mm) if level == "hem" and depth_mm is not None else None


def knee_depth_mm(measures: Mapping[str, float]) -> float:
    """Return how far the knee lies below the waist, from the survey where it was not measured."""
    return measures.get("waist_to_knee", KNEE_DEPTH_MM)


def _sitting(level: str, measures: Mapping[str, float]) -> Measure | None:
    standing = measures.get(f"{level}_girth")
    if standing is None:
        return None
    least, mean, most = GROWTH_MM[level]
    mm = Spread(standing + mean, standing + least, standing + most)
    return Measure(f"{level}_girth_sitting", mm, Origin.ASSUMED, "assumed from mean figures")


def _high_hip(measures: Mapping[str, float]) -> Measure | None:
    waist, hip = measures.get("waist_girth"), measures.get("hip_girth")
    if waist is None or hip is None:
        return None
    low, best, high = sorted(waist + share * (hip - waist) for share in HIGH_HIP_SHARES)
    return Measure("top_hip_girth", Spread(best, low, high), Origin.ASSUMED, "assumed between waist and hip")


def _step(measures: Mapping[str, float]) -> Measure:
    knee, stature = measures.get("knee_girth", KNEE_MM), measures.get("stature", STATURE_MM)
    parted = STEP_SHARE * stature
    return Measure(
        "stride_girth", give_or_take(knee + parted, parted * STEP_DOUBT), Origin.ASSUMED, "assumed from the height"
    )


def _at_hem(measures: Mapping[str, float], depth_mm: float) -> Measure | None:
    """Return what a step takes at the hem: between hip and knee on the line that joins them, below the knee more."""
    taken = measures.get("stride_girth")
    step = by_tape("stride_girth", taken) if taken is not None else _step(measures)
    knee, hip, hip_depth = knee_depth_mm(measures), measures.get("hip_girth"), measures.get("waist_to_hip", 200.0)
    if depth_mm >= knee:
        return Measure(step.name, step.mm + (depth_mm - knee) * STEP_PER_MM, step.origin, step.how)
    if hip is None or depth_mm <= hip_depth or knee <= hip_depth:
        return None if hip is None else by_tape("hip_girth", hip)
    share = (depth_mm - hip_depth) / (knee - hip_depth)
    return Measure(step.name, hip * (1 - share) + step.mm * share, step.origin, step.how)
