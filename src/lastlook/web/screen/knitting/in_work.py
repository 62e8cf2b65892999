"""The gauge of the work in progress: counted on the needles, held against what was planned, taken if she wants."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.requests import Request

from lastlook.finding import Edit, Finding
from lastlook.knit.compose.alter import gauge_drift
from lastlook.outfit import Knitted
from lastlook.quantity import Missing
from lastlook.stock import read_swatch

COUNTED = ("stitches", "width", "rows", "height")
LONGEST = 40


@dataclass(frozen=True)
class Counted:
    """What was counted on the work, and what it comes to."""

    typed: dict[str, str]
    findings: tuple[Finding, ...]
    is_as_planned: bool
    edits: tuple[Edit, ...]
    """Take it as the gauge of this garment; nothing where it can't be read."""


def counted(request: Request, one: Knitted, piece: str) -> Counted | None:
    """Return what a gauge counted on the needles comes to, None where none was."""
    typed = {key: request.query_params.get(key, "").strip()[:LONGEST] for key in COUNTED}
    if not any(typed.values()):
        return None
    name = f"{one.plan.name}-on-the-needles"
    swatch, slips = read_swatch(name, {key: text for key, text in typed.items() if text})
    if isinstance(swatch, Missing):
        return Counted(typed, slips, False, ())
    planned = one.working_gauge
    drift = gauge_drift(planned, swatch.gauge, piece) if planned else None
    facts = [Edit(f"stock.swatch.{name}.{key}", text) for key, text in typed.items() if text]
    edits = (*facts, Edit(f"stock.swatch.{name}.washed", "no"), Edit(f"knitting.{one.plan.name}.swatch", name))
    return Counted(typed, (drift,) if drift else (), planned is not None and drift is None, edits)
