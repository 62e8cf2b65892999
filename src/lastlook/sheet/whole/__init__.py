"""A whole outfit on paper: every sheet that can be printed, and what can't be yet."""

from lastlook.sheet.whole.files import Printed, sheets_of
from lastlook.sheet.whole.kept import record_of
from lastlook.sheet.whole.knitted import gauge_words, pairs_of
from lastlook.sheet.whole.naming import manner_of

__all__ = ["Printed", "gauge_words", "manner_of", "pairs_of", "record_of", "sheets_of"]
