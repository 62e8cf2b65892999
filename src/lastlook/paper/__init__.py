"""Sewing-pattern pieces: drafted, taken in, altered, trued, fitted; a piece never changes in place."""

from lastlook.paper.alter import ALTERATIONS, Alteration, alter, read_alteration, read_words, write_alteration
from lastlook.paper.as_json import as_json, piece_json, seam_json
from lastlook.paper.draft import KINDS, PARTS, WORDS, Given, draft, read_given, unknown_word
from lastlook.paper.drafted import Drafted
from lastlook.paper.easing import UNKNOWN, Easing, easing_of
from lastlook.paper.in_words import in_words
from lastlook.paper.paper_piece import Level, Notch, PaperPiece
from lastlook.paper.seam_edge import Dart, SeamEdge, Use
from lastlook.paper.seams import Counted, Fullness, Join
from lastlook.paper.set_of import set_of
from lastlook.paper.take import Drawn, Naming, Outline, Taken, piece_of, read_svg, write_svg
from lastlook.paper.truing import closed, true, trued

__all__ = [
    "ALTERATIONS",
    "KINDS",
    "PARTS",
    "UNKNOWN",
    "WORDS",
    "Alteration",
    "Counted",
    "Dart",
    "Drafted",
    "Drawn",
    "Easing",
    "Fullness",
    "Given",
    "Join",
    "Level",
    "Naming",
    "Notch",
    "Outline",
    "PaperPiece",
    "SeamEdge",
    "Taken",
    "Use",
    "alter",
    "as_json",
    "closed",
    "draft",
    "easing_of",
    "in_words",
    "piece_json",
    "piece_of",
    "read_alteration",
    "read_given",
    "read_svg",
    "read_words",
    "seam_json",
    "set_of",
    "true",
    "trued",
    "unknown_word",
    "write_alteration",
    "write_svg",
]
