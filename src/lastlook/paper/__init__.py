"""Sewing-pattern pieces: drafted, taken in, altered, trued, fitted; a piece never changes in place."""

from lastlook.paper.alter import ALTERATIONS, Alteration, alter, read_alteration, read_words, write_alteration
from lastlook.paper.as_json import as_json, piece_json, seam_json
from lastlook.paper.body import body_at, knee_depth_mm
from lastlook.paper.draft import ASSUMED_HIP_DEPTH_MM, KINDS, PARTS, WORDS, Given, draft, read_given, unknown_word
from lastlook.paper.drafted import Drafted
from lastlook.paper.easing import UNKNOWN, Easing, easing_of
from lastlook.paper.girth import girth_near, hem_depth_mm, top_mm
from lastlook.paper.in_words import in_words
from lastlook.paper.paper_piece import Level, Notch, PaperPiece
from lastlook.paper.seam_edge import Dart, SeamEdge, Use
from lastlook.paper.seams import Counted, Fullness, Join
from lastlook.paper.set_of import set_of
from lastlook.paper.take import Drawn, Naming, Outline, Taken, piece_of, read_svg, write_svg
from lastlook.paper.truing import closed, edit, levelled, true, trued

__all__ = [
    "ALTERATIONS",
    "ASSUMED_HIP_DEPTH_MM",
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
    "body_at",
    "closed",
    "draft",
    "easing_of",
    "edit",
    "girth_near",
    "hem_depth_mm",
    "in_words",
    "knee_depth_mm",
    "levelled",
    "piece_json",
    "piece_of",
    "read_alteration",
    "read_given",
    "read_svg",
    "read_words",
    "seam_json",
    "set_of",
    "top_mm",
    "true",
    "trued",
    "unknown_word",
    "write_alteration",
    "write_svg",
]
