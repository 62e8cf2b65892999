"""The levels at which knitted garments are judged, and how much ease is wanted where nobody said.

Ease at the bust by class (Craft Yarn Council fit chart, from memory): standard is 2 to 4 inches more than the body.
The other defaults are common practice, no source; whatever the outfit says outranks them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from lastlook.outfit.garment.knitted import Knitted, in_size
from lastlook.outfit.garment.knitted_shape import Heights, girth_at_underarm, is_body, is_sleeve, is_whole
from lastlook.outfit.garment.level import Level
from lastlook.outfit.names import title
from lastlook.outfit.outfit import Ease, Outfit
from lastlook.quantity import Gauge, Missing, Spread, exactly
from lastlook.wearer import measure

KNITTED: dict[str, tuple[str, Ease]] = {
    "bust": ("bust_girth", Ease(50.8, 101.6)),
    "upper arm": ("upper_arm_girth", Ease(25.0, 90.0)),
    "sleeve length": ("underarm_length", Ease(-30.0, 30.0)),
    "armhole depth": ("scye_depth", Ease(0.0, 60.0)),
}
"""Level, the body's measure, the ease wanted of a knitted garment."""


def with_size(one: Knitted, size: str) -> Knitted:
    """Return the same garment in another size of its leaflet."""
    return replace(one, size=in_size(one.reading, one.plan, size, one.gauge)[0])


def knitted_levels(outfit: Outfit, one: Knitted) -> tuple[Level, ...]:
    """Return the levels of a knitted garment; those whose pieces are not in the leaflet are left out."""
    gauge = one.gauge
    if isinstance(gauge, Missing) or one.size is None:
        return ()
    shapes = [shape for piece in one.pieces if (shape := one.shape(piece)) is not None]
    body = [shape for shape in shapes if is_body(shape.piece) or is_whole(shape.piece)]
    sleeve = next((shape for shape in shapes if is_sleeve(shape.piece)), None)
    gets: dict[str, tuple[Spread | Missing, Spread | None]] = {}
    if body:
        gets["bust"] = (girth_at_underarm(body, gauge), gauge.width_mm(body[0].underarm_sts))
    if sleeve:
        gets["upper arm"] = (sleeve.width(gauge, 2), gauge.width_mm(sleeve.underarm_sts))
        gets["sleeve length"] = (_length(sleeve.rows_to_underarm, sleeve, gauge), None)
    if sleeve and body and _is_raglan(sleeve):
        gets["armhole depth"] = (_raglan_depth(body[0], sleeve, gauge), None)
    wanted = dict(one.plan.ease)
    return tuple(_level(outfit, one.plan.name, name, KNITTED[name], wanted, got) for name, got in gets.items())


def _level(
    outfit: Outfit,
    garment: str,
    name: str,
    usual: tuple[str, Ease],
    wanted: Mapping[str, Ease],
    gets: tuple[Spread | Missing, Spread | None],
) -> Level:
    body, ease = usual
    return Level(title(garment), name, body, measure(outfit.wearer, body), wanted.get(name, ease), *gets)


def _length(rows: int, shape: Heights, gauge: Gauge) -> Spread | Missing:
    made = shape.made
    if made and made.length_mm is not None and made.rows is None:
        return exactly(made.length_mm)
    return gauge.length_mm(rows)


def _is_raglan(sleeve: Heights) -> bool:
    """Whether the sleeve ends in the few stitches that lie at the neck."""
    return 0 < sleeve.top_sts < sleeve.underarm_sts / 3 and sleeve.rows > sleeve.rows_to_underarm + 20


def _raglan_depth(body: Heights, sleeve: Heights, gauge: Gauge) -> Spread | Missing:
    """Return shaping depth and half the sleeve's top, which lies over the shoulder (TenDyke raglan pages, read)."""
    depth = gauge.length_mm(body.rows - body.rows_to_underarm)
    return depth if isinstance(depth, Missing) else depth + gauge.width_mm(sleeve.top_sts / 2).best
