"""A small needle machine: it works instructions row by row, in one size, and keeps every count."""

from lastlook.knit.needle.chooser import Chooser, Option, Point
from lastlook.knit.needle.hands import Hands, work_piece
from lastlook.knit.needle.live import Event, Live, Row
from lastlook.knit.needle.parts.ending import settle_in
from lastlook.knit.needle.parts.twin import garments
from lastlook.knit.needle.sight import may_move
from lastlook.knit.needle.trouble import Trouble

__all__ = [
    "Chooser",
    "Event",
    "Hands",
    "Live",
    "Option",
    "Point",
    "Row",
    "Trouble",
    "garments",
    "may_move",
    "settle_in",
    "work_piece",
]
