"""Outlines that come from elsewhere, drawn so that their edges can be named."""

from lastlook.sheet.draw.foreign.runs import draw_runs

__all__ = ["draw_runs"]
