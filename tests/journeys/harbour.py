"""The demo outfit with a skirt of a length of its own, so that it is drafted whatever else is open."""

from __future__ import annotations

from lastlook import outfit
from lastlook.finding import Edit


def harbour(*edits: Edit) -> outfit.Document:
    """Return the demo outfit with a skirt of 24 inches, and whatever else is edited."""
    return outfit.change(outfit.demo(), [Edit("sewing.skirt.options.length", "24 in"), *edits])
