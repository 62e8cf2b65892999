"""What a measure or an option of a draft can be at all; beyond it is a slip of the unit."""

from __future__ import annotations

import math
from collections.abc import Mapping

from lastlook.finding import Certainty, Finding, Where
from lastlook.quantity import Units, write_length

LEAST_MM, MOST_MM = 50.0, 4000.0
ANY = (-1e5, 1e5)
RANGES: Mapping[str, tuple[float, float]] = {
    "ease_waist_mm": (-400.0, 1000.0),
    "ease_hip_mm": (-400.0, 2000.0),
    "ease_in_mm": (0.0, 500.0),
    "hem_mm": (200.0, 30_000.0),
    "band_mm": (200.0, MOST_MM),
    "band_width_mm": (5.0, 300.0),
    "lap_mm": (0.0, 300.0),
    "dart_mm": (0.0, 120.0),
    "front_dart_length_mm": (20.0, 300.0),
    "back_dart_length_mm": (20.0, 300.0),
    "side_rise_mm": (-50.0, 60.0),
    "back_dip_mm": (-50.0, 60.0),
    "seam_allowance_mm": (0.0, 100.0),
    "side_allowance_mm": (0.0, 150.0),
    "hem_allowance_mm": (0.0, 400.0),
    "pleat_depth_mm": (1.0, 500.0),
    "facing_depth_mm": (15.0, 200.0),
    "belt_width_mm": (5.0, 200.0),
    "stretch_share": (0.0, 1.5),
    "eases_share": (0.0, 0.2),
    "fullness": (1.0, 8.0),
    "gores": (2.0, 40.0),
    "pleats": (1.0, 200.0),
}
"""What an option can be at all; beyond it is a slip of the unit."""


def odd(name: str, mm: float, least: float = LEAST_MM, most: float = MOST_MM) -> Finding | None:
    """Return that a figure is none that it can be; None where it may be one."""
    if least <= mm <= most:
        return None
    shown = _shown(name, mm) if math.isfinite(mm) else "without end"
    called = "share eased" if name == "eases_share" else name.removesuffix("_mm").removesuffix("_share")
    return Finding(
        "measure-odd",
        Certainty.PROVEN,
        f"A {called.replace('_', ' ')} of {shown} is none that a body, a skirt or its cloth has.",
        f"It has to lie between {_shown(name, least)} and {_shown(name, most)}.",
        "Look at the figure and its unit again.",
        where=Where(fact=name),
    )


def _shown(name: str, value: float) -> str:
    """Return a value as it is written: a share in per cent, a count or a ratio plain, all else as a length."""
    if name.endswith("_share"):
        return f"{value * 100:g} %"
    return f"{value:g}" if name in ("gores", "pleats", "fullness") else write_length(value, Units.CM)
