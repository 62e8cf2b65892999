"""One thing the program has to say: what, where, why it can't be, and what to try."""

from lastlook.finding.finding import Certainty, Cure, Edit, Finding
from lastlook.finding.say import as_json, say
from lastlook.finding.text import SourceText, Span
from lastlook.finding.where import NOWHERE, Where

__all__ = ["NOWHERE", "Certainty", "Cure", "Edit", "Finding", "SourceText", "Span", "Where", "as_json", "say"]
