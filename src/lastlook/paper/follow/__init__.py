"""Pieces that follow another: what hangs on the skirt is drawn again when the skirt is altered."""

from lastlook.paper.follow.facing import DEPTH_MM, closed_edge, facing
from lastlook.paper.follow.follow import LINING, followed, lining_of
from lastlook.paper.follow.strip import band_notches, longer

__all__ = ["DEPTH_MM", "LINING", "band_notches", "closed_edge", "facing", "followed", "lining_of", "longer"]
