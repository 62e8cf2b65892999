"""Why an outline is no piece: it is open, crosses itself, has too few edges, or allowances wider than itself."""

from __future__ import annotations

from collections.abc import Sequence

from lastlook.finding import Certainty, Finding, Where
from lastlook.geometry import Path, Point, distance_mm
from lastlook.paper.seam_edge import SeamEdge
from lastlook.paper.take.outline import JOINED_MM


def alike(name: str, sides: Sequence[SeamEdge]) -> Finding:
    """Return that an outline has too few edges by its names."""
    named = ", ".join(side.name for side in sides)
    return Finding(
        "edges-alike",
        Certainty.PROVEN,
        f"{name} has only {len(sides)} {'edge' if len(sides) == 1 else 'edges'} by its names: {named}.",
        "Neighbours of one name are one edge, and a piece has three edges or more.",
        "Give each edge between two corners its own name.",
        where=Where(piece=name),
    )


def too_wide(name: str, sides: Sequence[SeamEdge]) -> Finding:
    """Return that the allowances are wider than the piece."""
    widths = ", ".join(f"{side.name} {side.allowance_mm:.0f} mm" for side in sides)
    return Finding(
        "allowance-too-wide",
        Certainty.PROVEN,
        f"The allowances of {name} leave no seam line inside its outline.",
        f"Taken off were {widths}.",
        "Look at their unit, or say that the outline is the seam line.",
        where=Where(piece=name),
    )


def opened(name: str, path: Path) -> Finding:
    """Return that an outline does not close."""
    gap = distance_mm(path.start, path.end)
    return Finding(
        "outline-open",
        Certainty.PROVEN,
        f"The outline of {name} does not close: its ends are {gap:.1f} mm apart.",
        f"They lie at {path.start[0]:.0f}, {path.start[1]:.0f} and {path.end[0]:.0f}, {path.end[1]:.0f} mm; up to "
        f"{JOINED_MM} mm is taken as one corner.",
        "Join the ends and take the piece in again.",
        where=Where(piece=name),
    )


def crossing(name: str, spot: Point) -> Finding:
    """Return that an outline crosses itself."""
    return Finding(
        "outline-crosses",
        Certainty.PROVEN,
        f"The outline of {name} crosses itself at {spot[0]:.0f}, {spot[1]:.0f} mm.",
        "A piece has one inside, and nobody could cut this one.",
        "Draw the outline once round, without loops.",
        where=Where(piece=name),
    )
