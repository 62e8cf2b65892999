"""Everything that follows from an outfit, worked out once: garments read, drafted, laid and forecast."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.outfit.garment.knitted import Knitted, knitted
from lastlook.outfit.garment.sewn import Sewn, sewn
from lastlook.outfit.outfit import Outfit


@dataclass(frozen=True)
class Derived:
    """An outfit with what its garments come to."""

    outfit: Outfit
    knitted: tuple[Knitted, ...]
    sewn: tuple[Sewn, ...]


def derive(outfit: Outfit) -> Derived:
    """Return everything that follows from an outfit."""
    return Derived(
        outfit,
        tuple(knitted(outfit, plan) for plan in outfit.knittings),
        tuple(sewn(outfit, plan) for plan in outfit.sewings),
    )
