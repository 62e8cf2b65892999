"""A worked size written down clean, row by row, and read again to be sure."""

from lastlook.knit.written.manner import English, Hand, Manner
from lastlook.knit.written.page import Written, write, written

__all__ = ["English", "Hand", "Manner", "Written", "write", "written"]
