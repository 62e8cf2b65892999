"""The record of an outfit, from what was typed and what came off."""

from __future__ import annotations

from lastlook import outfit, stock
from lastlook.quantity import Missing, write_length, write_weight
from lastlook.sheet.record import Came, Decided, Material, Record
from lastlook.sheet.whole.naming import named, whose


def decided(derived: outfit.Derived) -> tuple[Decided, ...]:
    """Return what was decided for each garment, in the order in which it is needed to make it again."""
    return (*(_knitted(one, derived.outfit.manner) for one in derived.knitted), *(_sewn(one) for one in derived.sewn))


def _knitted(one: outfit.Knitted, manner: outfit.Manner) -> Decided:
    plan, size = one.plan, one.size
    said = [f"Leaflet: {one.reading.title}." if one.reading.title else ""]
    said.append(f"Size {size.size}." if size and size.size != "one size" else "")
    said.append(f"Knitted in {named(plan.yarn)}." if plan.yarn else "")
    said += [f"Read “{value}” for {key}." for key, value in plan.corrections]
    said += [f"{key}: read the {_nth(value)} way." for key, value in plan.readings]
    for what, changes in (("longer", plan.longer), ("wider", plan.wider)):
        shorter = {"longer": "shorter", "wider": "narrower"}[what]
        said += [
            f"{named(place)} {write_length(abs(mm), manner.units)} {what if mm > 0 else shorter}."
            for place, mm in changes
        ]
    minutes = sum(sitting.minutes for sitting in plan.log)
    said.append(f"{minutes / 60:.1f} hours were noted." if minutes else "")
    return Decided(plan.name, tuple(sentence for sentence in said if sentence))


def _sewn(one: outfit.Sewn) -> Decided:
    plan = one.plan
    said = [f"Drafted as {plan.kind.replace('-', ' ')}." if not plan.taken else "From pieces that were taken in."]
    said.append(f"Cut from {named(plan.cloth)}." if plan.cloth else "")
    said += [change.say() for change in plan.alterations if change.on]
    for toile in plan.toiles:
        seen = "; ".join(f"{each.seen.value} at the {each.at}" for each in toile.observations)
        of = f", of {toile.cloth}" if toile.cloth else ""
        said.append(f"Toile {toile.number}{of}, sewn to the {toile.sewn_to}: {seen or 'nothing was written down'}.")
    return Decided(plan.name, tuple(sentence for sentence in said if sentence))


def _nth(number: int) -> str:
    words = ("first", "second", "third", "fourth", "fifth")
    return words[number - 1] if 1 <= number <= len(words) else str(number)


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
    return Record(one.name, whose(one), (*yarns, *cloths), tuple(pieces), decided(derived), one.again)


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
