"""May a piece lie here, and what is in the way? Everything that forbids a place, as convex shapes."""

from lastlook.lay.clash.board import Board
from lastlook.lay.clash.job import Job, Variant, placement_of
from lastlook.lay.clash.plan import Plan, plans

__all__ = ["Board", "Job", "Plan", "Variant", "placement_of", "plans"]
