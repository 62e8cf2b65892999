"""The waist edge raised, lowered or tilted, by itself or for a figure."""

from lastlook.paper.alter.waist_edge.figure import FullAbdomen, FullSeat, HighHip, SwayBack
from lastlook.paper.alter.waist_edge.waist import RaiseWaist, TiltWaist

__all__ = ["FullAbdomen", "FullSeat", "HighHip", "RaiseWaist", "SwayBack", "TiltWaist"]
