"""Getting into the skirt: the zip, the placket, the lap.

The opened waist has to pass over the widest place: waist + twice the zip >= hip + 2 cm, which is necessary and not
sufficient (worked out).
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.finding import Certainty, Finding, Where
from lastlook.quantity import Units, write_length

INCH = 25.4
ZIPS_MM = tuple(round(inches * INCH, 1) for inches in (4, 7, 9, 12, 14, 16, 18, 20, 22, 24))
"""Lengths that are sold (US home-sewing lengths, from memory)."""
BELOW_MM = 30.0
"""The opening ends about 3 cm above the hip line (1-1 1/2 in, common practice, no source)."""
PASS_MM = 20.0
LEAST_MM = {"lapped": 15.0, "centred": 15.0, "hand-picked": 15.0, "placket": 10.0}
"""The allowance that each kind wants at its seam (common practice, no source)."""


@dataclass(frozen=True)
class Opening:
    """How the skirt opens."""

    kind: str
    """'lapped', 'centred' or 'hand-picked' zip, or 'placket'."""
    length_mm: float = 0.0
    at: str = "left side"


@dataclass(frozen=True)
class Over:
    """What has to pass over what: the finished waist over the hip."""

    waist_mm: float
    hip_mm: float
    depth_mm: float
    """Of the hip below the waist."""
    units: Units = Units.CM

    @property
    def needed_mm(self) -> float:
        """Return how long an opening has to be."""
        return opening_needed_mm(self.depth_mm, self.waist_mm, self.hip_mm)

    def shown(self, mm: float) -> str:
        """Return a length as the maker writes it."""
        return write_length(mm, self.units)


def opening_needed_mm(hip_depth_mm: float, waist_mm: float, hip_mm: float) -> float:
    """Return how long an opening has to be: nearly to the hip line, and long enough to pass over the hip.

    A finished waist that is itself larger than the hip and 2 cm needs none.

    >>> opening_needed_mm(200, 729, 970), opening_needed_mm(200, 1019, 970)
    (170.0, 0.0)
    """
    if waist_mm >= hip_mm + PASS_MM:
        return 0.0
    return max(hip_depth_mm - BELOW_MM, (hip_mm + PASS_MM - waist_mm) / 2)


def zip_for_mm(needed_mm: float) -> float | None:
    """Return the shortest zip that is sold and long enough, None where none is.

    >>> zip_for_mm(165)
    177.8
    """
    return next((zip_mm for zip_mm in ZIPS_MM if zip_mm >= needed_mm - 1e-6), None)


def passes(waist_mm: float, opening_mm: float, hip_mm: float) -> bool:
    """Whether the opened waist goes over the hip at all."""
    return waist_mm + 2 * opening_mm >= hip_mm + PASS_MM


def lap_rule(at: str) -> str:
    """Return which side lies on top."""
    return "Front over back, closing towards the back." if "side" in at else "Right over left on women's skirts."


def opening_findings(opening: Opening, over: Over, allowance_mm: float) -> tuple[Finding, ...]:
    """Return what is wrong with an opening in a seam with that allowance."""
    out: list[Finding] = []
    if not passes(over.waist_mm, opening.length_mm, over.hip_mm):
        out.append(_short(opening, over))
    least = LEAST_MM.get(opening.kind, 0.0)
    if allowance_mm < least - 1e-6:
        out.append(_narrow(opening, allowance_mm, least))
    return tuple(out)


def opening_note(over: Over) -> Finding:
    """Return how long an opening a skirt wants to go over the hip, and which zip that is."""
    needed = over.needed_mm
    if not needed:
        return Finding(
            "opening-wanted",
            Certainty.NOTE,
            "The skirt goes over the hip without an opening.",
            f"Its waist measures {over.shown(over.waist_mm)}, the hip {over.shown(over.hip_mm)}.",
            "Open it all the same if it is to be stepped into, or draw it over the head.",
            where=Where(edge="waist"),
        )
    sold = zip_for_mm(needed)
    words = _zip(sold, over) if sold else f"half of it at each side, {over.shown(needed / 2)}"
    return Finding(
        "opening-wanted",
        Certainty.NOTE,
        f"The skirt wants an opening of {over.shown(needed)}: {words}.",
        _why_so_long(over),
        lap_rule("left side"),
        where=Where(edge="side"),
    )


def _zip(sold: float, over: Over) -> str:
    inches = f" ({sold / INCH:.0f} in)" if over.units is Units.CM else ""
    return f"a zip of {over.shown(sold)}{inches}"


def _why_so_long(over: Over) -> str:
    opened = over.shown(over.waist_mm + 2 * over.needed_mm)
    above = over.depth_mm - over.needed_mm
    where = f"{over.shown(abs(above))} {'above' if above > 0 else 'below'}" if abs(above) > 0.5 else "at"
    return f"It ends {where} the hip line; opened, the waist measures {opened} and the hip {over.shown(over.hip_mm)}."


def _short(opening: Opening, over: Over) -> Finding:
    sold = zip_for_mm(over.needed_mm)
    opened = over.waist_mm + 2 * opening.length_mm
    return Finding(
        "opening-short",
        Certainty.PROVEN,
        f"The skirt does not go over the hip: an opening of {over.shown(opening.length_mm)} is too short.",
        f"Opened, the waist measures {over.shown(opened)}; the hip and {over.shown(PASS_MM)} are "
        f"{over.shown(over.hip_mm + PASS_MM)}.",
        f"Take {_zip(sold, over)}." if sold else "Open the skirt at both sides.",
        where=Where(edge=opening.at),
    )


def _narrow(opening: Opening, allowance: float, least: float) -> Finding:
    return Finding(
        "allowance-narrow",
        Certainty.DOUBTFUL,
        f"The allowance at the opening is {allowance:.0f} mm; {_called(opening.kind)} wants {least:.0f} mm.",
        "The tape has to be caught and covered (common practice, no source).",
        f"Cut {least - allowance:.0f} mm more there, or bind the edge.",
        where=Where(edge=opening.at),
    )


def _called(kind: str) -> str:
    return f"a {kind}" if kind == "placket" else f"a {kind} zip"
