"""Rows told stitch by stitch: put in order, worked, proven, repeated, continued in the same manner."""

from lastlook.knit.needle.rows.again import repeat
from lastlook.knit.needle.rows.heel import is_turning, turn_on
from lastlook.knit.needle.rows.manner import progress
from lastlook.knit.needle.rows.order import in_order
from lastlook.knit.needle.rows.row import attempt, close, hold_rest, row, set_aside

__all__ = [
    "attempt",
    "close",
    "hold_rest",
    "in_order",
    "is_turning",
    "progress",
    "repeat",
    "row",
    "set_aside",
    "turn_on",
]
