"""Knitting on paper: rows gathered into lines, boxes to tick, and the pages of one piece."""

from lastlook.sheet.knitting.boxes import boxes
from lastlook.sheet.knitting.gather import RowLine, gather
from lastlook.sheet.knitting.piece_pages import piece_blocks

__all__ = ["RowLine", "boxes", "gather", "piece_blocks"]
