"""Darts made narrower, wider, longer, shorter, moved, split, joined, removed or added."""

from lastlook.paper.alter.dart.shape import DartLength, DartMove, DartWidth
from lastlook.paper.alter.dart.split import DartJoin, DartSplit
from lastlook.paper.alter.dart.takeaway import DartAdd, DartRemove

__all__ = ["DartAdd", "DartJoin", "DartLength", "DartMove", "DartRemove", "DartSplit", "DartWidth"]
