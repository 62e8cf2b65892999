"""The cupboard: what is at hand, in sentences, with what it is enough for and why."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from lastlook.finding import Finding
from lastlook.outfit import Outfit, Part
from lastlook.quantity import Missing, Spread, Units, write_length, write_weight
from lastlook.stock import Cloth, Notion, Swatch, Yarn
from lastlook.web.page import framed, number_of, room_of
from lastlook.web.room import Desk

YARD_M = 0.9144


@dataclass(frozen=True)
class Asked:
    """A fact that the shelf asks for: its path, the label, and an example."""

    fact: str
    label: str
    example: str


@dataclass(frozen=True)
class Lies:
    """One thing in the cupboard."""

    name: str
    key: str
    """The word under which it stands in the document."""
    is_of: str
    """'Yarn', 'Cloth', 'Swatch', 'Notion'."""
    sentences: tuple[str, ...]
    uses: tuple[str, ...]
    """The garments that are to come out of it, as 'the pullover'."""
    part: Part | None
    """What it answers to 'is there enough?'."""
    asks: tuple[Asked, ...]
    findings: tuple[Finding, ...]


def show(request: Request) -> Response:
    """Show everything at hand."""
    desk = room_of(request).desk(number_of(request))
    things = [
        *(_yarn(desk, one) for one in desk.outfit.yarns),
        *(_swatch(desk, one) for one in desk.outfit.swatches),
        *(_cloth(desk, one) for one in desk.outfit.cloths),
        *(_notion(desk, one) for one in desk.outfit.notions),
    ]
    told = {finding for thing in things for finding in thing.findings}
    loose = [one for one in desk.outfit.findings if (one.where.fact or "").startswith("stock") and one not in told]
    return framed(request, "stock/page.html", desk, things=things, loose=loose, unswatched=_unswatched(desk.outfit))


def title(name: str) -> str:
    """Return a name as a heading has it."""
    return name[:1].upper() + name[1:].replace("-", " ").replace("_", " ")


def _thing(desk: Desk, entry: tuple[str, str], sentences: list[str], asks: tuple[tuple[str, str, str], ...]) -> Lies:
    kind, name = entry
    at = f"stock.{kind}.{name}"
    part = next((part for part in desk.verdict.enough.parts if part.subject == title(name)), None)
    mine = [one for one in desk.outfit.findings if (one.where.fact or "").startswith(at)]
    mine += [one for one in (part.findings if part else ()) if one not in mine]
    return Lies(
        title(name),
        name,
        kind.capitalize(),
        tuple(one for one in sentences if one),
        _uses(desk.outfit, name),
        part,
        tuple(Asked(f"{at}.{key}", label, example) for key, label, example in asks),
        tuple(mine),
    )


def _yarn(desk: Desk, one: Yarn) -> Lies:
    told = [
        "How much there is is not known."
        if isinstance(one.grams, Missing)
        else f"{_grams(one.grams)} at hand"
        + ("." if isinstance(one.metres, Missing) else f", about {_run(one.metres.best, desk.outfit)} long."),
        f"{one.fibre.capitalize()}." if one.fibre else "",
        f"{one.state.capitalize()}." if one.state else "",
        "The lot stays whole." if one.keep_whole else "",
    ]
    asks = (
        ("grams", "All of it weighs", "430 g"),
        ("balls", "or so many balls", "8"),
        ("ball", "a ball being", "2 oz = 170 m"),
        ("metres_per_100g", "Metres in 100 g", "300"),
        ("fibre", "Of", "wool"),
        ("state", "In what state", "old, of one lot"),
        ("keep_whole", "Keep the lot whole (yes or no)", "yes"),
    )
    return _thing(desk, ("yarn", one.name), told, asks)


def _swatch(desk: Desk, one: Swatch) -> Lies:
    gauge, units = one.gauge, desk.outfit.manner.units
    per = write_length(100.0, units)
    rows = "" if isinstance(gauge.rows, Missing) else f" and {gauge.rows.best:.1f} rows"
    told = [
        f"{one.stitches:g} stitches over {write_length(one.width_mm, units)}: "
        f"{gauge.stitches.best:.1f} stitches{rows} in {per}.",
        "" if isinstance(one.grams, Missing) else f"Its weight: {_grams(one.grams)}.",
        {True: "Washed and dried.", False: "Not washed yet.", None: "Whether it was washed is not said."}[one.washed],
    ]
    asks = (
        ("stitches", "Stitches", "33"),
        ("width", "over", "14 cm"),
        ("rows", "Rows", "44"),
        ("height", "over", "14 cm"),
        ("grams", "It weighs", "9.5 g"),
        ("scale", "on a scale that shows", "0.1 g"),
        ("washed", "Washed (yes or no)", "yes"),
    )
    return _thing(desk, ("swatch", one.name), told, asks)


def _cloth(desk: Desk, one: Cloth) -> Lies:
    units = desk.outfit.manner.units

    def long(mm: float) -> str:
        return write_length(mm, units)

    told = [
        f"{long(one.width_mm)} wide and {long(one.length_mm)} long" + (f", {one.fibre}." if one.fibre else "."),
        "It has a nap: every piece lies the same way up." if one.nap == "one way" else "",
        *(
            f"A {flaw.what}, {long(flaw.width_mm)} by {long(flaw.length_mm)}, lies {long(flaw.across_mm)} from the "
            f"left selvedge and {long(flaw.along_mm)} from the cut end."
            for flaw in one.flaws
        ),
        "What it loses in the wash is not known." if isinstance(one.shrinkage, Missing) else "",
    ]
    asks = (
        ("width", "Wide", "140 cm"),
        ("length", "Long", "160 cm"),
        ("selvedge", "Each selvedge", "1 cm"),
        ("washed", "Washed (yes or no)", "yes"),
        ("shrinkage", "It shrank by", "4 %"),
        ("nap", "Nap (none or one way)", "one way"),
        ("repeat_across", "Its pattern repeats across every", "6 cm"),
        ("repeat_along", "and along every", "8 cm"),
        ("fibre", "Of", "wool"),
    )
    return _thing(desk, ("cloth", one.name), told, asks)


def _notion(desk: Desk, one: Notion) -> Lies:
    units = desk.outfit.manner.units
    count = f"{one.count} of them" if one.count is not None else "How many there are is not said"
    long = f", {write_length(one.length_mm, units)} long" if one.length_mm is not None else ""
    told = [f"{one.kind.capitalize()}: {count}{long}." + (f" {one.colour.capitalize()}." if one.colour else "")]
    return _thing(
        desk,
        ("notion", one.name),
        told,
        (("count", "How many", "6"), ("length", "Long", "20 cm"), ("diameter", "Across", "15 mm")),
    )


def _run(metres: float, outfit: Outfit) -> str:
    """Return how long a yarn is, in yards where the tape shows inches."""
    return f"{metres / YARD_M:.0f} yards" if outfit.manner.units is Units.INCHES else f"{metres:.0f} m"


def _grams(grams: Spread) -> str:
    if grams.plus_minus < max(1.0, grams.best * 0.01):
        return write_weight(grams.best)
    return f"About {write_weight(grams.best)} (between {write_weight(grams.low)} and {write_weight(grams.high)})"


def _uses(outfit: Outfit, name: str) -> tuple[str, ...]:
    knitted = [one.name for one in outfit.knittings if one.yarn == name]
    return tuple(f"the {one}" for one in [*knitted, *(one.name for one in outfit.sewings if one.cloth == name)])


def _unswatched(outfit: Outfit) -> list[tuple[str, str]]:
    """Return each garment whose swatch is still to be knitted, with the name that swatch will have."""
    return [
        (one.name, one.swatch or f"{one.name}-square") for one in outfit.knittings if outfit.swatch(one.swatch) is None
    ]
