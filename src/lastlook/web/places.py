"""The places of an outfit that the maker goes between, in the order in which the work goes."""

from __future__ import annotations

from urllib.parse import quote

from lastlook.outfit import Outfit


def of(outfit: Outfit, at: str) -> list[tuple[str, str]]:
    """Return the name and address of every screen this outfit has."""
    out = [("Outfit", at)]
    out += [(_named("Leaflet", one.name, len(outfit.knittings)), leaflet(at, one.name)) for one in outfit.knittings]
    out += [("Wearer", f"{at}/wearer"), ("Cupboard", f"{at}/cupboard")]
    out += [(one.name.replace("_", " ").capitalize(), sewing(at, one.name)) for one in outfit.sewings]
    many = len(outfit.sewings)
    out += [(_named("Cutting table", one.name, many), table(at, one.name)) for one in outfit.sewings]
    out += [("Last look", f"{at}/last-look"), ("Sheets", f"{at}/sheets")]
    out += [(_named("Needles", one.name, len(outfit.knittings)), needles(at, one.name)) for one in outfit.knittings]
    return out


def leaflet(at: str, garment: str) -> str:
    """Return where a garment's leaflet is shown."""
    return f"{at}/leaflet/{quote(garment, safe='')}"


def sewing(at: str, garment: str) -> str:
    """Return where a garment's paper pieces are shown."""
    return f"{at}/paper/{quote(garment, safe='')}"


def table(at: str, garment: str) -> str:
    """Return where a garment's lay is shown."""
    return f"{at}/table/{quote(garment, safe='')}"


def needles(at: str, garment: str) -> str:
    """Return where a garment is knitted row by row."""
    return f"{at}/needles/{quote(garment, safe='')}"


def _named(word: str, name: str, many: int) -> str:
    return word if many == 1 else f"{word}: {name.replace('_', ' ')}"
