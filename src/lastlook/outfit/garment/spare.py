"""What gives back yarn where a lot does not surely suffice: the least loss first, each tried before it is offered.

Shortening a sleeve or a body where it is plain shows least; what would no longer fit is not offered.
"""

from __future__ import annotations

from dataclasses import replace

from lastlook.finding import Cure, Edit
from lastlook.outfit.answer import Answer
from lastlook.outfit.garment.knitted import Knitted, knitted
from lastlook.outfit.garment.levels import knitted_levels
from lastlook.outfit.outfit import Outfit
from lastlook.quantity import Missing, Spread, Units, write_length, write_weight

STEPS_MM = {Units.CM: (20.0, 40.0), Units.INCHES: (25.4, 38.1)}
"""How much shorter, as a maker would say it."""
MOST_CURES = 3


def spare(outfit: Outfit, one: Knitted, have: Spread, others_g: float) -> tuple[Cure, ...]:
    """Return what to make shorter so that `have` grams surely suffice, `others_g` of them being wanted elsewhere."""
    if isinstance(one.forecast, Missing):
        return ()
    fitted = _misfits(outfit, one)
    out: list[Cure] = []
    for shorter in _ways(outfit.manner.units):
        tried = knitted(outfit, replace(one.plan, longer=_together(one.plan.longer, shorter)))
        if isinstance(tried.forecast, Missing) or tried.altered or _misfits(outfit, tried) > fitted:
            continue
        left = have - tried.forecast.total_g - others_g
        if left.low < 0:
            continue
        gives = one.forecast.total_g.best - tried.forecast.total_g.best
        out.append(_cure(outfit, one, shorter, gives))
        if len(out) == MOST_CURES:
            break
    return tuple(out)


def _ways(units: Units) -> list[dict[str, float]]:
    some, more = STEPS_MM[units]
    return [
        {"sleeve": some},
        {"body": some},
        {"sleeve": more},
        {"sleeve": some, "body": some},
        {"sleeve": more, "body": more},
    ]


def _together(longer: tuple[tuple[str, float], ...], shorter: dict[str, float]) -> tuple[tuple[str, float], ...]:
    places = dict(longer)
    for place, mm in shorter.items():
        places[place] = places.get(place, 0.0) - mm
    return tuple(places.items())


def _misfits(outfit: Outfit, one: Knitted) -> int:
    return sum(level.answer[0] in (Answer.NO, Answer.TIGHT) for level in knitted_levels(outfit, one))


def _cure(outfit: Outfit, one: Knitted, shorter: dict[str, float], gives_g: float) -> Cure:
    units = outfit.manner.units
    places = " and ".join(
        f"{'the sleeves' if place == 'sleeve' else 'the body'} {write_length(mm, units)}"
        for place, mm in shorter.items()
    )
    edits = tuple(
        Edit(f"knitting.{one.plan.name}.longer.{place}", _written(mm, units))
        for place, mm in _together(one.plan.longer, shorter)
        if place in shorter
    )
    return Cure(f"Knit {places} shorter: that gives back {write_weight(gives_g)}.", edits)


def _written(mm: float, units: Units) -> str:
    """Return a length with its sign, as the document keeps it."""
    return f"{'-' if mm < 0 else ''}{write_length(abs(mm), units)}"
