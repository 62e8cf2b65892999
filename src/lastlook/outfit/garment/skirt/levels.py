"""The levels of a skirt against the body: waist, high hip, hip, and in a step the knee and the hem; and sitting.

Ease wanted where nobody said: waist 1/2 to 3/4 in and hip 2 in and more (Central Washington University costume text,
ch. 16, read), less the centimetre by which tape and needle are off; the rest is common practice, no source. What hangs
from the waist has no upper limit. Cloth that stretches gives half of its stretch, elastic what it pulls out.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from lastlook import paper
from lastlook.outfit.garment.level import Level
from lastlook.outfit.garment.sewn import Sewn
from lastlook.outfit.names import title
from lastlook.outfit.outfit import Ease, Outfit
from lastlook.paper import fit
from lastlook.quantity import Missing, Origin, Spread
from lastlook.wearer import Measure, measure

USUAL: Mapping[str, Ease] = {
    "waist": Ease(10.0, 40.0),
    "high hip": Ease(10.0, math.inf),
    "hip": Ease(40.0, 150.0),
    "knee": Ease(0.0, math.inf),
    "hem": Ease(0.0, math.inf),
    "waist when sitting": Ease(-10.0, math.inf),
    "hip when sitting": Ease(0.0, math.inf),
}
"""A waist gives a centimetre to the cloth when it has to (common practice, no source)."""
FITTED = ("straight", "a-line", "gored")
"""Kinds that are fitted to the hip; all others hang from the waist."""
NAMED = {"knee": "knee in a step", "hem": "hem in a step"}
SEWING_MM = 4.0
"""A careful hand sews a garment to within 4 mm in girth, 0.5 mm at each of eight seam edges (common practice, no
source)."""
TAKEN_SHARE = 0.5
SNUG_SHARE = 0.2
"""Elastic is cut to 0.80-0.90 of the waist (common practice, no source)."""
CHOSEN_MM = 15.0
"""How far from an ease that was chosen a skirt may lie; our own bound."""


def sewn_levels(outfit: Outfit, one: Sewn) -> tuple[Level, ...]:
    """Return the levels of a skirt that its pieces reach."""
    if not one.drafted.pieces:
        return ()
    out = []
    for name in USUAL:
        girth = _girth(outfit, one, name.removesuffix(" when sitting"))
        body = _body(outfit, one, name)
        if girth is None or body is None:
            continue
        gets = girth if isinstance(girth, Missing) else girth + _give_mm(one, name)
        called = NAMED.get(name, name)
        out.append(Level(title(one.plan.name), called, _measure(name), body, _wanted(one, name, body), gets))
    return tuple(out)


def _measure(name: str) -> str:
    """Return the body's measure that settles a level."""
    return {
        "waist": "waist_girth",
        "high hip": "top_hip_girth",
        "hip": "hip_girth",
        "waist when sitting": "waist_girth_sitting",
        "hip when sitting": "hip_girth_sitting",
    }.get(name, "stride_girth")


def _body(outfit: Outfit, one: Sewn, name: str) -> Measure | Missing | None:
    """Return the body there: as taken or estimated, else assumed; None where only a hem could ask for it."""
    found = measure(outfit.wearer, _measure(name))
    if isinstance(found, Measure) and name != "hem":
        return found
    depth = paper.hem_depth_mm(one.drafted.pieces)
    assumed = paper.body_at(name, one.drafted.measures, depth)
    return assumed if assumed is not None or name == "hem" else found


def _girth(outfit: Outfit, one: Sewn, level: str) -> Spread | Missing | None:
    """Return what goes round the body at a level; None where the pieces do not reach it."""
    if level == "waist" and one.plan.elastic is not None:
        best: float | None = one.plan.elastic.length_mm
    elif level == "waist":
        best = band_mm(one.drafted)
    else:
        best = one.drafted.girths_mm.get(level)
    if best is None:
        return None
    if level == "hip" and one.plan.kind in FITTED:
        return _at_hip(outfit, one, best)
    return Spread(best, best - SEWING_MM, best + SEWING_MM)


def _at_hip(outfit: Outfit, one: Sewn, best: float) -> Spread | Missing:
    """Return the girth at the hip over all depths at which it may lie; unknown where none was measured."""
    depth = measure(outfit.wearer, "waist_to_hip")
    if isinstance(depth, Missing):
        return depth
    if depth.origin is Origin.MEASURED:
        return Spread(best, best - SEWING_MM, best + SEWING_MM)
    reach = (depth.mm.low - depth.mm.best, depth.mm.high - depth.mm.best)
    around = [girth for by in reach if (girth := paper.girth_near(one.drafted.pieces, "hip", by)) is not None]
    return Spread(best, min([best, *around]) - SEWING_MM, max([best, *around]) + SEWING_MM)


def band_mm(drafted: paper.Drafted) -> float | None:
    """Return what goes round the waist: the band that the skirt is eased onto, or the skirt's own top without one."""
    seam = next((seam for seam in drafted.seams if "band" in seam.mate.b.piece.lower()), None)
    return drafted.girths_mm.get("waist") if seam is None else seam.b_length


def _give_mm(one: Sewn, name: str) -> float:
    """Return what a level gives when the body asks for more: elastic at the waist, stretching cloth below it."""
    if not name.endswith("when sitting"):
        return 0.0
    if name.startswith("hip"):
        return stretch_mm(one, "hip")
    if one.plan.elastic is None:
        return 0.0
    top = (paper.top_mm(one.drafted.pieces) or 0.0) - one.plan.elastic.length_mm
    return max(0.0, fit.give_mm(one.plan.elastic.give_mm, top, math.inf))


def stretch_mm(one: Sewn, level: str) -> float:
    """Return by how much the cloth's own stretch lets a level be smaller than the body."""
    share = dict(one.plan.options).get("stretch_share", 0.0) * TAKEN_SHARE
    return share * one.drafted.measures.get(f"{level}_girth", 0.0)


def _wanted(one: Sewn, name: str, body: Measure | Missing) -> Ease:
    """Return the ease wanted: as the outfit says; about the ease that the draft was told; else the usual one."""
    said = dict(one.plan.ease).get(name)
    if said is not None:
        return said
    usual = USUAL[name]
    low, high = usual.low_mm, usual.high_mm
    chosen = dict(one.plan.options).get(f"ease_{name}_mm")
    if chosen is not None and name in ("waist", "hip"):
        low, high = min(low, chosen - CHOSEN_MM), max(high, chosen + CHOSEN_MM)
    if name == "hip" and one.plan.kind not in FITTED:
        high = math.inf
    sitting = one.drafted.measures.get(f"{name}_girth_sitting")
    if sitting is not None and isinstance(body, Measure):
        high = max(high, sitting - body.mm.best + CHOSEN_MM)
    if name == "waist" and one.plan.elastic is not None and isinstance(body, Measure):
        return Ease(-SNUG_SHARE * body.mm.best, 0.0)
    if name in ("high hip", "hip") and (give := stretch_mm(one, "hip")):
        low = min(low, -give)
    return Ease(low, high)
