"""Proofs: edges that are sewn together, counts that are printed, holes and buttons, the progress of sizes."""

from lastlook.knit.prove.edges import edges_of
from lastlook.knit.prove.finished import finished
from lastlook.knit.prove.leans import leans
from lastlook.knit.prove.mates import seams

__all__ = ["edges_of", "finished", "leans", "seams"]
