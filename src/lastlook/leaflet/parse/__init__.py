"""The grammar: canonical words to instructions, by recursive descent with recovery at the ends of clauses."""

from lastlook.leaflet.parse.body import steps
from lastlook.leaflet.parse.cursor import Cursor

__all__ = ["Cursor", "steps"]
