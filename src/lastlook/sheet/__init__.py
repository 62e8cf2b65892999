"""Anything printed: values first, then bytes.

*Sheets*: `booklet`, `cutting`, `tiles`, `last_look`, each a function from plain values to a `Sheet` of pages.
*Drawings*: `draw_knitted`, `draw_table`, `picture` of paper pieces, for screens too. *Bytes*: `pdf`, `svg`.
"""

from lastlook.sheet.booklet import Knitting, ToKnit, booklet
from lastlook.sheet.cutting import Cutting, cutting
from lastlook.sheet.draw.knitted import Knitted, draw_knitted
from lastlook.sheet.draw.laid_out import table_of
from lastlook.sheet.draw.paper import picture
from lastlook.sheet.draw.table import Laid, Table, draw_table
from lastlook.sheet.last_look import Look, last_look
from lastlook.sheet.layout.page import Page, Paper, Sheet
from lastlook.sheet.manner import English, Hand, Manner
from lastlook.sheet.mark import Drawing
from lastlook.sheet.outfit_sheets import Printed, gauge_words, manner_of, sheets_of
from lastlook.sheet.pdf import pdf
from lastlook.sheet.svg import page_svg, svg
from lastlook.sheet.tiles import Pattern, tiles
from lastlook.sheet.type import FONTS

__all__ = [
    "FONTS",
    "Cutting",
    "Drawing",
    "English",
    "Hand",
    "Knitted",
    "Knitting",
    "Laid",
    "Look",
    "Manner",
    "Page",
    "Paper",
    "Pattern",
    "Printed",
    "Sheet",
    "Table",
    "ToKnit",
    "booklet",
    "cutting",
    "draw_knitted",
    "draw_table",
    "gauge_words",
    "last_look",
    "manner_of",
    "page_svg",
    "pdf",
    "picture",
    "sheets_of",
    "svg",
    "table_of",
    "tiles",
]
