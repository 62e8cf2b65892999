"""Sewing-pattern pieces: drafted, taken in, altered, trued, fitted; a piece never changes in place."""

from lastlook.paper.as_json import as_json, piece_json, seam_json
from lastlook.paper.draft import KINDS, draft
from lastlook.paper.drafted import Drafted
from lastlook.paper.easing import UNKNOWN, Easing, easing_of
from lastlook.paper.paper_piece import Level, Notch, PaperPiece
from lastlook.paper.seam_edge import Dart, SeamEdge, Use
from lastlook.paper.seams import Counted, Fullness, Join
from lastlook.paper.take import write_svg

__all__ = [
    "KINDS",
    "UNKNOWN",
    "Counted",
    "Dart",
    "Drafted",
    "Easing",
    "Fullness",
    "Join",
    "Level",
    "Notch",
    "PaperPiece",
    "SeamEdge",
    "Use",
    "as_json",
    "draft",
    "easing_of",
    "piece_json",
    "seam_json",
    "write_svg",
]
