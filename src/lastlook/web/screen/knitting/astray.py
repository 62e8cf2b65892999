"""Astray: what went wrong when the count on the needle is off, and where the hands are when the row is lost."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.requests import Request

from lastlook import outfit
from lastlook.knit import WorkedPiece
from lastlook.knit.compose import rescue as rescues
from lastlook.outfit import Knitted
from lastlook.quantity import Missing

MOST_STITCHES = 5000


@dataclass(frozen=True)
class Astray:
    """What was asked, and what it comes to."""

    found: int
    row: int | None
    rescue: rescues.Rescue | None
    """Where the row is known."""
    places: tuple[tuple[int, int], ...]
    """Where it is not: the rows after which so many stitches are on the needle."""


def astray(request: Request, one: Knitted, piece: WorkedPiece) -> Astray | None:
    """Return what a count found after a row comes to, None where nothing was asked or it is no count."""
    found, row = _count(request, "found"), _count(request, "after")
    if found is None or found > MOST_STITCHES or not piece.rows:
        return None
    if row is None or not 1 <= row <= len(piece.rows):
        return Astray(found, None, None, rescues.places(piece, found, _count(request, "shaped")))
    pace = outfit.pace(one)
    minutes = rescues.ROW_MINUTES_PER_100 / 100 if isinstance(pace, Missing) else pace.minutes_a_stitch.best
    return Astray(found, row, rescues.rescue(piece, row, found, one.working_gauge, minutes), ())


def _count(request: Request, key: str) -> int | None:
    text = request.query_params.get(key, "").strip()
    return int(text) if text.isascii() and text.isdigit() and len(text) < 6 else None
