"""Making the skirt: the order of work, what an old tissue hides, and what can be let out later."""

from lastlook.paper.make.order import Making, Stage, Step, order_of_work
from lastlook.paper.make.reserve import LEFT_MM, Reserve, reserves, wider_steps, widest_sides_mm, with_wider_sides
from lastlook.paper.make.tissue import Envelope, tissue_findings

__all__ = [
    "LEFT_MM",
    "Envelope",
    "Making",
    "Reserve",
    "Stage",
    "Step",
    "order_of_work",
    "reserves",
    "tissue_findings",
    "wider_steps",
    "widest_sides_mm",
    "with_wider_sides",
]
