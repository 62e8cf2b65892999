"""The screens of a garment to be sewn."""

from lastlook.web.screen.sewing import lay, paper, toile

__all__ = ["lay", "paper", "toile"]
