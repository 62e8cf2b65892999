"""Rows told stitch by stitch: put in order, worked, proven, repeated, continued in the same manner."""

from lastlook.knit.needle.rows.again import repeat
from lastlook.knit.needle.rows.manner import crochet_row, progress
from lastlook.knit.needle.rows.order import in_order
from lastlook.knit.needle.rows.row import attempt, close, row

__all__ = ["attempt", "close", "crochet_row", "in_order", "progress", "repeat", "row"]
