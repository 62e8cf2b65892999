"""A reading worked: from a leaflet's text to every row of every piece, with the proofs."""

from lastlook.knit.contract import as_json
from lastlook.knit.outline import outline
from lastlook.knit.read import read
from lastlook.knit.reading import LeafletReading, SizeReading
from lastlook.knit.worked import Act, Ended, Shaping, Side, Stated, WorkedPiece, WorkedRow
from lastlook.knit.written import English, Hand, Manner, Written, write, written

__all__ = [
    "Act",
    "Ended",
    "English",
    "Hand",
    "LeafletReading",
    "Manner",
    "Shaping",
    "Side",
    "SizeReading",
    "Stated",
    "WorkedPiece",
    "WorkedRow",
    "Written",
    "as_json",
    "outline",
    "read",
    "write",
    "written",
]
