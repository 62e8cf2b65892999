"""Text as an engine saw it, repaired: the text, then each repair with its reason."""

from __future__ import annotations

from lastlook.leaflet import repair


def answer(given: str, asked: str) -> str:
    mended = repair(given.rstrip("\n"))
    told = [f"{one.was} -> {one.now}: {one.why}{' (a number)' if one.makes_number else ''}" for one in mended.repairs]
    return "\n".join([mended.text, "", *(told or ["nothing repaired"])])
