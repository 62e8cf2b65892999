"""Knitting on paper: rows gathered into lines, boxes to tick, and the pages of one piece."""

from lastlook.sheet.knitting.boxes import boxes
from lastlook.sheet.knitting.gather import RowLine, gather
from lastlook.sheet.knitting.piece_pages import piece_blocks
from lastlook.sheet.knitting.row_words import one_size, row_said, written

__all__ = ["RowLine", "boxes", "gather", "one_size", "piece_blocks", "row_said", "written"]
