"""Anything printed: values first, then bytes.

*Sheets*: `booklet`, `pair`, `cutting`, `tiles`, `last_look`, `schedule`, `record`, each from plain
values to a `Sheet` of pages.
*Drawings*, for screens too: `draw_knitted`, `draw_blocking`, `draw_row`, `draw_table`, `draw_hoops`, `draw_overlay`,
`picture` of paper pieces. *Bytes*: `pdf`, `svg`. `sheets_of` gives every file of an outfit.
"""

from lastlook.sheet.booklet import Knitting, ToKnit, booklet
from lastlook.sheet.cutting import Cutting, cutting
from lastlook.sheet.draw.blocking import draw_blocking
from lastlook.sheet.draw.foreign import draw_runs
from lastlook.sheet.draw.hoops import Hoop, draw_hoops
from lastlook.sheet.draw.knitted import Knitted, draw_knitted
from lastlook.sheet.draw.laid_out import table_of
from lastlook.sheet.draw.needle import draw_row
from lastlook.sheet.draw.overlay import Change, change_words, changes, draw_overlay
from lastlook.sheet.draw.paper import picture
from lastlook.sheet.draw.table import Laid, Table, draw_table
from lastlook.sheet.knitting.row_words import one_size, row_said, written
from lastlook.sheet.last_look import Look, last_look
from lastlook.sheet.layout.page import Page, Paper, Sheet
from lastlook.sheet.manner import English, Hand, Manner
from lastlook.sheet.mark import Drawing
from lastlook.sheet.pair import Pair, pair
from lastlook.sheet.pdf import pdf
from lastlook.sheet.record import Came, Decided, Material, Record, record
from lastlook.sheet.schedule import Schedule, Task, schedule
from lastlook.sheet.svg import page_svg, svg
from lastlook.sheet.tiles import Pattern, tiles
from lastlook.sheet.type import FONTS
from lastlook.sheet.whole import Printed, gauge_words, manner_of, pairs_of, record_of, sheets_of

__all__ = [
    "FONTS",
    "Came",
    "Change",
    "Cutting",
    "Decided",
    "Drawing",
    "English",
    "Hand",
    "Hoop",
    "Knitted",
    "Knitting",
    "Laid",
    "Look",
    "Manner",
    "Material",
    "Page",
    "Pair",
    "Paper",
    "Pattern",
    "Printed",
    "Record",
    "Schedule",
    "Sheet",
    "Table",
    "Task",
    "ToKnit",
    "booklet",
    "change_words",
    "changes",
    "cutting",
    "draw_blocking",
    "draw_hoops",
    "draw_knitted",
    "draw_overlay",
    "draw_row",
    "draw_runs",
    "draw_table",
    "gauge_words",
    "last_look",
    "manner_of",
    "one_size",
    "page_svg",
    "pair",
    "pairs_of",
    "pdf",
    "picture",
    "record",
    "record_of",
    "row_said",
    "schedule",
    "sheets_of",
    "svg",
    "table_of",
    "tiles",
    "written",
]
