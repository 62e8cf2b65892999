"""A lay as the JSON that is printed: the very numbers that were proven."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from lastlook.finding import as_json as finding_as_json
from lastlook.lay.choices import Choice, Fitted
from lastlook.lay.placement import Lay, Placement


def as_json(
    lay: Lay, *, seconds: float | None = None, choices: Sequence[Choice] = (), longer: Fitted | None = None
) -> dict[str, Any]:
    """Return a lay as plain values; coordinates in mm to five places, angles as they are."""
    return {
        "fits": lay.fits,
        "proven": lay.proven,
        "left_over": [
            {"width_mm": one.width_mm, "length_mm": one.length_mm, "x": one.x, "y": one.y} for one in lay.left_over
        ],
        "used_length_mm": round(lay.used_length_mm, 4),
        "used_share": round(lay.used_share, 5),
        "placements": [placement_as_json(one) for one in lay.placements],
        "choices": [_choice(one) for one in choices],
        "longer": _longer(longer),
        "findings": [finding_as_json(one) for one in lay.findings],
        "seconds": seconds,
        "seed": lay.seed,
        "passes": lay.passes,
    }


def _choice(one: Choice) -> dict[str, Any]:
    """Return one choice with the lay that proves it."""
    return {
        "say": one.concession.say,
        "loss": one.concession.loss,
        "used_length_mm": round(one.lay.used_length_mm, 4),
        "proven": one.lay.proven,
        "placements": [placement_as_json(placed) for placed in one.lay.placements],
    }


def _longer(one: Fitted | None) -> dict[str, Any] | None:
    """Return by how much the pieces could be longer, with the lay that proves it; None where nobody asked."""
    if one is None:
        return None
    placements = [placement_as_json(placed) for placed in one.lay.placements]
    return {"by_mm": round(one.amount_mm, 4), "proven": one.lay.proven, "placements": placements}


def placement_as_json(one: Placement) -> dict[str, Any]:
    """Return one placement as plain values; a part of a pieced copy brings its own outline."""
    out: dict[str, Any] = {
        "id": one.id, "copy": one.copy, "part": one.part, "x": one.x, "y": one.y,
        "angle_deg": one.angle_deg, "mirrored": one.mirrored, "layer": one.layer,
    }  # fmt: skip
    if one.outline is not None:
        out["outline"] = [[x, y] for x, y in one.outline]
    return out


def read_placements(value: Any) -> tuple[Placement, ...] | None:
    """Return placements from the JSON that `as_json` writes, None where it is something else."""
    out = []
    try:
        for one in value:
            outline = one.get("outline")
            out.append(
                Placement(
                    str(one["id"]), int(one.get("copy", 1)), float(one["x"]), float(one["y"]),
                    float(one.get("angle_deg", 0)), bool(one.get("mirrored", False)), str(one.get("layer", "one")),
                    int(one.get("part", 1)), tuple((float(x), float(y)) for x, y in outline) if outline else None,
                )
            )  # fmt: skip
    except (AttributeError, KeyError, TypeError, ValueError, OverflowError):
        return None
    return tuple(out)
