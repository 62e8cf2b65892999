"""A garment with shoulders from measures, in millimetres: set-in, or dropped where the armhole is left
straight."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.body import Body
from lastlook.knit.compose.ease import CUFF_EASE_MM, sleeve_ease_mm
from lastlook.knit.compose.raglan.shape import RIB_MM, SLEEVE_SHARE, hem_girth, side_length

SET_IN_EASE_MM = 20.0
"""Armhole below the armpit, 1.5-2.5 cm: common practice, no source."""
DROPPED_EASE_MM = 45.0
ACROSS_EASE_MM = 15.0
"""Across the back over the body's own width: common practice, no source."""
NECK_DROP_MM = 70.0
"""Round neck, 6-8 cm below the shoulder: common practice, no source."""
NECK_LESS_MM = 10.0
SHOULDER_RISE_MM = 25.0
"""A shoulder rises 2-3 cm: common practice, no source."""
CAP_TOP_MM = 76.0
"""3 in bound off at the top of a cap (slippedstitches blog, 2014)."""


@dataclass(frozen=True)
class ShoulderShape:
    """A shouldered garment laid flat and sewn up, in mm."""

    bust: float
    hem: float
    side: float
    rib: float
    armhole: float
    across: float
    """Across the back between the armholes; the whole width where the shoulder is dropped."""
    back_neck: float
    neck_drop: float
    upper_sleeve: float
    cuff: float
    sleeve_seam: float
    cuff_rib: float
    band: float
    dropped: bool


def shoulder_shape(body: Body, asked: Asked, construction: str) -> ShoulderShape | None:
    """Return the shape wanted; None, with findings in `body`, where a girth is missing."""
    bust, arm = body.measured("bust_girth"), body.girth("upper_arm_girth")
    wrist = body.girth("wrist_girth") if asked.sleeve == "long" else arm
    neck = body.stand_in("neck_base_girth")
    if bust is None or arm is None or wrist is None:
        return None
    dropped = construction == "dropped"
    finished = bust + asked.ease.aim_mm
    scye = body.stand_in("scye_depth")
    armhole = asked.lengths_mm.get("armhole") or scye + (DROPPED_EASE_MM if dropped else SET_IN_EASE_MM)
    across = finished / 2 if dropped else min(finished / 2, body.stand_in("back_width") + ACROSS_EASE_MM)
    upper = 2 * armhole if dropped else arm + sleeve_ease_mm(asked.ease.aim_mm)
    seam = 0.0 if asked.sleeve == "none" else asked.lengths_mm.get("sleeve") or _seam(body, asked, dropped, finished)
    side = asked.lengths_mm.get("body") or side_length(body, asked, armhole)
    return ShoulderShape(
        finished,
        hem_girth(body, asked, finished),
        side,
        min(RIB_MM["body"], side / 3),
        armhole,
        across,
        neck / 2 - NECK_LESS_MM,
        armhole - 20.0 if asked.neck == "v" else NECK_DROP_MM,
        upper,
        min(wrist + CUFF_EASE_MM, upper - 10.0),
        seam,
        min(RIB_MM["cuff"] if asked.sleeve == "long" else 25.0, max(seam, 60.0) / 2),
        asked.band_mm if asked.opening == "cardigan" else 0.0,
        dropped,
    )


def _seam(body: Body, asked: Asked, dropped: bool, finished: float) -> float:
    """Return cuff to underarm, or to the seam of a dropped shoulder, which lies down the arm."""
    if dropped:
        whole = body.stand_in("centre_back_to_wrist") - finished / 4
    else:
        whole = body.stand_in("underarm_length") - SET_IN_EASE_MM / 2
    return max(60.0, whole * SLEEVE_SHARE[asked.sleeve])
