"""Layers of the published apparel convention (ASTM D6673-10): each kind of line has a number.

Numbers 1 to 15 and 80 to 83 as a public summary of the standard lists them (read); the unit in the style's text from
memory.
"""

from __future__ import annotations

LAYERS = {
    "1": "cut",
    "2": "turn point",
    "3": "curve point",
    "4": "notch",
    "5": "grade line",
    "6": "fold",
    "7": "grain",
    "8": "inside",
    "9": "stripe",
    "10": "plaid",
    "11": "cut out",
    "13": "drill",
    "14": "seam",
    "15": "note",
    "80": "notch",
    "81": "notch",
    "82": "notch",
    "83": "notch",
}
"""What each layer's number says, in our words."""
NUMBERS = {"cut": "1", "notch": "4", "fold": "6", "grain": "7", "inside": "8", "seam": "14"}
"""The layer that each kind of line is written on."""
UNIT_WORDS = {"METRIC": 1.0, "ENGLISH": 25.4}
"""What `Units: METRIC` and `Units: ENGLISH` in the style's text mean, in mm."""
