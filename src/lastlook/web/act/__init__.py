"""What is done on the screens, as against what is shown on them."""

from lastlook.web.act.begin import add_leaflet, add_sewing, add_stock, begin, mark_flaw, plain
from lastlook.web.act.changes import change, redo, undo
from lastlook.web.act.made import off_the_needles, pin, sat
from lastlook.web.act.mailing import mail, receive
from lastlook.web.act.strip import WAYS, lay_on
from lastlook.web.act.toile import put_on, seen

__all__ = [
    "WAYS",
    "add_leaflet",
    "add_sewing",
    "add_stock",
    "begin",
    "change",
    "lay_on",
    "mail",
    "mark_flaw",
    "off_the_needles",
    "pin",
    "plain",
    "put_on",
    "receive",
    "redo",
    "sat",
    "seen",
    "undo",
]
