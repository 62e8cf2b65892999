"""The record of an outfit, from what was typed and what came off."""

from __future__ import annotations

from lastlook import outfit, stock
from lastlook.quantity import Missing, write_length, write_weight
from lastlook.sheet.record import Came, Material, Record
from lastlook.sheet.whole.naming import named, whose


def record_of(derived: outfit.Derived) -> Record:
    """Return what is kept of an outfit: its materials as they were typed, its pieces as they came off."""
    one = derived.outfit
    yarns = [Material(named(yarn.name), _yarn_words(yarn), "a thread") for yarn in one.yarns]
    cloths = [Material(named(cloth.name), _cloth_words(cloth, one.manner), "a snip") for cloth in one.cloths]
    pieces = []
    for knitted in derived.knitted:
        for piece in knitted.pieces:
            made = next((each for each in knitted.made if each.piece.lower() == piece.name.lower()), None)
            name = f"{named(knitted.plan.name)}: {piece.name}"
            pieces.append(_came(name, len(piece.rows), made))
    return Record(one.name, whose(one), (*yarns, *cloths), tuple(pieces))


def _came(name: str, planned: int, made: outfit.MadePiece | None) -> Came:
    if made is None:
        return Came(name, planned)
    return Came(name, planned, made.rows, made.cast_on, made.width_mm, made.length_mm, made.grams)


def _yarn_words(yarn: stock.Yarn) -> str:
    weight = "" if isinstance(yarn.grams, Missing) else write_weight(yarn.grams.best)
    return "; ".join(part for part in (yarn.fibre, weight, yarn.state) if part)


def _cloth_words(cloth: stock.Cloth, manner: outfit.Manner) -> str:
    wide, long = write_length(cloth.width_mm, manner.units), write_length(cloth.length_mm, manner.units)
    flaws = ", ".join(flaw.what for flaw in cloth.flaws if flaw.what)
    return f"{wide} wide, {long} long" + (f"; {flaws}" if flaws else "")
