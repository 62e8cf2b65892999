"""The order of work for a skirt, stage by stage: what is pressed before what is crossed, where to fit and look last.

Press each seam before it is crossed, wool from the wrong side under a damp cloth; fit in the order waist, grain at the
hip, width, length (Fitting Dresses; Text-Book on Domestic Art, read). The rest is common practice, no source.
"""

from dataclasses import replace

from lastlook.paper.make.order.before import before
from lastlook.paper.make.order.hem import hem
from lastlook.paper.make.order.pieces import pieces
from lastlook.paper.make.order.seams import seams
from lastlook.paper.make.order.step import Making, Stage, Step
from lastlook.paper.make.order.top import fitting, lining, top

__all__ = ["Making", "Stage", "Step", "order_of_work"]


def order_of_work(making: Making) -> tuple[Stage, ...]:
    """Return the stages, each with its steps; none where nothing is drafted."""
    if not making.drafted.pieces:
        return ()
    stages = {
        "Before the shears": before(making),
        "Pieces": pieces(making),
        "Seams": seams(making),
        "On the body": fitting(),
        "Lining": lining(making),
        "Top": top(making),
        "Hem": hem(making),
    }
    minded: set[str] = set()
    return tuple(Stage(name, tuple(_once(step, minded) for step in steps)) for name, steps in stages.items() if steps)


def _once(step: Step, minded: set[str]) -> Step:
    """Return a step without what to mind where that was said before."""
    said = step.care in minded
    minded.add(step.care)
    return replace(step, care="") if said else step
