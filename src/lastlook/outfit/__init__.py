"""The whole undertaking and its three questions."""

from lastlook.outfit.answer import Answer, Answered, LastLook, Part, Step, Verdict, within
from lastlook.outfit.demo import demo
from lastlook.outfit.derive import Derived, derive
from lastlook.outfit.fits import fit_table
from lastlook.outfit.garment.knitted import Knitted
from lastlook.outfit.garment.level import Level, comparison
from lastlook.outfit.garment.sewn import Sewn, draft
from lastlook.outfit.garment.skirt import wider_sides
from lastlook.outfit.garment.with_pieces import with_pieces
from lastlook.outfit.garment.would_fit import WouldFit, would_fit
from lastlook.outfit.hands.pace import Left, Pace, left, pace
from lastlook.outfit.hands.ways import Comes, Way, ways_of
from lastlook.outfit.lay_again import lay_again, needs_laying, with_lay
from lastlook.outfit.outfit import Ease, Knitting, MadePiece, Manner, Outfit, Sewing, Sitting
from lastlook.outfit.taken import (
    FILES,
    Told,
    garment_of,
    outline_of,
    read_envelope_words,
    read_piece_words,
    runs_named,
    shapes,
    taken_in,
)
from lastlook.outfit.verdict import verdict, verdict_json
from lastlook.outfit.written.change import change, path_of
from lastlook.outfit.written.document import MAIN, Document, document, is_safe, pack, unpack
from lastlook.outfit.written.read import UNREADABLE, read
from lastlook.outfit.written.read_log import minutes_of
from lastlook.outfit.written.read_photographs import Photograph
from lastlook.outfit.written.read_taken import TakenPiece

__all__ = [
    "FILES",
    "MAIN",
    "UNREADABLE",
    "Answer",
    "Answered",
    "Comes",
    "Derived",
    "Document",
    "Ease",
    "Knitted",
    "Knitting",
    "LastLook",
    "Left",
    "Level",
    "MadePiece",
    "Manner",
    "Outfit",
    "Pace",
    "Part",
    "Photograph",
    "Sewing",
    "Sewn",
    "Sitting",
    "Step",
    "TakenPiece",
    "Told",
    "Verdict",
    "Way",
    "WouldFit",
    "change",
    "comparison",
    "demo",
    "derive",
    "document",
    "draft",
    "fit_table",
    "garment_of",
    "is_safe",
    "lay_again",
    "left",
    "minutes_of",
    "needs_laying",
    "outline_of",
    "pace",
    "pack",
    "path_of",
    "read",
    "read_envelope_words",
    "read_piece_words",
    "runs_named",
    "shapes",
    "taken_in",
    "unpack",
    "verdict",
    "verdict_json",
    "ways_of",
    "wider_sides",
    "with_lay",
    "with_pieces",
    "within",
    "would_fit",
]
