"""What a maker says of a foreign piece in one line, as the command line takes it.

`front.svg name=Front line=cut allowance=1.5cm edges=1:waist,2:centre fold=centre dart=waist:8cm:2cm:10cm`: the file,
then the same words that the outfit's document keeps. Edges are numbered along the walk, or listed in its order.
"""

from __future__ import annotations

import shlex
from typing import Any

from lastlook.finding import Finding
from lastlook.outfit.written.read_taken import TakenPiece, read_taken
from lastlook.outfit.written.table import unread
from lastlook.paper import make
from lastlook.quantity import Units, Unread, read_length

PARTED = {"dart": ("darts", ("edge", "from", "wide", "deep")), "notch": ("notches", ("edge", "at"))}
ENVELOPE_SAYS = 'Write it like pieces=Front,Back,Waistband length=62cm "Front: side=64cm".'
SAYS = 'Write it like front.svg name=Front edges=1:waist,2:centre,3:hem,4:side line=cut allowance="1.5 cm".'


def read_piece_words(line: str, units: Units) -> TakenPiece | Finding:
    """Return what a line says of a piece, or the first thing in it that can't be read."""
    try:
        file, *words = shlex.split(line)
    except ValueError:
        return unread("piece", f"“{line}” does not name a file of a piece.", SAYS)
    entry: dict[str, Any] = {"file": file}
    for word in words:
        key, equals, value = word.partition("=")
        if not equals:
            return unread("piece", f"“{word}” says nothing of {file}.", SAYS)
        _put(entry, key, value)
    findings: list[Finding] = []
    (piece,) = read_taken([entry], units, "piece.", findings)
    return findings[0] if findings else piece


def read_envelope_words(line: str, units: Units) -> make.Envelope | Finding:
    """Return what a line says of an envelope: `pieces=Front,Back length=62cm "Front: side=64cm"`."""
    names: tuple[str, ...] = ()
    lengths: dict[str, float] = {}
    try:
        words = shlex.split(line)
    except ValueError:
        words = [line]
    for word in words:
        key, equals, value = word.partition("=")
        mm = 0.0 if key == "pieces" else read_length(value, units)
        if not equals or isinstance(mm, Unread):
            return unread("envelope", f"“{word}” says nothing of the envelope.", ENVELOPE_SAYS)
        if key == "pieces":
            names = tuple(name.strip() for name in value.split(",") if name.strip())
        else:
            lengths[key] = mm
    return make.Envelope(names, lengths.pop("length", None), lengths)


def _put(entry: dict[str, Any], key: str, value: str) -> None:
    """Add a word as the document would hold it."""
    if key in PARTED:
        where, names = PARTED[key]
        entry.setdefault(where, []).append(dict(zip(names, value.split(":"), strict=False)))
    elif key in ("edges", "allowances"):
        listed = [one.partition(":") for one in value.split(",")]
        entry[key] = {
            left.strip() if colon else str(number): (right if colon else left).strip()
            for number, (left, colon, right) in enumerate(listed, 1)
        }
    else:
        entry[key] = int(value) if key in ("outline", "quantity") and value.isdigit() else value
