"""Which piece made before is meant, and where its armhole, neck or shoulder begins."""

from __future__ import annotations

import re
from collections.abc import Iterable

from lastlook.knit.needle.state import Hands

BODY = ("back", "front", "left front", "right front")
SYNONYMS = {"shoulder shape": "shoulder", "armhole shape": "armhole", "beg of armhole": "armhole",
            "raglan shape": "raglan",
            "underarm": "armhole", "bo": "armhole", "beg of raglan": "raglan", "top": "armhole"}  # fmt: skip


def garments(names: Iterable[str]) -> list[dict[str, str]]:
    """Return the pieces of each garment of a leaflet, their plain names with the names they have.

    A second back or front begins a second garment: a twin set, a pullover and a cardigan.
    """
    out: list[dict[str, str]] = [{}]
    for name in names:
        plain = re.sub(r" \d+$", "", name)
        if plain in out[-1] and plain in BODY:
            out.append({})
        out[-1].setdefault(plain, name)
    return out


def find_piece(hands: Hands, word: str) -> Hands | None:
    """Return the piece that a word means among those made before."""
    pieces = hands.world.pieces
    *_, own = garments([*pieces, hands.name.lower()])
    mine = next((name for plain, name in own.items() if plain == word and name in pieces), "")
    if mine:
        return pieces[mine]
    if word in pieces:
        return pieces[word]
    for name, piece in reversed(list(pieces.items())):
        if word in name.split() or word.split()[-1] in name:
            return piece
    made = list(pieces.values())
    if made and (word.startswith(("<1>th", "alt")) or word in ("first", "left", "right", "that", "other")):
        return made[-1]
    return None


def landmark(piece: Hands, place: str) -> int | None:
    """Return the last row before a part of the piece."""
    if place.endswith(" done"):
        begun = landmark(piece, place.removesuffix(" done"))
        return None if begun is None else _last_shaped(piece, begun)
    place = SYNONYMS.get(place, place)
    if place in ("armhole", "raglan") and piece.armhole_row is not None:
        return piece.armhole_row
    if place in piece.sections:
        return piece.sections[place] - 1
    if place == "shoulder":
        rows = piece.parts[-1].rows
        return _before_last_offs(piece) if rows else None
    if place == "neck":
        return piece.parts[0].number if len(piece.parts) > 1 else None
    return None


FAR_APART = 10
"""Shapings of one part are no more rows apart than this."""


def _last_shaped(piece: Hands, begun: int) -> int:
    """Return the last row of the shaping that begins after a row: 'until the armhole shaping is completed'."""
    last = begun
    for row in piece.parts[0].rows:
        if row.number > begun and row.events:
            if last > begun and row.number - last > FAR_APART:
                break
            last = row.number
    return last


def _before_last_offs(piece: Hands) -> int:
    rows = piece.parts[0].rows if len(piece.parts) == 1 else piece.parts[0].rows + piece.parts[1].rows
    last = len(rows)
    while last and (
        any(event.act == "bind off" for event in rows[last - 1].events)
        or (
            last > 1
            and any(event.act == "bind off" for event in rows[last - 2].events)
            and not rows[last - 1].events
            and last < len(rows)
        )
    ):
        last -= 1
    return last
