"""A raglan from measures: the shape that is wanted, in millimetres, before any stitch is counted."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.body import Body
from lastlook.knit.compose.ease import CUFF_EASE_MM, sleeve_ease_mm

HEM_BELOW_WAIST_MM = 100.0
"""Where a short jumper of the period ends: common practice, no source."""
ARMHOLE_EASE_MM = 35.0
"""A raglan armhole hangs this far below the armpit's own depth: common practice, no source."""
SLEEVE_TOP_MM = 35.0
"""What a sleeve keeps at the neck, about a tenth of the neck edge: common practice, no source."""
UNDERARM_SHARE = 0.025
"""Bound off at each underarm, of the whole girth: common practice, no source."""
NECK_DROP_MM = 50.0
"""Front neck below the top of the raglan, 4-6 cm: common practice, no source."""
NECK_LESS_MM = 15.0
"""Back neck is half the neck less 1-2 cm: common practice, no source."""
RIB_MM = {"body": 60.0, "cuff": 60.0}
CUFF_FREE_MM = 40.0
"""Worked even at the top of a sleeve before the underarm: common practice, no source."""
SLEEVE_SHARE = {"long": 1.0, "three-quarter": 0.66, "short": 0.28}


@dataclass(frozen=True)
class RaglanShape:
    """A raglan garment laid flat and sewn up, in mm."""

    bust: float
    """Finished girth, sewn up and buttoned."""
    hem: float
    side: float
    """Hem to underarm."""
    rib: float
    depth: float
    """Height of the raglan line, underarm to neck edge."""
    upper_sleeve: float
    cuff: float
    sleeve_seam: float
    cuff_rib: float
    back_neck: float
    sleeve_top: float
    underarm: float
    neck_drop: float
    band: float
    """Width of the front band; 0 for a pullover."""


def raglan_shape(body: Body, asked: Asked) -> RaglanShape | None:
    """Return the shape wanted; None, with findings in `body`, where a girth is missing."""
    bust = body.measured("bust_girth")
    arm = body.girth("upper_arm_girth")
    wrist = _cuff_girth(body, asked)
    neck = body.stand_in("neck_base_girth")
    if bust is None or arm is None or wrist is None:
        return None
    finished = bust + asked.ease.aim_mm
    sleeve_top = SLEEVE_TOP_MM
    armhole = asked.lengths_mm.get("armhole")
    depth = (armhole if armhole else _armhole(body, arm)) - sleeve_top / 2
    side = asked.lengths_mm.get("body") or side_length(body, asked, depth + sleeve_top / 2)
    upper = arm + sleeve_ease_mm(asked.ease.aim_mm)
    seam = asked.lengths_mm.get("sleeve") or _sleeve_seam(body, asked)
    rib = min(RIB_MM["body"], side / 3)
    cuff_rib = min(RIB_MM["cuff"] if asked.sleeve == "long" else 25.0, seam / 2)
    return RaglanShape(
        finished,
        hem_girth(body, asked, finished),
        side,
        rib,
        depth,
        upper,
        min(wrist, upper - 10.0),
        seam,
        cuff_rib,
        neck / 2 - NECK_LESS_MM - sleeve_top,
        sleeve_top,
        finished * UNDERARM_SHARE,
        depth if asked.neck == "v" else NECK_DROP_MM,
        asked.band_mm if asked.opening == "cardigan" else 0.0,
    )


def _armhole(body: Body, arm: float) -> float:
    """Return nape to underarm: the body's own depth and its ease, or from the upper arm by a published rule."""
    scye = body.maybe("scye_depth")
    if scye is not None:
        return scye + ARMHOLE_EASE_MM
    return (arm + 50.0 + 55.0) / 2 + SLEEVE_TOP_MM / 2


def side_length(body: Body, asked: Asked, armhole: float) -> float:
    """Return hem to underarm, in mm."""
    below = asked.lengths_mm.get("below waist", HEM_BELOW_WAIST_MM)
    return max(80.0, body.stand_in("back_waist_length") + below - armhole)


def hem_girth(body: Body, asked: Asked, finished: float) -> float:
    """Return the girth at the hem: the body's there and the same ease; as at the bust where that is not known."""
    drop = body.maybe("waist_to_hip")
    if drop is None:
        return finished
    waist, hip = body.maybe("waist_girth"), body.maybe("hip_girth")
    if waist is None or hip is None:
        return finished
    share = min(1.0, asked.lengths_mm.get("below waist", HEM_BELOW_WAIST_MM) / drop)
    there = waist + (hip - waist) * share + asked.ease.aim_mm
    return min(max(there, finished * 0.85), finished * 1.25)


def _cuff_girth(body: Body, asked: Asked) -> float | None:
    if asked.sleeve == "long":
        wrist = body.girth("wrist_girth")
        return None if wrist is None else wrist + CUFF_EASE_MM
    place = "elbow_girth" if asked.sleeve == "three-quarter" else "upper_arm_girth"
    girth = body.girth(place)
    return None if girth is None else girth + CUFF_EASE_MM


def _sleeve_seam(body: Body, asked: Asked) -> float:
    """Return cuff to underarm: armpit to wrist less what the armhole hangs lower."""
    inside = body.stand_in("underarm_length") - ARMHOLE_EASE_MM / 2
    return max(60.0, inside * SLEEVE_SHARE[asked.sleeve])
