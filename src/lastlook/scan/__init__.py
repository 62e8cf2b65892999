"""A photographed or scanned leaflet becomes text, and every word knows its picture."""

from lastlook.scan.check_page import check_page
from lastlook.scan.cut_out import cut_out
from lastlook.scan.engine import is_at_hand
from lastlook.scan.read_pages import read_pages
from lastlook.scan.scanned import Box, Doubtful, Page, Scanned, Word
from lastlook.scan.settle import settle

__all__ = ["Box", "Doubtful", "Page", "Scanned", "Word", "check_page", "cut_out", "is_at_hand", "read_pages", "settle"]
