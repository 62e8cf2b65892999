"""Skirts drafted from measurements, each kind in its own file with its formulas cited."""

from lastlook.paper.draft.ask import ASSUMED_HIP_DEPTH_MM
from lastlook.paper.draft.draft import KINDS, draft, unknown_word
from lastlook.paper.draft.given import WORDS, Given, read_given
from lastlook.paper.draft.parts import PARTS

__all__ = ["ASSUMED_HIP_DEPTH_MM", "KINDS", "PARTS", "WORDS", "Given", "draft", "read_given", "unknown_word"]
