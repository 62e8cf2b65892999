"""Alterations of paper pieces: frozen values with an inverse, one kind a file, kept in their order."""

from lastlook.paper.alter.allowance import Allowance
from lastlook.paper.alter.alter import alter
from lastlook.paper.alter.alteration import Alteration
from lastlook.paper.alter.dart import DartAdd, DartJoin, DartLength, DartMove, DartRemove, DartSplit, DartWidth
from lastlook.paper.alter.flare import Flare
from lastlook.paper.alter.fold import Refold, Unfold
from lastlook.paper.alter.length import Lengthen
from lastlook.paper.alter.spread import Spread
from lastlook.paper.alter.text import ALTERATIONS, read_alteration, read_words, write_alteration
from lastlook.paper.alter.waist_edge import FullAbdomen, FullSeat, HighHip, RaiseWaist, SwayBack, TiltWaist
from lastlook.paper.alter.width import BandLength, Widen

__all__ = [
    "ALTERATIONS",
    "Allowance",
    "Alteration",
    "BandLength",
    "DartAdd",
    "DartJoin",
    "DartLength",
    "DartMove",
    "DartRemove",
    "DartSplit",
    "DartWidth",
    "Flare",
    "FullAbdomen",
    "FullSeat",
    "HighHip",
    "Lengthen",
    "RaiseWaist",
    "Refold",
    "Spread",
    "SwayBack",
    "TiltWaist",
    "Unfold",
    "Widen",
    "alter",
    "read_alteration",
    "read_words",
    "write_alteration",
]
