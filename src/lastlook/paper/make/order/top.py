"""On the body, then the top: lining, facing or band, elastic, fasteners, belt."""

from __future__ import annotations

from lastlook.paper.make.order.care import NEEDLE, PINS
from lastlook.paper.make.order.seams import edge, lengths
from lastlook.paper.make.order.step import Making, Step
from lastlook.paper.seams import Fullness
from lastlook.piece import Meets

ELASTIC_TURN_MM = 9.0
"""Room for the elastic to turn in its casing (6-12 mm; common practice, no source)."""


def fitting() -> list[Step]:
    """Return what is looked at on the body before the top goes on."""
    look = "Try it on, right side out, over what will be worn beneath, a tape round the waist."
    why = "Look in this order: the waist, the cross grain at the hip, the width, the length."
    return [Step(look, why, care=PINS), Step("Sit down, take a step, raise both arms.", "Ease is spent sitting.")]


def lining(making: Making) -> list[Step]:
    """Return the lining, made up and hung."""
    found = making.parts("lining")
    if not found:
        return []
    names = " and ".join(piece.name for piece in found)
    return [
        Step(f"{names}: sew the sides, the opening left free, its darts laid as pleats.", "Cloth gives, lining tears."),
        Step(
            "Hang the lining into the skirt, wrong sides together, and baste it at the waist.",
            "Fell it to the zip tape.",
        ),
    ]


def top(making: Making) -> list[Step]:
    """Return facing, band or elastic, with what closes it."""
    out = [Step(_drawn_in(making))] if _is_full(making) else []
    waist = making.drafted.girths_mm.get("waist")
    round_ = f", {making.shown(waist)} long" if waist else ""
    stay = Step(
        f"Sew a waist stay of tape into the waist seam{round_}.", "The waist is off grain, and a tape does not give."
    )
    if making.elastic is not None:
        return [*out, *_elastic(making)]
    if making.band is None:
        return [*out, stay, *_faced(making)]
    out += [stay, *_banded(making)]
    closed = "Close the band: a hook and bar on the lap, a button only if its hole is sewn on a scrap first."
    out.append(Step(closed, "The lap lies square with the opening.", "sewn buttonhole"))
    if making.parts("belt"):
        out.append(Step("Sew the belt loops or tabs on at every quarter of the band, and one beside the buckle."))
    return out


def _is_full(making: Making) -> bool:
    return (
        any(join.fullness is Fullness.GATHERED for join in making.drafted.joins)
        and "pleated" not in making.drafted.kind
    )


def _drawn_in(making: Making) -> str:
    onto = "the elastic" if making.elastic is not None else "the band"
    return f"Sew two rows of long stitches along the top and draw them up, quarter by quarter, to {onto}."


def _banded(making: Making) -> list[Step]:
    out = []
    for seam in making.drafted.seams:
        if seam.mate.a.edge == "waist" and "band" in seam.mate.b.piece.lower():
            say = f"Sew {edge(seam.mate.a)} to {edge(seam.mate.b)}: {lengths(making, seam)}."
            eased = seam.meets is Meets.BY_EASING
            why = "Ease it between side front and side back, none at the centre front." if eased else "Notch to notch."
            out.append(Step(say, why, "sew up", care=NEEDLE))
    out.append(
        Step("Turn the band over the seam, and fell it down inside by hand.", "Slip a thumb under it: that is right.")
    )
    return out


def _faced(making: Making) -> list[Step]:
    facings = making.parts("facing")
    if not facings:
        return [Step("Face the waist over the stay tape.")]
    names = " and ".join(piece.name for piece in facings)
    return [
        Step(f"{names}: sew the sides, press them open.", ""),
        Step(
            "Sew the facing to the waist, grade the seam, clip its curve, and understitch.",
            "Clip to the stitching, not into it.",
            "trim",
        ),
        Step("Tack the facing to the side seams and the darts, and close it over the zip with a hook and bar."),
    ]


def _elastic(making: Making) -> list[Step]:
    elastic = making.elastic
    assert elastic is not None
    room = making.shown(ELASTIC_TURN_MM)
    return [
        Step(f"Make the casing twice as wide as the elastic, its allowances and {room}; leave a gap."),
        Step(
            f"Cut the elastic to {making.shown(elastic.length_mm)} and a lap of {making.shown(25.0)}, and draw it in.",
            "Pin it, and try it on sitting down before its ends are sewn.",
        ),
        Step("Sew the ends of the elastic flat, and close the casing.", "", "sew up", care=NEEDLE),
    ]
