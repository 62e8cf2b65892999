"""Skirts drafted from measurements, each kind in its own file with its formulas cited."""

from lastlook.paper.draft.draft import KINDS, draft

__all__ = ["KINDS", "draft"]
