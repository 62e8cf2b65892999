"""Sewing-pattern pieces: drafted, taken in, altered, trued, fitted; a piece never changes in place."""

from lastlook.paper.paper_piece import Level, Notch, PaperPiece
from lastlook.paper.seam_edge import Dart, SeamEdge, Use

__all__ = ["Dart", "Level", "Notch", "PaperPiece", "SeamEdge", "Use"]
