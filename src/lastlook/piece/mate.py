"""Two edges that are joined, with how much they may differ."""

from __future__ import annotations

from dataclasses import dataclass

from lastlook.piece.edge import EdgeName, Unit


@dataclass(frozen=True)
class Mate:
    """Edge `a` is joined to edge `b`."""

    a: EdgeName
    b: EdgeName
    unit: Unit
    allowed: float = 0.0
    """How much the two may differ and still be eased together, in `unit`."""
    exact_within: float = 0.0
    """A difference up to this, in `unit`, is no difference: a row where one side must bind off later."""
    on_purpose: bool = False
    """Whether the edge was meant to be longer: a gathered cap, an eased back."""
