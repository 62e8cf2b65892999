"""How much, how sure, from where: the bottom of everything, which imports nothing of ours."""

from lastlook.quantity.count import Rows, Stitches
from lastlook.quantity.gauge import Gauge, gauge_of
from lastlook.quantity.known import Missing, Unread
from lastlook.quantity.length import MM_PER_INCH, Units, read_length, write_length
from lastlook.quantity.origin import Origin
from lastlook.quantity.spread import Spread, exactly, give_or_take
from lastlook.quantity.weight import read_weight, write_weight

__all__ = [
    "MM_PER_INCH",
    "Gauge",
    "Missing",
    "Origin",
    "Rows",
    "Spread",
    "Stitches",
    "Units",
    "Unread",
    "exactly",
    "gauge_of",
    "give_or_take",
    "read_length",
    "read_weight",
    "write_length",
    "write_weight",
]
