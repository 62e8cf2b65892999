"""Mock-ups: what was seen on the body, what it asks for, and how one version differs from the next."""

from lastlook.paper.toile.contradiction import contradictions
from lastlook.paper.toile.observed import Observation, Seen, Toile, pinched
from lastlook.paper.toile.propose import Proposal, propose
from lastlook.paper.toile.read import read_toile
from lastlook.paper.toile.versions import EdgeChange, changes

__all__ = [
    "EdgeChange",
    "Observation",
    "Proposal",
    "Seen",
    "Toile",
    "changes",
    "contradictions",
    "pinched",
    "propose",
    "read_toile",
]
