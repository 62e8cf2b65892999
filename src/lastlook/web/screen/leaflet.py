"""The leaflet: its text untouched on its paper, what there is to say pencilled in the margin beside it."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from lastlook import outfit, sheet
from lastlook.web import drawings
from lastlook.web.page import framed, number_of, room_of
from lastlook.web.proof import proof_of


def show(request: Request) -> Response:
    """Show a garment's leaflet with its margin."""
    desk = room_of(request).desk(number_of(request))
    one = garment_of(desk.derived, request.path_params["garment"])
    proof = proof_of(one.reading, one.findings)
    pictures = drawings.knitted(one, sheet.manner_of(desk.outfit))
    return framed(request, "leaflet/page.html", desk, one=one, proof=proof, pictures=pictures)


def garment_of(derived: outfit.Derived, name: str) -> outfit.Knitted:
    """Return the knitted garment of that name; raises LookupError where there is none."""
    found = next((one for one in derived.knitted if one.plan.name == name), None)
    if found is None:
        raise LookupError(f"The outfit has nothing to knit called {name}.")
    return found
