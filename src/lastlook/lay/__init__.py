"""Paper pieces on a cloth: a search for a lay, and a judge that proves it."""

from lastlook.lay.cloth import Cloth, Fold, Outline, Point, Repeat
from lastlook.lay.placement import BOTH, ONE, Judgement, Lay, LeftOver, Placement, Progress
from lastlook.lay.wanted import Match, Pieced, Problem, Wanted

__all__ = [
    "BOTH",
    "ONE",
    "Cloth",
    "Fold",
    "Judgement",
    "Lay",
    "LeftOver",
    "Match",
    "Outline",
    "Pieced",
    "Placement",
    "Point",
    "Problem",
    "Progress",
    "Repeat",
    "Wanted",
]
