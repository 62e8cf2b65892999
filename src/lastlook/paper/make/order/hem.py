"""The hem: hung, levelled on the body, turned by its depth and flare, pressed; pins searched for at the end.

A flared hem hangs one to three days before it is levelled (retroglam, 2013, read).
"""

from __future__ import annotations

from lastlook.paper.easing import prior_of
from lastlook.paper.fit.hem import FULL
from lastlook.paper.fit.hem import flare as flare_of
from lastlook.paper.girth import hem_depth_mm
from lastlook.paper.make.order.care import FLAME, FLAMMABLE, IRON
from lastlook.paper.make.order.step import Making, Step
from lastlook.paper.seam_edge import Use

FLARED = 1.15
"""From this hem over hip on, a hem hangs out of true and is levelled after hanging; our own bound."""


def hem(making: Making) -> list[Step]:
    """Return the last steps."""
    out = []
    if _flared(making):
        days = "three days" if "circle" in making.drafted.kind else "one to three days"
        why = "Bias drops; a hem levelled too early is wrong by evening."
        out.append(Step(f"Let it hang by the band for {days}.", why))
    depths = sorted({side.allowance_mm for piece in making.shell for side in piece.sides if side.use is Use.HEM})
    for mm in depths:
        say = f"Level the hem from the floor, on the wearer, in her shoes, and turn up {making.shown(mm)}."
        out.append(Step(say))
    flame = FLAME if prior_of(making.fibre) in FLAMMABLE else ""
    out.append(Step("Trim the hem only when the length is settled on the body.", "", "trim", care=flame))
    out.append(Step(*_turned(making)))
    if making.parts("lining"):
        out.append(Step(f"Turn the hem of the lining up by itself, {making.shown(25.0)} above the hem of the skirt."))
    out.append(Step("Press from the wrong side under a cloth, after a trial on a scrap.", "", "press", care=IRON))
    out.append(
        Step("Search the skirt for pins by hand and magnet before it is worn.", "One that is left finds a hand.")
    )
    return out


def _flared(making: Making) -> bool:
    around, hip = making.drafted.girths_mm.get("hem"), making.drafted.girths_mm.get("hip")
    return "circle" in making.drafted.kind or (around is not None and hip is not None and around > FLARED * hip)


def _turned(making: Making) -> tuple[str, str]:
    """Return how the hem is sewn: rolled on a full flare, eased or caught by hand else."""
    girths, depth = making.drafted.girths_mm, hem_depth_mm(making.drafted.pieces)
    hip_depth = making.drafted.measures.get("waist_to_hip", 200.0)
    around, hip = girths.get("hem"), girths.get("hip")
    if around is None or hip is None or depth is None or depth <= hip_depth:
        return "Sew the hem by hand.", "Catch one thread of the cloth."
    growth = flare_of(hip, around, depth - hip_depth)
    if growth >= FULL:
        return "Roll the hem narrowly, or face it with bias.", "A deep hem on a full flare won't lie flat."
    if growth > 0.2:
        return (
            "Ease the raw edge in with a running thread, shrink it over a card, and catch the hem by hand.",
            "It is longer than the skirt it is folded onto.",
        )
    return "Overcast or bind the raw edge, and catch the hem by hand.", "Catch one thread of the cloth."
