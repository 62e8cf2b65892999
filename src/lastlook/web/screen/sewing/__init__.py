"""The screens of a garment to be sewn."""

from lastlook.web.screen.sewing import lay, paper, taken, toile

__all__ = ["lay", "paper", "taken", "toile"]
