"""The outline of a worked piece in millimetres, from its rows and a gauge."""

from __future__ import annotations

from lastlook.geometry import Path
from lastlook.knit.worked import WorkedPiece
from lastlook.quantity import Gauge


def outline(piece: WorkedPiece, gauge: Gauge) -> Path | None:
    """Return the closed outline of a piece in mm, counter-clockwise; None where it has no rows."""
    return None
