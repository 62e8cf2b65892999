"""Paper pieces on a cloth: a search for a lay, and a judge that proves it."""

from lastlook.lay.accept import Accepted, Band, could_be_longer, read_accepted, would_fit
from lastlook.lay.answer import as_json, placement_as_json, read_placements
from lastlook.lay.ask import read_problem
from lastlook.lay.choices import Choice, Concession, Fitted, choices, longer, shorter, usual, with_joint
from lastlook.lay.cloth import Cloth, Fold, Outline, Point, Repeat
from lastlook.lay.cutting import Cut, GrainEnd, Laid, by_tape, cutting_order, grainline
from lastlook.lay.judge import judge, judge_one, judge_placed
from lastlook.lay.measure import laid_outlines, left_over, used_length_mm
from lastlook.lay.picture import as_svg
from lastlook.lay.placement import BOTH, ONE, Judgement, Lay, LeftOver, Placement, Progress
from lastlook.lay.rest import headline, rest_in_words, worth_keeping
from lastlook.lay.search import Goal, best_of, search, search_many
from lastlook.lay.wanted import Match, Pieced, Problem, Wanted
from lastlook.lay.words import choices_in_words, in_words, longer_in_words

__all__ = [
    "BOTH",
    "ONE",
    "Accepted",
    "Band",
    "Choice",
    "Cloth",
    "Concession",
    "Cut",
    "Fitted",
    "Fold",
    "Goal",
    "GrainEnd",
    "Judgement",
    "Laid",
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
    "as_json",
    "as_svg",
    "best_of",
    "by_tape",
    "choices",
    "choices_in_words",
    "could_be_longer",
    "cutting_order",
    "grainline",
    "headline",
    "in_words",
    "judge",
    "judge_one",
    "judge_placed",
    "laid_outlines",
    "left_over",
    "longer",
    "longer_in_words",
    "placement_as_json",
    "read_accepted",
    "read_placements",
    "read_problem",
    "rest_in_words",
    "search",
    "search_many",
    "shorter",
    "used_length_mm",
    "usual",
    "with_joint",
    "worth_keeping",
    "would_fit",
]
