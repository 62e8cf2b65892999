"""The places of an outfit that the maker goes between, in the order in which the work goes."""

from __future__ import annotations

from urllib.parse import quote

from lastlook.finding import Finding
from lastlook.outfit import Derived, Outfit

OWN_WORDS = frozenset({"outfit-unread", "fact-unknown", "stock-key-unknown"})
"""Kinds of finding that are settled in the outfit's own file."""


def of(outfit: Outfit, at: str) -> list[tuple[str, str]]:
    """Return the name and address of every screen this outfit has."""
    out = [("Outfit", at)]
    out += [(_named("Leaflet", one.name, len(outfit.knittings)), leaflet(at, one.name)) for one in outfit.knittings]
    out += [("Wearer", f"{at}/wearer"), ("Cupboard", f"{at}/cupboard")]
    out += [(one.name.replace("_", " ").capitalize(), sewing(at, one.name)) for one in outfit.sewings]
    many = len(outfit.sewings)
    mock_up = "Toile" if outfit.manner.english == "UK" else "Muslin"
    out += [(_named(mock_up, one.name, many), toile(at, one.name)) for one in outfit.sewings]
    out += [(_named("Cutting table", one.name, many), table(at, one.name)) for one in outfit.sewings]
    out += [("Last look", f"{at}/last-look"), ("Sheets", f"{at}/sheets"), ("Record", f"{at}/record")]
    out += [(_named("Needles", one.name, len(outfit.knittings)), needles(at, one.name)) for one in outfit.knittings]
    out.append(("Add", f"{at}/add"))
    return out


def leads_to(finding: Finding, derived: Derived, at: str) -> tuple[str, str] | None:
    """Return the name and address of the screen on which a finding is settled, None where there is none."""
    outfit = derived.outfit
    fact = finding.where.fact or ""
    if finding.kind in OWN_WORDS:
        return "the outfit's own words", f"{at}/facts"
    root, _, rest = fact.partition(".")
    name, _, key = rest.partition(".")
    if root == "wearer":
        return "the wearer", f"{at}/wearer#m-{rest.removeprefix('measures.')}"
    if root == "stock" or (root == "knitting" and key in ("swatch", "yarn")):
        return "the cupboard", f"{at}/cupboard"
    if root == "sewing" and any(one.name == name for one in outfit.sewings):
        return ("the cutting table", table(at, name)) if key in ("lay", "cloth") else ("the paper", sewing(at, name))
    if root == "knitting" and any(one.name == name for one in outfit.knittings):
        return "the leaflet", leaflet(at, name)
    if finding.where.span:
        return next(
            (("the leaflet", leaflet(at, one.plan.name)) for one in derived.knitted if finding in one.findings), None
        )
    return None


def leaflet(at: str, garment: str) -> str:
    """Return where a garment's leaflet is shown."""
    return f"{at}/leaflet/{quote(garment, safe='')}"


def sewing(at: str, garment: str) -> str:
    """Return where a garment's paper pieces are shown."""
    return f"{at}/paper/{quote(garment, safe='')}"


def toile(at: str, garment: str) -> str:
    """Return where what was seen on a garment's mock-ups is shown."""
    return f"{at}/toile/{quote(garment, safe='')}"


def table(at: str, garment: str) -> str:
    """Return where a garment's lay is shown."""
    return f"{at}/table/{quote(garment, safe='')}"


def needles(at: str, garment: str) -> str:
    """Return where a garment is knitted row by row."""
    return f"{at}/needles/{quote(garment, safe='')}"


def _named(word: str, name: str, many: int) -> str:
    return word if many == 1 else f"{word}: {name.replace('_', ' ')}"
