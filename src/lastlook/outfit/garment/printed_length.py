"""How long a printed skirt is on this wearer, carried over from the height that it was drawn for."""

from __future__ import annotations

from lastlook.outfit.outfit import Outfit, Sewing
from lastlook.paper import fit
from lastlook.quantity import Missing
from lastlook.wearer import measure


def assumed_length_mm(outfit: Outfit, plan: Sewing) -> float | None:
    """Return the printed length carried over from the pattern's height to the wearer's; None where that can't be said.

    A measured waist-to-hem outranks it; the caller asks only where there is none.
    """
    printed, stature, hip = plan.printed, measure(outfit.wearer, "stature"), measure(outfit.wearer, "hip_girth")
    waist = measure(outfit.wearer, "waist_girth")
    if printed is None or printed.height is None or any(isinstance(one, Missing) for one in (stature, hip, waist)):
        return None
    assert not isinstance(stature, Missing) and not isinstance(hip, Missing) and not isinstance(waist, Missing)
    choice = fit.closest(printed.sizes, waist.mm.best, hip.mm.best, None)
    if choice is None or choice.size.length_mm is None:
        return None
    return fit.length_prior_mm(choice.size.length_mm, printed.height, stature.mm.best)
