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
    one = desk.knitted(request.path_params["garment"])
    proof = proof_of(one.reading, one.findings)
    notes = [*proof.general, *(note for block in proof.blocks for note in block.notes)]
    ways = {note.sign: outfit.ways_of(one, note.finding) for note in notes if note.finding.asks}
    pictures = drawings.knitted(one, sheet.manner_of(desk.outfit))
    yarns = [("", "no yarn yet"), *((yarn.name, yarn.name.replace("-", " ")) for yarn in desk.outfit.yarns)]
    return framed(
        request,
        "leaflet/page.html",
        desk,
        one=one,
        proof=proof,
        ways={sign: found for sign, found in ways.items() if found},
        pictures=pictures,
        yarns=yarns,
    )
